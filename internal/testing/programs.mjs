/**
 * Programs from outside that tests compare with: where each is found, and which test file needs which.
 *
 * Debian's own is used where it is installed; a browser and FFmpeg also come from packages of the registry, so that a
 * machine with Node alone has them after `npm ci`.
 */
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, dirname, join } from 'node:path';

const require = createRequire(import.meta.url);

/** Debian's package of each program, and how a test file shows that it uses it. */
export const PROGRAMS = {
  chromium: { debian: 'chromium', used: /\bchromiumPath\(/ },
  ffmpeg: { debian: 'ffmpeg', used: /'ffmpeg'/ },
  mido: { debian: 'python3-mido', used: /\bimport mido\b|mido_notes\.py/ },
  pdftoppm: { debian: 'poppler-utils', used: /'pdf(?:toppm|fonts|info|text|totext|images)'/ },
  unzip: { debian: 'unzip', used: /'unzip'/ },
  xmllint: { debian: 'libxml2-utils', used: /'xmllint'/ },
};

function onPath(program) {
  const folders = (process.env.PATH ?? '').split(delimiter);
  return folders.map((folder) => join(folder, program)).find(existsSync) ?? null;
}

/** FFmpeg's file inside its package, made executable; null where there is none for this machine. */
function packagedFfmpeg() {
  try {
    const { path } = require('@ffmpeg-installer/ffmpeg');
    chmodSync(path, 0o755);
    return path;
  } catch {
    return null;
  }
}

/** Puts the FFmpeg of the packages on the path where the machine has none of its own. */
export function preparePath() {
  const packaged = onPath('ffmpeg') ? null : packagedFfmpeg();
  if (packaged) process.env.PATH = `${process.env.PATH}${delimiter}${dirname(packaged)}`;
}

/**
 * The Chromium that browser tests drive: Debian's, else that of the packages, unpacked once into the temporary folder.
 * @throws Error when this machine has neither.
 */
export async function chromiumPath() {
  const own = onPath('chromium');
  if (own) return own;
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new Error('Browser tests need Chromium on the path');
  }
  const { default: packaged } = await import('@sparticuz/chromium');
  return packaged.executablePath();
}

async function chromiumStarts() {
  try {
    return spawnSync(await chromiumPath(), ['--version', '--no-sandbox']).status === 0;
  } catch {
    return false;
  }
}

/** Debian installs mido for its own Python, which need not be the first one found. */
function hasMido() {
  return ['/usr/bin/python3', 'python3'].some(
    (python) => spawnSync(python, ['-c', 'import mido']).status === 0,
  );
}

/** Names of the programs that this machine cannot run. */
export async function missingPrograms() {
  const there = { chromium: await chromiumStarts(), mido: hasMido() };
  return Object.keys(PROGRAMS).filter((name) => !(there[name] ?? onPath(name) !== null));
}

/** Helpers of tests that a file imports, as paths. */
function helpersOf(path, text) {
  return [...text.matchAll(/from '(\.[^']*(?:testing|test)\/[^']+)'/g)].map((match) =>
    join(dirname(path), match[1]),
  );
}

/** Names of the programs that a test file uses, itself or through the helpers that it imports. */
export function programsOf(path) {
  const text = readFileSync(path, 'utf8');
  const used = Object.keys(PROGRAMS).filter((name) => PROGRAMS[name].used.test(text));
  const siblings = path.includes('/testing/')
    ? [...text.matchAll(/from '(\.\/[^']+)'/g)].map((match) => join(dirname(path), match[1]))
    : [];
  const helpers = [...helpersOf(path, text), ...siblings].filter(
    (helper) => existsSync(helper) && !helper.endsWith('/programs.mjs'),
  );
  return new Set([...used, ...helpers.flatMap((helper) => [...programsOf(helper)])]);
}
