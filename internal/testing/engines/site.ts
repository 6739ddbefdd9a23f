/**
 * For stories that are told in several engines: the built pages with what a test needs lying in them as files, since not
 * every engine can be told to run something first.
 */
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { loadEngravingTools, readPracticePage } from '@shedbook/host';
import { makePack, type PackFile, textFile } from '@shedbook/pack';
import { FRAME_WAIT_MS, waitForFrames } from '../few-frames.ts';
import { type Devices, layDesk, lessonOf } from '../hearing.ts';
import { lightKitFiles } from '../kit-at-hand.ts';

/** What a page has with it. */
export interface Laid {
  /** The test's devices; the browser's own where left out. */
  readonly devices?: Devices;
  /** What it sounds with: a light kit, unless told that the page makes its own. */
  readonly kit?: 'own' | 'light';
  /** Whether it draws every frame: a few where left out. */
  readonly everyFrame?: boolean;
}

const SCRIPT = 'before-all.js';

/** Runs in the page first. */
function before({ devices, everyFrame = false }: Laid): string {
  const frames = `(${waitForFrames})(${everyFrame ? 0 : FRAME_WAIT_MS});`;
  return devices ? `${frames}\n(${layDesk})(${JSON.stringify(devices)});\n` : `${frames}\n`;
}

/** A page's files with the test's own beside them. */
function withTest(files: readonly PackFile[], laid: Laid, root: string): readonly PackFile[] {
  const kit = laid.kit === 'own' ? null : lightKitFiles();
  const changed = files.map((file) => {
    const text = () => Buffer.from(file.content).toString('utf8');
    if (file.path === 'index.html')
      return textFile(
        file.path,
        text().replace('<head>', () => `<head>\n    <script src="${root}${SCRIPT}"></script>`),
      );
    return kit && /\/kit\.worker[^/]*\.js$/.test(file.path) ? textFile(file.path, kit.worker) : file;
  });
  const own = kit ? [textFile('light.json', kit.shape), { path: 'light.bin', content: kit.bytes }] : [];
  return [...changed, textFile(SCRIPT, before(laid)), ...own];
}

function write(folder: string, files: readonly PackFile[]): void {
  for (const { path, content } of files) {
    const file = join(folder, path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, content);
  }
}

/** Makes the pack of a lesson, with the test's files in it, into a folder. */
export async function layPack(text: string, folder: string, laid: Laid): Promise<void> {
  const app = withTest(await readPracticePage(process.env['SHEDBOOK_PRACTICE']), laid, './');
  const tools = await loadEngravingTools();
  const pack = { id: 'story', lesson: lessonOf(text), text, app, ...tools, language: 'en' as const };
  write(folder, await makePack({ ...pack, audio: false }));
}

/** Lays the built desk, with the test's files in it, into a folder of its own. */
export function laySite(site: string, laid: Laid): { readonly path: string; readonly remove: () => void } {
  const path = mkdtempSync(join(tmpdir(), 'shedbook-site-'));
  cpSync(site, path, { recursive: true });
  const names = ['index.html', ...readdirSync(join(site, 'assets')).map((name) => `assets/${name}`)];
  const touched = names.filter((name) => name === 'index.html' || name.includes('kit.worker'));
  const files = touched.map((name) => ({ path: name, content: readFileSync(join(site, name)) }));
  write(path, withTest(files, laid, '/'));
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}
