import { spawnSync } from 'node:child_process';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { formatPattern, parseLesson, sectionsOf } from '@shedbook/core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_LESSONS } from '../../../internal/testing/demo-lessons.ts';
import { runProgram } from './program.ts';

const LESSON = `# mine
title: First swing
tempo: 120
vocabulary: [..., ..x, x.., x.x]
exercises:
  - x.. ..x x.x ...
  - ..x ... ..x ... # slowly
`;

let folder = '';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shedbook-'));
});

afterAll(() => rm(folder, { recursive: true }));

async function run(...args: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const status = await runProgram(args, {
    say: (line) => void out.push(line),
    warn: (line) => void err.push(line),
    progress: () => {},
  });
  return { status, out: out.join('\n'), err: err.join('\n') };
}

async function lessonFile(name: string, text = LESSON): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, text);
  return path;
}

describe('check', () => {
  it('[CL1] is content with a lesson that is in order', async () => {
    const path = await lessonFile('good.lesson.yaml');
    expect(await run('check', path)).toEqual({ status: 0, out: `${path}: in order, 2 exercises`, err: '' });
  });

  it('[CL1] says every problem of every file and ends with 2', async () => {
    const bad = await lessonFile('bad.lesson.yaml', 'titel: T\nmeter: 4/5\n');
    const good = await lessonFile('good.lesson.yaml');
    const { status, out, err } = await run('check', bad, good);
    expect(status).toBe(2);
    expect(err).toContain(`${bad}:1:1: error: titel: found unknown key "titel"`);
    expect(err).toContain(`${bad}:2:8: error: meter: found "4/5"`);
    expect(out).toContain(`${bad}: 3 errors, 0 warnings`);
    expect(out).toContain(`${good}: in order`);
  });

  it('[CL1][CL8] says so when a file is not there', async () => {
    const { status, err } = await run('check', join(folder, 'none.lesson.yaml'));
    expect(status).toBe(2);
    expect(err).toContain('there is no such file or folder; expected a lesson file');
    expect(err).not.toContain('    at ');
  });

  it('[CL6] prints problems as JSON', async () => {
    const bad = await lessonFile('bad.lesson.yaml', 'title: T\nmeter: 4/5\n');
    const { out, err } = await run('check', bad, '--json');
    expect(err).toBe('');
    expect(JSON.parse(out).problems).toMatchObject([
      { code: 'meter', line: 2, column: 8, severity: 'error' },
    ]);
  });
});

describe('build', () => {
  it('[CL2][CL6] makes the sheet and standard files', async () => {
    const path = await lessonFile('good.lesson.yaml');
    const out = join(folder, 'made');
    const result = await run('build', path, '--out', out, '--json');
    expect(result.status).toBe(0);
    expect(result.err).toBe('');
    const names = JSON.parse(result.out).files.map((file: { path: string }) =>
      file.path.slice(out.length + 1),
    );
    expect(names.toSorted()).toEqual([
      'exercises/01.mid',
      'exercises/01.musicxml',
      'exercises/02.mid',
      'exercises/02.musicxml',
      'pages/01.svg',
      'sheet.mid',
      'sheet.musicxml',
      'sheet.pdf',
    ]);
    // standard: ISO 32000-1, 7.5.2: a PDF begins with %PDF-
    expect((await readFile(join(out, 'sheet.pdf'))).subarray(0, 5).toString()).toBe('%PDF-');
    // standard: RP-001 (SMF 1.0): a file begins with MThd
    expect((await readFile(join(out, 'exercises/02.mid'))).subarray(0, 4).toString()).toBe('MThd');
  });

  it('[CL3] records each layer in the form, tempo and format asked for', async () => {
    const path = await lessonFile('good.lesson.yaml');
    const out = join(folder, 'recorded');
    const args = [
      '--audio',
      'wav',
      '--exercise',
      '2',
      '--layers',
      'each',
      '--form',
      'Four-and-two',
      '--tempo',
      '400',
    ];
    const { status, out: said } = await run('build', path, '--out', out, ...args);
    expect(status).toBe(0);
    expect(said).toContain('4 recordings');
    expect((await readdir(join(out, 'audio'))).toSorted()).toEqual([
      '02-1-ride.wav',
      '02-2-hihat-foot.wav',
      '02-3-bass.wav',
      '02-4-pattern.wav',
    ]);
    const wav = await readFile(join(out, 'audio/02-4-pattern.wav'));
    const seconds = wav.readUInt32LE(40) / wav.readUInt32LE(28);
    // definition: one bar of count-in and twelve of the form, 0.6 s each at 400; the tail rings on after it
    expect(seconds).toBeGreaterThan(7.8);
    expect(seconds).toBeLessThan(7.8 + 12.1);
  });

  it.each([
    ['--audio', 'mp4', 'expected one of wav, mp3, ogg, flac (did you mean "mp3"?)'],
    ['--tempo', '900', 'quarter notes a minute from 20 to 400'],
    ['--form', 'four and too', 'did you mean "four and two"?'],
    ['--layers', '7', 'how many play (1 ride, 2 hihat-foot, 3 bass, 4 pattern), or each'],
    ['--mute', 'rid', 'did you mean "ride"?'],
    ['--exercise', '3', 'numbers from 1 to 2'],
    ['--paper', 'A3', 'one of A4, Letter, A5, tablet'],
    ['--loudness', 'loud', 'LUFS from -40 to -6'],
    ['--click', '5', 'beats such as 1,2,3,4, or all'],
    ['--subdivide', '9', '1, 2, 3, 4, 5, 6, 7, 8 places a beat'],
    ['--gap', '2', 'bars with click and bars without, such as 2/2'],
  ])('[CL4] refuses %s %s', async (option, value, expected) => {
    const path = await lessonFile('good.lesson.yaml');
    const out = join(folder, 'refused');
    const { status, err } = await run('build', path, '--out', out, option, value);
    expect(status).toBe(2);
    expect(err).toContain(`${option}: found "`);
    expect(err).toContain(expected);
    await expect(readdir(out)).rejects.toThrow();
  });

  it('[CL3][CL4] plays on a SoundFont, and says what is wrong with one', async () => {
    const path = await lessonFile('good.lesson.yaml');
    const out = join(folder, 'font');
    const base = ['build', path, '--out', out, '--audio', 'wav', '--exercise', '1'];
    const none = await run(...base, '--kit', join(folder, 'none.sf2'));
    expect(none).toMatchObject({ status: 2 });
    expect(none.err).toContain('there is no such file or folder; expected a SoundFont 2 file');
    const bad = await run(...base, '--kit', path);
    expect(bad.status).toBe(2);
    expect(bad.err).toContain('that is no RIFF file');
  });

  it('[CL3] [CL5400] adds a click where asked, and counts aloud on one', async () => {
    const path = await lessonFile('good.lesson.yaml');
    const args = [
      '--audio',
      'wav',
      '--exercise',
      '1',
      '--form',
      'time',
      '--mute',
      'ride,bass,hihat-foot',
      '--dry',
    ];
    await run('build', path, '--out', join(folder, 'plain'), ...args);
    await run('build', path, '--out', join(folder, 'clicked'), ...args, '--click', '2,4', '--gap', '1/1');
    const loudest = async (name: string, from: number, to: number) => {
      const wav = await readFile(join(folder, name, 'audio/01.wav'));
      const rate = wav.readUInt32LE(28);
      const bytes = wav.subarray(
        44 + Math.floor((from * rate) / 6) * 6,
        44 + Math.floor((to * rate) / 6) * 6,
      );
      let peak = 0;
      for (let i = 0; i + 3 <= bytes.length; i += 3) peak = Math.max(peak, Math.abs(bytes.readIntLE(i, 3)));
      return peak / 2 ** 23;
    };
    // definition: at 120 beat 2 of the first bar after a bar of count-in is 2.5 s in; bar 2 is silent
    expect(await loudest('clicked', 2.5, 2.6)).toBeGreaterThan(0.02);
    expect(await loudest('clicked', 4.4, 5.9)).toBeLessThan(0.001);
    expect(await loudest('plain', 2.4, 5.9)).toBeLessThan(0.001);
    await run('build', path, '--out', join(folder, 'counted'), ...args, '--count-aloud');
    // definition: the first click comes after 0.2 s and "one" is felt on it 84 ms after it has begun; every bar is counted
    expect(await loudest('counted', 0, 0.11)).toBeLessThan(0.001);
    expect(await loudest('counted', 0.13, 0.19)).toBeGreaterThan(0.01);
    expect(await loudest('counted', 4.4, 5.9)).toBeGreaterThan(0.02);
  });

  it('[CL4][CL8] refuses a lesson with errors and a folder that cannot be written', async () => {
    const bad = await lessonFile('bad.lesson.yaml', 'title: T\nmeter: 4/5\n');
    expect(await run('build', bad, '--out', join(folder, 'refused'))).toMatchObject({ status: 2, out: '' });
    const good = await lessonFile('good.lesson.yaml');
    const { status, err } = await run('build', good, '--out', join(good, 'inside-a-file'));
    expect(status).toBe(2);
    expect(err).toContain('cannot be written');
  });
});

describe('compose', () => {
  it('[CL5] writes into the lesson and keeps the rest', async () => {
    const path = await lessonFile('mine.lesson.yaml');
    const { status, out } = await run('compose', path, '--count', '20', '--seed', '3', '--keep', '2');
    expect(status).toBe(0);
    expect(out).toContain('20 exercises written');
    const text = await readFile(path, 'utf8');
    expect(text.startsWith(LESSON.split('exercises')[0] ?? '')).toBe(true);
    expect(text).toContain('..x ... ..x ... # slowly');
    expect((await run('check', path)).out).toBe(`${path}: in order, 20 exercises`);
  });

  it('[CL3100] keeps what a person wrote beside the page that takes its place, however often', async () => {
    const path = await lessonFile('by-hand.lesson.yaml');
    const kept = join(folder, 'by-hand.before.lesson.yaml');
    const { err } = await run('compose', path, '--count', '4');
    expect(err).toBe(`What ${path} said before is kept in ${kept}.`);
    expect(await readFile(kept, 'utf8')).toBe(LESSON);
    const page = await readFile(path, 'utf8');
    await run('compose', path, '--count', '4', '--seed', '9');
    expect(await readFile(join(folder, 'by-hand.before-2.lesson.yaml'), 'utf8')).toBe(page);
    // every exercise stays: nothing to keep
    expect((await run('compose', path, '--count', '6', '--keep', '1,2,3,4')).err).toBe('');
    expect((await run('arrange', path, '--accents', 'off-the-beat')).err).toBe('');
    const heard = await lessonFile('heard.lesson.yaml', page);
    const { err: over } = await run('arrange', path, '--accents', 'off-the-beat', '--out', heard);
    expect(over).toContain('heard.before.lesson.yaml');
    expect((await readdir(folder)).filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  it('[CL5][CL6] writes into another file, the same for the same seed', async () => {
    const path = await lessonFile('mine.lesson.yaml');
    const other = join(folder, 'other.lesson.yaml');
    const { out } = await run('compose', path, '--seed', 'oda', '--out', other, '--json');
    const first = await readFile(other, 'utf8');
    // definition: 4² moves; from a last triplet onto the beat two strokes come 8 a second at the goal of 160, under the
    // 10 of the fastest hand
    expect(JSON.parse(out)).toMatchObject({ file: other, report: { count: 24, coverage: { met: 16 } } });
    await run('compose', path, '--seed', 'oda', '--out', other);
    expect(await readFile(other, 'utf8')).toBe(first);
    expect(await readFile(path, 'utf8')).toBe(LESSON);
  });

  it('[CL5] explains a page block by block: a heading, and what each line makes of it', async () => {
    const path = await lessonFile('mine.lesson.yaml');
    const { out } = await run('compose', path, '--explain', '--out', join(folder, 'explained.lesson.yaml'));
    // definition: every block states its theme
    expect(out).toContain('the figure itself');
    expect(out).toMatch(/^(The dotted quarter|One and three|The last beat|Every beat|Off the beat after)/m);
  });

  it('[CL5] names the first exercise of each block after its figure, in the language asked for', async () => {
    const path = await lessonFile('mine.lesson.yaml');
    const out = join(folder, 'named.lesson.yaml');
    const names = async (...args: string[]) => {
      await run('compose', path, '--count', '16', '--out', out, ...args);
      const { lesson } = parseLesson(await readFile(out, 'utf8'), out);
      return (lesson?.exercises ?? []).map((each) => each.name);
    };
    const english = await names('--idiom', '1', '--headings');
    // definition: eight figures and two more would be ten blocks; sixteen lines have room for six of two or three
    expect(english.filter((name) => name !== null)).toHaveLength(6);
    expect(english[0]).not.toBeNull();
    const german = await names('--idiom', '1', '--headings', '--language', 'de');
    // definition: one heading in both languages, at the head of the page
    expect([english[0], german[0]]).toContainEqual(expect.stringMatching(/^(On |One|The |Every |Off )/));
    expect(german[0]).not.toBe(english[0]);
    expect((await names('--idiom', '1')).every((name) => name === null)).toBe(true);
  });

  it('[CL4] refuses a count that makes no sense', async () => {
    const path = await lessonFile('mine.lesson.yaml');
    const { status, err } = await run('compose', path, '--count', 'many');
    expect(status).toBe(2);
    expect(err).toBe('--count: found "many", expected a whole number from 1 to 400');
  });
});

describe('pages of other kinds', () => {
  it('[CL5] composes questions, a weak move, variations and a review', async () => {
    const path = await lessonFile('mine.lesson.yaml');
    const patterns = async (...args: string[]) => {
      const out = join(folder, 'page.lesson.yaml');
      await rm(out, { force: true });
      const { status, err } = await run('compose', path, '--out', out, ...args);
      expect({ status, err }).toEqual({ status: 0, err: '' });
      const { lesson } = parseLesson(await readFile(out, 'utf8'), out);
      return (lesson?.exercises ?? []).map((each) => formatPattern(each.parts[0]?.pattern ?? { bars: [] }));
    };
    const questions = await patterns('--questions', '--count', '6');
    expect(questions).toHaveLength(6);
    expect(questions.every((text) => text.includes('|'))).toBe(true);
    const weak = await patterns('--weak', '..x ...', '--count', '8');
    // definition: the bar loops, so the last beat leads to the first
    expect(weak.every((text) => `${text} ${text}`.includes('..x ...'))).toBe(true);
    expect((await patterns('--variations', '1', '--count', '5'))[0]).toBe('x.. ..x x.x ...');
    expect(await patterns('--review', path, '--count', '2')).toHaveLength(2);
    for (const way of ['--easier', '--harder', '--like']) {
      // definition: the bar itself, and four near it
      expect(await patterns(way, '1')).toHaveLength(5);
    }
    expect((await patterns('--goal', '1', '--has', '2')).at(-1)).toBe('x.. ..x x.x ...');
  });

  it.each([
    [['--weak', '..x'], '--weak: found "..x", expected two cells'],
    [['--weak', '..x xxx'], '--weak: found cell "xxx", expected cells of the vocabulary: ..., ..x, x.., x.x'],
    [['--weak', '..x ...', '--questions'], 'expected one kind of page at a time'],
    [['--variations', '9'], '--variations: found 9, expected a number from 1 to 2'],
    [['--idiom', '2'], '--idiom: found "2", expected a share from 0 to 1'],
    [['--bars', '9'], '--bars: found "9", expected a whole number from 1 to 8'],
    [['--phrase', 'sentense'], 'did you mean "sentence"'],
  ])('[CL4] refuses %j', async (args, expected) => {
    const path = await lessonFile('mine.lesson.yaml');
    const { status, err } = await run('compose', path, ...args);
    expect(status).toBe(2);
    expect(err).toContain(expected);
    expect(await readFile(path, 'utf8')).toBe(LESSON);
  });

  it('[CL4] writes nothing when no bar is allowed', async () => {
    const text = 'title: T\nexercises:\n  - x x x x\n';
    const path = await lessonFile('empty.lesson.yaml', text);
    const { status, err } = await run('compose', path);
    expect(status).toBe(2);
    expect(err).toContain('nothing could be composed');
    expect(await readFile(path, 'utf8')).toBe(text);
  });
});

describe('two limbs and second passes', () => {
  const read = async (path: string) => {
    const { lesson, problems } = parseLesson(await readFile(path, 'utf8'), path);
    expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    return lesson;
  };

  it('[CL44] composes snare and bass drum in dialogue, and makes a feathered bass drum heard', async () => {
    const path = await lessonFile('mine.lesson.yaml');
    const out = join(folder, 'dialogue.lesson.yaml');
    const { status, out: said } = await run(
      'compose',
      path,
      '--with',
      'bass',
      '--count',
      '8',
      '--explain',
      '--out',
      out,
    );
    expect(status).toBe(0);
    expect(said).toContain('snare x');
    expect(said).toContain('In exercises the bass drum now plays at -4 dB');
    const lesson = await read(out);
    expect(lesson?.exercises.map(({ parts }) => parts.map(({ voice }) => voice))).toEqual(
      new Array(8).fill(['snare', 'bass']),
    );
    // definition: as loud as the snare in exercises, feathered in the groove
    expect(lesson?.exerciseBalance.bass).toBe(lesson?.balance.snare);
    expect(lesson?.balance.bass).toBe(-18);
    expect(await run('compose', path, '--with', 'tom-low')).toMatchObject({
      status: 2,
      err: '--with: found "tom-low", expected one of hihat-foot, bass',
    });
  });

  it('[CL44] explains variations and reviews bar by bar', async () => {
    const path = await lessonFile('mine.lesson.yaml');
    const out = join(folder, 'told.lesson.yaml');
    const explained = async (...args: string[]) =>
      (await run('compose', path, '--out', out, '--explain', ...args)).out;
    expect(await explained('--variations', '1')).toMatch(/^ +2 {2}[.x ]+ {2}\d+\.\d\d {2}without /m);
    expect(await explained('--review', path, '--count', '2')).toMatch(
      /^ +1 {2}[.x ]+ {2}\d+\.\d\d {2}\S+.* \d$/m,
    );
    const { out: json } = await run('compose', path, '--out', out, '--variations', '1', '--json');
    expect(JSON.parse(json).bars[0]).toMatchObject({ number: 1, text: 'x.. ..x x.x ...', what: null });
  });

  it.each([
    ['--easier', 2],
    ['--variations', 2],
    ['--goal', 0],
  ])('[CL4500] proposes %s, and puts it beside its exercise when asked to', async (way, place) => {
    const path = await lessonFile('mine.lesson.yaml');
    const told = await run('compose', path, way, '2');
    expect({ status: told.status, err: told.err }).toEqual({ status: 0, err: '' });
    // the story: a page of easier bars stood in the stead of what was written
    expect(await readFile(path, 'utf8')).toBe(LESSON);
    expect(told.out).toMatch(/^ +[23] {2}[.x ]+ {2}\d+\.\d\d {2}\S/m);
    expect(told.out).toContain('--put');
    const before = (await read(path))?.exercises ?? [];
    expect((await run('compose', path, way, '2', '--put')).status).toBe(0);
    const after = (await read(path))?.exercises ?? [];
    const parts = after.map((each) => each.parts);
    // definition: all that was there, in order, and what is new in one piece behind exercise 2, or before it
    const fresh = after.length - before.length;
    expect(fresh).toBeGreaterThan(0);
    const at = place === 0 ? 1 : 2;
    expect(parts.toSpliced(at, fresh)).toEqual(before.map((each) => each.parts));
    expect(await readFile(path, 'utf8')).toContain('..x ... ..x ... # slowly');
  });

  it('[CL4500] refuses to put what is no proposal', async () => {
    const path = await lessonFile('mine.lesson.yaml');
    const { status, err } = await run('compose', path, '--put');
    expect({ status, err }).toMatchObject({ status: 2, err: expect.stringContaining('--put: found alone') });
    expect(await readFile(path, 'utf8')).toBe(LESSON);
  });

  it('[CL3400] loses no kept exercise to a term or a review', async () => {
    const asks = [
      ['--term', '2', '--count', '4'],
      ['--review', join(folder, 'mine.lesson.yaml'), '--count', '2'],
    ];
    await lessonFile('mine.lesson.yaml');
    for (const args of asks) {
      const path = await lessonFile('kept.lesson.yaml');
      const text = await readFile(path, 'utf8');
      await writeFile(
        path,
        text.replace(/exercises:\n/, 'exercises:\n  - {pattern: x.. x.. ... ..x, keep: true, name: Mine}\n'),
      );
      expect((await run('compose', path, ...args)).status).toBe(0);
      const lesson = await read(path);
      const all = lesson ? sectionsOf(lesson).flatMap(({ exercises }) => exercises) : [];
      // definition: the exercise that the lesson keeps, once, before what was composed
      expect(all.map(({ name }) => name).filter((name) => name === 'Mine')).toHaveLength(1);
      expect(all[0]).toMatchObject({ name: 'Mine', keep: true });
      expect(all.length).toBeGreaterThan(2);
    }
  });

  it('[CL45] adds passes behind what is there, and overwrites nothing', async () => {
    const path = await lessonFile('mine.lesson.yaml');
    const { status, out } = await run('arrange', path, '--share', 'long-below', '--explain');
    expect(status).toBe(0);
    // definition: strokes that a beat or more of silence follows go to the bass drum; of 2 that would be all
    expect(out).toContain('snare ... ..x x.. ... / bass x.. ... ..x ...');
    expect(out).toContain('from 2  Every stroke would go to the other voice');
    const lesson = await read(path);
    expect(lesson?.exercises).toHaveLength(3);
    expect(await readFile(path, 'utf8')).toContain('..x ... ..x ... # slowly');
    expect(lesson?.exercises[2]?.name).toBe('from 1');
  });

  it('[CL3500] writes what comes before a section, once', async () => {
    const path = await lessonFile('mine.lesson.yaml');
    const before = await readFile(path, 'utf8');
    expect((await run('prepare', path, '--language', 'de')).status).toBe(0);
    const lesson = await read(path);
    expect(lesson?.sections.map((section) => [section.heading, section.before])).toEqual([
      ['Vor dem ersten Takt', undefined],
      [null, 'Vor dem ersten Takt'],
    ]);
    const written = await readFile(path, 'utf8');
    for (const line of before.split('\n').filter((each) => each.includes('#'))) {
      expect(written).toContain(line.trim());
    }
    const again = await run('prepare', path, '--section', '2');
    expect([again.status, await readFile(path, 'utf8')]).toEqual([2, written]);
  });

  it('[CL45] writes several passes into another file, the same for the same seed, and says what it cannot do', async () => {
    const path = await lessonFile('mine.lesson.yaml');
    const out = join(folder, 'arranged.lesson.yaml');
    const args = ['arrange', path, '--accents', 'first-of-group', '--fill', '2', '--seed', '5', '--out', out];
    const { out: json } = await run(...args, '--json');
    const first = await readFile(out, 'utf8');
    expect(JSON.parse(json)).toMatchObject({
      count: 2,
      left: [],
      exercises: [
        { from: 1, said: [{ fact: 'accents-first-of-group' }, { fact: 'fill', beats: 2 }] },
        { from: 2 },
      ],
    });
    await run(...args);
    expect(await readFile(out, 'utf8')).toBe(first);
    expect(await readFile(path, 'utf8')).toBe(LESSON);
    expect((await run('check', out)).status).toBe(0);
    const german = await run(
      'arrange',
      path,
      '--accents',
      'off-the-beat',
      '--exercise',
      '2',
      '--explain',
      '--out',
      out,
      '--language',
      'de',
    );
    expect(german.out).toContain('Akzente neben dem Schlag');
  });

  it.each([
    [['--share', 'below'], '--share: found "below", expected one of beats-below, long-below'],
    [['--fill', '3'], '--fill: found "3", expected a whole number from 1 to 2'],
    [['--hands', 'by-turns', '--exercise', '9'], '--exercise: found "9"'],
    [[], 'expected --share, --kit, --accents, --hands or --fill'],
    [['--share', 'accents-below'], 'There is no stroke that this would change.'],
  ])('[CL4][CL45] refuses %j and writes nothing', async (args, expected) => {
    const path = await lessonFile('mine.lesson.yaml');
    const { status, err } = await run('arrange', path, ...args);
    expect(status).toBe(2);
    expect(err).toContain(expected);
    expect(await readFile(path, 'utf8')).toBe(LESSON);
  });
});

describe('why', () => {
  it('[CL10] explains an exercise, and compares two', async () => {
    const path = await lessonFile('mine.lesson.yaml');
    expect((await run('why', path, '1')).out).toContain('1. x.. ..x x.x ...: ');
    expect((await run('why', path, '2', '1')).out).toMatch(/^2 is (harder|easier) than 1 because /);
    expect(JSON.parse((await run('why', path, '2', '--json')).out)).toHaveProperty('reasons');
    expect(await run('why', path, '5')).toMatchObject({
      status: 2,
      err: 'exercise: found 5, expected a number from 1 to 2',
    });
  });
});

describe('help', () => {
  it.each(['check', 'build', 'compose', 'arrange', 'why'])('[CL7] explains %s', async (command) => {
    const { status, out } = await run(command, '--help');
    expect(status).toBe(0);
    expect(out).toContain(`Usage: shedbook ${command}`);
    expect(out.length).toBeGreaterThan(200);
  });

  it('[CL7] explains in German where that is asked for or the environment speaks it', async () => {
    const { out } = await run('--language', 'de', 'build', '--help');
    expect(out).toContain('Aufruf: shedbook build');
    expect(out).toContain('Wahlweise:');
    expect(out).toContain('Vorsicht mit der Lautstärke');
    // definition: what stands in both languages are names of options, commands, forms and files, none of the English words below
    for (const word of [' the ', ' of ', ' with ', 'Usage', 'Options']) expect(out).not.toContain(word);
  });

  it('[CL7][CL8] explains the whole, and what is wrong with a call', async () => {
    expect((await run('--help')).out).toContain('five lines are enough');
    expect((await run('--version')).status).toBe(0);
    const { status, err } = await run('biuld');
    expect(status).toBe(2);
    expect(err).toContain('did you mean build?');
    expect((await run('build')).status).toBe(2);
    expect((await run('build', 'x', '--out', 'y', '--adio', 'wav')).err).toContain('did you mean --audio?');
  });
});

describe('pipes', () => {
  it('[CL11] ends quietly when its reader has seen enough', () => {
    const command = `"${process.execPath}" bin/shedbook.mjs build --help | true`;
    expect(spawnSync('sh', ['-c', command], { encoding: 'utf8' }).stderr).toBe('');
  });
});

describe('demo', () => {
  const names = DEMO_LESSONS.map((file) => file.replace('.lesson.yaml', ''));

  it.each(names)('[CL9] builds %s without a warning', async (name) => {
    const { status, err, out } = await run('build', `demo/${name}.lesson.yaml`, '--out', join(folder, name));
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toContain('sheet.pdf');
  });
});

describe('languages', () => {
  async function spoken(args: readonly string[], locale = '') {
    const lines: string[] = [];
    const keep = (line: string) => void lines.push(line);
    await runProgram(args, { say: keep, warn: keep, progress: () => {} }, { locale });
    return lines;
  }

  it.each([
    [
      ['biuld', 'x'],
      'biuld: there is no such command (did you mean build?)',
      'biuld: diesen Befehl gibt es nicht (gemeint build?)',
    ],
    [
      ['check', '--jsno', 'x'],
      '--jsno: there is no such option (did you mean --json?)',
      '--jsno: diese Option gibt es nicht (gemeint --json?)',
    ],
    [['check', '--volume', 'x'], '--volume: there is no such option', '--volume: diese Option gibt es nicht'],
    [['check'], '<lesson>: found nothing, expected one', '<lesson>: nichts gefunden, erwartet eine Angabe'],
    [
      ['build', 'x', '--out'],
      '--out <folder>: found no value, expected one',
      '--out <folder>: kein Wert gefunden, erwartet einer',
    ],
    [
      ['build', 'x'],
      '--out <folder>: found nothing, expected it always',
      '--out <folder>: nichts gefunden, immer erwartet',
    ],
    [['serve', 'x'], 'arguments: found 1, expected 0', 'Angaben: 1 gefunden, erwartet 0'],
  ])('[CL4][CL41] says what is wrong with %j in either language', async (args, english, german) => {
    expect((await spoken(args))[0]).toBe(english);
    expect((await spoken(['--language', 'de', ...args]))[0]).toBe(german);
  });

  it('[CL41] speaks the language that is asked for, before or after the command, else that of the locale', async () => {
    const path = await lessonFile('spoken.lesson.yaml', 'title: First\nexercises: [x x x x]\n');
    const english = [`${path}: in order, 1 exercise`];
    const german = [`${path}: in Ordnung, 1 Übung`];
    expect(await spoken(['check', path])).toEqual(english);
    expect(await spoken(['check', path, '--language', 'de'])).toEqual(german);
    expect(await spoken(['--language', 'de', 'check', path])).toEqual(german);
    // standard: POSIX.1-2017, 8.2: language[_territory][.codeset]; C is no language
    expect(await spoken(['check', path], 'de_AT.UTF-8')).toEqual(german);
    expect(await spoken(['check', path], 'C.UTF-8')).toEqual(english);
    expect(await spoken(['check', path, '--language', 'en'], 'de_AT.UTF-8')).toEqual(english);
  });

  it('[CL41] refuses in the language, and names the nearest one of those that there are', async () => {
    expect(await spoken(['compose', 'none.yaml', '--count', 'x', '--language', 'de'], 'de')).toEqual([
      '--count: gefunden "x", erwartet eine ganze Zahl von 1 bis 400',
    ]);
    expect(await spoken(['check', 'none.yaml', '--language', 'de'])).toEqual([
      'none.yaml: so eine Datei oder so einen Ordner gibt es nicht; erwartet eine Lektion wie first.lesson.yaml',
    ]);
    expect(await spoken(['check', 'none.yaml', '--language', 'di'])).toEqual([
      '--language: found "di", expected one of en, de (did you mean "de"?)',
    ]);
  });

  it('[CL41] counts one as one', async () => {
    const path = await lessonFile('one.lesson.yaml', 'title: One\nexercises: [x x x x]\n');
    const args = ['build', path, '--out', join(folder, 'one'), '--audio', 'wav', '--tempo', '300'];
    const said = (await spoken(args)).join('\n');
    expect(said).toMatch(/the sheet and 1 exercise \(.*\n.*1 recording \(/s);
    expect(said).not.toMatch(/\b1 \w+s\b/);
  });
});
