import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { Bpm, parseLesson } from '@shedbook/core';
import { loadEngraver, loadFonts } from '@shedbook/engrave';
import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { drawCode } from '../files/code.ts';
import { type PackFile, textFile } from '../files/file.ts';
import { printedMedia } from '../files/printed-media.ts';
import { makePack, type PackRequest } from './make-pack.ts';
import type { Pack, PackAssignment } from './pack.ts';
import { zipPack } from './zip.ts';

const TEXT = `title: First swing
tempo: 240
feel: triplet
exercises:
  - x.. ..x x.x ...
  - ..x ..x x.. x.. | ... x.. ... x..
`;

const APP: readonly PackFile[] = [
  textFile('assets/index-1.js', 'start()'),
  textFile('index.html', '<!doctype html><head><title>Practice</title></head><script>start()</script>'),
  textFile('link.js', 'lead();'),
  textFile('sw.js', 'keep();'),
];

const { resolve } = createRequire(import.meta.url);
const engraver = await loadEngraver();
const fonts = await loadFonts((specifier) => readFile(resolve(specifier)));

/** What a pack has besides its lesson. */
type Also = Partial<
  Pick<
    PackRequest,
    'audio' | 'assignments' | 'level' | 'setUp' | 'demonstrations' | 'films' | 'isPrivate' | 'media'
  >
>;

async function packOf(text: string, also: Also = {}): Promise<ReadonlyMap<string, string>> {
  const { lesson } = parseLesson(text, 'lesson');
  if (!lesson) throw new Error('the lesson has problems');
  const files = await makePack({
    id: 'first-swing',
    lesson,
    text,
    app: APP,
    engraver,
    fonts,
    audio: false,
    language: 'en',
    ...also,
  });
  return new Map(files.map(({ path, content }) => [path, Buffer.from(content).toString('latin1')]));
}

function describedBy(files: ReadonlyMap<string, string>): Pack {
  return JSON.parse(Buffer.from(files.get('pack.json') ?? '', 'latin1').toString('utf8')) as Pack;
}

describe('a take-home pack', () => {
  it('[SE30] holds the page, the lesson, tiles, files and recordings, and says what is kept offline', async () => {
    const files = await packOf(TEXT, { audio: true });
    const pack = describedBy(files);
    expect(files.get('index.html')).toContain('<title>First swing</title>');
    expect(files.get('index.html')).toContain('href="./tiles/01-1.svg"');
    expect(files.get('assets/index-1.js')).toBe('start()');
    expect(JSON.parse(files.get('manifest.webmanifest') ?? '')).toMatchObject({
      name: 'First swing',
      scope: './',
    });
    // definition: one bar and two bars, each alone and with the groove of one bar
    expect(pack.exercises.map(({ own, full }) => [own.length, full.length])).toEqual([
      [1, 1],
      [2, 2],
    ]);
    const tiles = [...pack.exercises.flatMap(({ own, full }) => [...own, ...full]), ...pack.groove];
    for (const { tile } of tiles) expect(files.get(tile)).toMatch(/^<svg/);
    const kinds = pack.downloads.map(({ kind, exercise, path }) => `${kind} ${exercise} ${path}`);
    expect(kinds.toSorted()).toEqual([
      'audio 1 files/audio/01.mp3',
      'audio 2 files/audio/02.mp3',
      'lesson null files/first-swing.lesson.yaml',
      'midi 1 files/exercises/01.mid',
      'midi 2 files/exercises/02.mid',
      'midi null files/sheet.mid',
      'musicxml 1 files/exercises/01.musicxml',
      'musicxml 2 files/exercises/02.musicxml',
      'musicxml null files/sheet.musicxml',
      'sheet null files/sheet.pdf',
    ]);
    for (const { path, bytes } of pack.downloads) expect(files.get(path)).toHaveLength(bytes);
    // standard: ISO 32000 and RP-001: files begin with these bytes; ISO/IEC 11172-3: a frame begins with 11 set bits
    expect(files.get('files/sheet.pdf')).toMatch(/^%PDF-/);
    expect(files.get('files/exercises/01.mid')).toMatch(/^MThd/);
    expect(Buffer.from(files.get('files/audio/01.mp3') ?? '', 'latin1').readUInt16BE() & 0xffe0).toBe(0xffe0);
    const worker = files.get('sw.js') ?? '';
    const kept = JSON.parse(/^self\.SHEDBOOK_PACK=(.*);\n/.exec(worker)?.[1] ?? '{}') as Record<
      string,
      unknown
    >;
    const offline = [...files.keys()].filter((path) => !path.startsWith('files/audio/') && path !== 'sw.js');
    // library: node:crypto, SHA-256
    const sum = (path: string) =>
      createHash('sha256')
        .update(Buffer.from(files.get(path) ?? '', 'latin1'))
        .digest('hex')
        .slice(0, 24);
    const sums = Object.fromEntries(offline.map((path) => [path, sum(path)]));
    expect(kept).toEqual({ id: 'first-swing', version: pack.version, files: sums });
    expect(worker.endsWith('keep();')).toBe(true);
  });

  it('[SE3600] carries how the teacher plays, kept offline, and films, which are not', async () => {
    const shown = { exercise: 2, bpm: Bpm(100), formBars: [1], knots: [], onsets: [1], seconds: 3 };
    const form = { name: 'once', sections: [], repeat: 1, countInBars: 1 };
    const demonstrations = [{ ...shown, form, flac: new Uint8Array([1, 2]) }];
    const films = [{ exercise: 1, ending: '.mp4', content: new Uint8Array([3]) }];
    const files = await packOf(TEXT, { demonstrations, films });
    const pack = describedBy(files);
    expect(pack.demonstrations).toEqual([{ ...shown, form, path: 'demonstrations/02.flac', bytes: 2 }]);
    expect(files.get('demonstrations/02.flac')).toBe('\u0001\u0002');
    expect(pack.downloads.filter(({ kind }) => kind === 'film')).toEqual([
      { path: 'files/films/01.mp4', kind: 'film', exercise: 1, bytes: 1 },
    ]);
    const worker = files.get('sw.js') ?? '';
    expect([worker.includes('02.flac'), worker.includes('01.mp4')]).toEqual([true, false]);
    const version = async (also: Also) => describedBy(await packOf(TEXT, also)).version;
    const later = demonstrations.map((each) => ({ ...each, onsets: [2] }));
    const versions = [
      pack.version,
      await version({ demonstrations }),
      await version({ demonstrations: later, films }),
      await version({}),
    ];
    expect(new Set(versions).size).toBe(4);
  });

  it('[SE4203] carries the files of the lesson once each, kept offline', async () => {
    const sound = { kind: 'sound', type: 'audio/mpeg', content: new Uint8Array([1, 2]) } as const;
    const medium = { ...sound, name: 'ab.mp3', size: null, png: null };
    const media = new Map([
      ['slow.mp3', medium],
      ['again.mp3', medium],
      ['nowhere.mp3', medium],
    ]);
    const text = `${TEXT}media: [slow.mp3, again.mp3, missing.mp3]\npracticePage: https://example.org/swing/index.html\n`;
    const files = await packOf(text, { media });
    const pack = describedBy(files);
    expect(pack.media).toEqual([
      { of: 'slow.mp3', path: 'media/ab.mp3', bytes: 2 },
      { of: 'again.mp3', path: 'media/ab.mp3', bytes: 2 },
    ]);
    expect(files.get('media/ab.mp3')).toBe('\u0001\u0002');
    expect(files.get('sw.js')).toContain('media/ab.mp3');
    expect(describedBy(await packOf(text)).version).not.toBe(pack.version);
    const { lesson } = parseLesson(text, 'lesson');
    const printed = lesson && printedMedia(lesson, media).get('slow.mp3');
    // definition: the file beside the page, whatever the page is called
    expect(printed).toEqual({ kind: 'code', svg: drawCode('https://example.org/swing/media/ab.mp3') });
    expect(printedMedia({ practicePage: null }, media).size).toBe(0);
  });

  it('[SE30] carries the title letter for letter', async () => {
    // definition: in HTML a title is text; `$` has no meaning there
    const title = '$\' $& $$ $1 <b> & "rest"';
    const files = await packOf(TEXT.replace('First swing', () => `'${title.replaceAll("'", "''")}'`));
    expect(files.get('index.html')).toContain(
      "<title>$' $&amp; $$ $1 &lt;b&gt; &amp; &quot;rest&quot;</title>\n",
    );
    expect(describedBy(files).lesson.title).toBe(title);
  });

  it('[SE1800] lets its start page load its own files alone', async () => {
    const html = (await packOf(TEXT)).get('index.html') ?? '';
    // standard: W3C Content Security Policy 3: base64 of the SHA-256 of what stands between the tags
    const sum = createHash('sha256').update('start()').digest('base64');
    const [, policy = ''] = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html) ?? [];
    expect(policy).toContain(`script-src 'self' 'wasm-unsafe-eval' 'sha256-${sum}'`);
    expect(policy).toContain("default-src 'self'");
    // definition: it holds for what comes after it, so it comes before everything that is loaded
    expect(html.indexOf('Content-Security-Policy')).toBeLessThan(html.search(/<(link|script)/));
  });

  it('[SE6502] has the worker of private links only where it is opened by one', async () => {
    expect((await packOf(TEXT)).has('link.js')).toBe(false);
    expect((await packOf(TEXT, { isPrivate: true })).get('link.js')).toBe('lead();');
  });

  it('[SE31] is the same for the same lesson, and of another version for any other', async () => {
    const once = await packOf(TEXT);
    expect(await packOf(TEXT)).toEqual(once);
    const other = await packOf(TEXT.replace('x.x ...', 'x.x ..x'));
    expect(describedBy(other).version).not.toBe(describedBy(once).version);
    expect(other.get('sw.js')).not.toBe(once.get('sw.js'));
  });

  it('[SE32] is packed into one folder of a ZIP file, byte for byte', () => {
    const files = [...APP, { path: 'files/a.mp3', content: new Uint8Array([255, 251, 1, 2]) }];
    const zip = zipPack(files, 'practice');
    expect(zipPack(files, 'practice')).toEqual(zip);
    // library: fflate, unzipSync
    const opened = unzipSync(zip);
    expect(Object.keys(opened)).toEqual(files.map(({ path }) => `practice/${path}`));
    for (const { path, content } of files) expect(opened[`practice/${path}`]).toEqual(content);
  });

  it('[SE38] carries what the teacher set for one student, and is another version with it', async () => {
    const set: PackAssignment = { exercise: 'x.. ..x x.x ...', pinned: true, note: 'Lightly.' };
    const [plain, own] = [
      describedBy(await packOf(TEXT)),
      describedBy(await packOf(TEXT, { assignments: [set] })),
    ];
    expect(own.assignments).toEqual([set]);
    expect(plain).not.toHaveProperty('assignments');
    expect(own.version).not.toBe(plain.version);
    const judged = describedBy(await packOf(TEXT, { assignments: [set], level: 'advanced' }));
    expect([plain.level, own.level, judged.level]).toEqual([undefined, undefined, 'advanced']);
    expect(judged.version).not.toBe(own.version);
  });
});

it('[SE7012] prints the sheet for the way round that the student has their drums', async () => {
  const text = 'title: Hands\nexercises:\n  - {pattern: x x x ., sticking: R R L}\n';
  const paper = async (of: string, also: Also) => (await packOf(of, also)).get('files/sheet.pdf');
  const mirrored = text.replace('R R L', 'L L R').replace('title', 'setUp: left-handed\ntitle');
  expect(await paper(text, { setUp: 'left-handed' })).toBe(await paper(mirrored, {}));
  expect(await paper(text, { setUp: 'right-handed' })).toBe(await paper(text, {}));
  expect(await paper(text, {})).not.toBe(await paper(mirrored, {}));
});
