/**
 * Programs from outside that tests compare with: where each is found, and which test file needs which.
 *
 * Chromium and FFmpeg come from packages of the registry, so that a machine with Node alone has them after `npm ci`;
 * the machine's own is used where it is installed. Firefox, WebKitGTK and what they need of a machine without screen and
 * loudspeaker are the machine's.
 */
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  createReadStream,
  createWriteStream,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { createBrotliDecompress } from 'node:zlib';

const require = createRequire(import.meta.url);

/** Debian's package of each program, and how a test file shows that it uses it. */
export const PROGRAMS = {
  chromium: { debian: 'chromium-headless-shell', used: /\bchromiumPath\(/ },
  ffmpeg: { debian: 'ffmpeg', used: /'ffmpeg'/ },
  firefox: { debian: 'firefox-esr', used: /\bfirefoxPath\(/ },
  webkit: { debian: 'webkit2gtk-driver', used: /\bwebkitDriverPath\(/ },
  pulseaudio: { debian: 'pulseaudio', used: /'pulseaudio'/ },
  xvfb: { debian: 'xvfb', used: /'Xvfb'/ },
  postgresql: { debian: 'postgresql', used: /\bpostgresPath\(/ },
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

const starts = (browser) => spawnSync(browser, ['--version', '--no-sandbox']).status === 0;

/** Unpacks the Chromium of the packages beside the libraries and fonts that it brings, whole or not at all. */
async function unpackChromium(packed, folder) {
  // Not at the top: this module is read before the packages are installed.
  const { extract } = await import('tar-fs');
  const half = mkdtempSync(`${folder}-`);
  const unpack = (name, to) => pipeline(createReadStream(join(packed, name)), createBrotliDecompress(), to);
  await unpack('chromium.br', createWriteStream(join(half, 'chromium'), { mode: 0o755 }));
  for (const name of ['swiftshader', 'fonts', 'al2023']) await unpack(`${name}.tar.br`, extract(half));
  try {
    renameSync(half, folder);
  } catch {
    // Another process was first.
    rmSync(half, { recursive: true });
  }
}

/** The Chromium of the packages, unpacked once into the temporary folder; what it needs is on the environment. */
async function packagedChromium() {
  const packed = join(dirname(require.resolve('@sparticuz/chromium')), '../../bin');
  const { version } = JSON.parse(readFileSync(join(packed, '../package.json'), 'utf8'));
  const folder = join(tmpdir(), `shedbook-chromium-${version}`);
  if (!existsSync(folder)) await unpackChromium(packed, folder);
  const path = join(folder, 'chromium');
  if (!existsSync('/etc/fonts')) process.env.FONTCONFIG_PATH ??= join(folder, 'fonts');
  if (!starts(path)) {
    const others = process.env.LD_LIBRARY_PATH;
    process.env.LD_LIBRARY_PATH = [join(folder, 'lib'), ...(others ? [others] : [])].join(delimiter);
  }
  return path;
}

/**
 * The Chromium that browser tests drive: the machine's own, else that of the packages. The one without windows comes
 * first, since the same pages take a fifth less of the processor there.
 * @throws Error when this machine has neither.
 */
export async function chromiumPath() {
  const own = onPath('chromium-headless-shell') ?? onPath('chromium');
  if (own) return own;
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new Error('Browser tests need Chromium on the path');
  }
  return packagedChromium();
}

/** The machine's Firefox. @throws Error when there is none */
export function firefoxPath() {
  const path = onPath('firefox-esr') ?? onPath('firefox');
  if (!path) throw new Error('These tests need Firefox on the path');
  return path;
}

/** Where Debian lays WebKitGTK's plain browser, for whichever processor and whichever of its two interfaces. */
const MINIBROWSERS = ['/usr/lib/x86_64-linux-gnu', '/usr/lib/aarch64-linux-gnu', '/usr/libexec'].flatMap(
  (folder) =>
    ['webkit2gtk-4.1', 'webkit2gtk-4.0', 'webkitgtk-6.0'].map((version) =>
      join(folder, version, 'MiniBrowser'),
    ),
);

/** The machine's plain WebKitGTK browser. @throws Error when there is none */
export function minibrowserPath() {
  const path = MINIBROWSERS.find(existsSync);
  if (!path) throw new Error('These tests need the MiniBrowser of WebKitGTK');
  return path;
}

/** The driver of WebKitGTK. @throws Error when there is none */
export function webkitDriverPath() {
  const path = onPath('WebKitWebDriver');
  if (!path) throw new Error('These tests need WebKitWebDriver on the path');
  return path;
}

/** Where Debian lays the programs of each version of PostgreSQL; elsewhere they are on the path. */
const POSTGRES_VERSIONS = '/usr/lib/postgresql';

function newestPostgres() {
  const versions = existsSync(POSTGRES_VERSIONS) ? readdirSync(POSTGRES_VERSIONS).map(Number) : [];
  return versions.length === 0 ? null : join(POSTGRES_VERSIONS, `${Math.max(...versions)}`, 'bin');
}

function postgresAt(program) {
  const newest = newestPostgres();
  return newest && existsSync(join(newest, program)) ? join(newest, program) : onPath(program);
}

/** A program of the machine's PostgreSQL server, such as `initdb`. @throws Error when there is none */
export function postgresPath(program) {
  const path = postgresAt(program);
  if (!path) throw new Error('These tests need PostgreSQL');
  return path;
}

async function chromiumStarts() {
  try {
    return starts(await chromiumPath());
  } catch {
    return false;
  }
}

/** Names of the programs that this machine cannot run. */
export async function missingPrograms() {
  const there = {
    chromium: await chromiumStarts(),
    ffmpeg: onPath('ffmpeg') !== null,
    firefox: (onPath('firefox-esr') ?? onPath('firefox')) !== null,
    webkit: onPath('WebKitWebDriver') !== null && MINIBROWSERS.some(existsSync),
    pulseaudio: onPath('pulseaudio') !== null,
    xvfb: onPath('Xvfb') !== null,
    postgresql: postgresAt('initdb') !== null && postgresAt('postgres') !== null,
  };
  return Object.keys(PROGRAMS).filter((name) => !there[name]);
}

/** Helpers of tests that a file imports, as paths. */
function helpersOf(path, text) {
  return [...text.matchAll(/from '(\.[^']*(?:testing|test)\/[^']+)'/g)].map((match) =>
    join(dirname(path), match[1] ?? ''),
  );
}

/** Names of the programs that a test file uses, itself or through the helpers that it imports. */
export function programsOf(path) {
  const text = readFileSync(path, 'utf8');
  const used = Object.keys(PROGRAMS).filter((name) => PROGRAMS[name].used.test(text));
  const siblings = path.includes('/testing/')
    ? [...text.matchAll(/from '(\.\.?\/[^']+)'/g)].map((match) => join(dirname(path), match[1] ?? ''))
    : [];
  const helpers = [...helpersOf(path, text), ...siblings].filter(
    (helper) => existsSync(helper) && !helper.endsWith('/programs.mjs'),
  );
  return new Set([...used, ...helpers.flatMap((helper) => [...programsOf(helper)])]);
}
