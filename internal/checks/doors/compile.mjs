/**
 * What the compiler asks for when something is added: a copy of the sources of all rooms with the additions of every
 * door, type-checked once.
 */
import { spawnSync } from 'node:child_process';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROOMS } from '../rooms.data.mjs';
import { ROOT } from '../tree.mjs';

/** Where the sources of a room's entries lie, `@shedbook/NAME/ENTRY` each, so that no file is read from two places. */
function entriesOf(room) {
  const { name, exports } = JSON.parse(readFileSync(join(ROOT, 'packages', room, 'package.json'), 'utf8'));
  return Object.entries(exports).flatMap(([entry, target]) => {
    const source = typeof target === 'string' ? target : target['shedbook-source'];
    const isCode = entry !== '.' && /^[^*]+\.tsx?$/.test(source ?? '');
    return isCode ? [[`${name}${entry.slice(1)}`, [`./packages/${room}/${source.slice(2)}`]]] : [];
  });
}

const OPTIONS = {
  target: 'ES2023',
  lib: ['ES2023', 'DOM', 'DOM.Iterable', 'WebWorker.ImportScripts'],
  module: 'ESNext',
  moduleResolution: 'Bundler',
  types: ['node', 'vite/client'],
  strict: true,
  noUncheckedIndexedAccess: true,
  exactOptionalPropertyTypes: true,
  noImplicitReturns: true,
  verbatimModuleSyntax: true,
  skipLibCheck: true,
  jsx: 'react-jsx',
  noEmit: true,
  allowImportingTsExtensions: true,
  paths: {
    ...Object.fromEntries(readdirSync(join(ROOT, 'packages')).flatMap(entriesOf)),
    '@shedbook/*': ['./packages/*/src/index.ts'],
  },
};

/** A copy of every room's sources, without tests, in a new folder. */
function copySources() {
  const folder = mkdtempSync(join(tmpdir(), 'doors-'));
  const isSource = (path) => !/\.(test|bench)\.tsx?$|\.snapshot$/.test(path);
  for (const part of ['packages', 'apps']) {
    for (const room of readdirSync(join(ROOT, part))) {
      mkdirSync(join(folder, part, room), { recursive: true });
      const from = join(ROOT, part, room, 'src');
      cpSync(from, join(folder, part, room, 'src'), { recursive: true, filter: isSource });
    }
  }
  symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'), 'junction');
  writeFileSync(
    join(folder, 'tsconfig.json'),
    JSON.stringify({ compilerOptions: OPTIONS, include: ['packages/*/src', 'apps/*/src'] }),
  );
  return folder;
}

function put(folder, { file, after, add }) {
  const path = join(folder, file);
  const text = readFileSync(path, 'utf8');
  if (text.split(after).length !== 2) throw new Error(`${file}: "${after}" does not stand there once`);
  writeFileSync(
    path,
    text.replace(after, () => after + add),
  );
}

/** Faults that follow from others: an index into a table that lacks the addition, an element made of such a function. */
const FOLLOWS = { index: 'TS7053', element: 'TS2786' };

/** The faults in what the compiler says: file, line, and the whole message. */
function readFaults(said) {
  return said.split(/\n(?=\S)/).flatMap((text) => {
    const match = /^(\S+?)\((\d+),\d+\): error (TS\d+): ([\s\S]*)$/.exec(text);
    return match ? [{ file: match[1], line: Number(match[2]), code: match[3], message: match[4] }] : [];
  });
}

const DECLARES = /^(?:export )?(?:default )?(?:async )?(?:const|function\*?|class|interface|type) (\w+)/;

/** What a line belongs to: the last thing declared at the margin. */
function declaredAt(folder, { file, line }) {
  const lines = readFileSync(join(folder, file), 'utf8').split('\n').slice(0, line);
  return lines.map((each) => DECLARES.exec(each)?.[1]).findLast(Boolean) ?? 'the file';
}

/** Whether a fault is about an addition: it is what is missing, or it is named. */
function isAbout(names, { message }) {
  const missing = /^Property '([^']+)' is missing/.exec(message)?.[1];
  return missing
    ? names.includes(missing)
    : names.some((name) => new RegExp(`['"]${name}['"]`).test(message));
}

const FLOORS = new Map(ROOMS.map(({ name, floor }) => [name, floor]));
const ORDER = ROOMS.map(({ name }) => name);
const roomOf = ({ file }) => file.split('/').slice(0, 2).join('/');
const floorOf = (fault) => FLOORS.get(roomOf(fault)) ?? 0;

/** An index fails in every room above a table that lacks the addition; only where no lower room lacks it is it a place. */
function isPlace(fault, faults) {
  if (fault.code === FOLLOWS.element) return false;
  return fault.code !== FOLLOWS.index || !faults.some((other) => floorOf(other) < floorOf(fault));
}

/** Places of faults, lowest rooms first, each once. */
function placesOf(folder, faults) {
  const order = (fault) => ORDER.indexOf(roomOf(fault));
  const places = faults
    .filter((fault) => isPlace(fault, faults))
    .toSorted((a, b) => order(a) - order(b))
    .map((fault) => `${fault.file}: ${declaredAt(folder, fault)}`);
  return [...new Set(places)];
}

/**
 * Where the compiler asks for something when `doors` have their additions: `places` by door, each a file and what is
 * declared there; `strays` are faults that name no addition.
 */
export function askedBehind(doors) {
  const folder = copySources();
  try {
    for (const { edits } of doors) for (const edit of edits) put(folder, edit);
    const tsc = join(ROOT, 'node_modules/typescript/bin/tsc');
    const { stdout } = spawnSync(process.execPath, [tsc, '-p', folder, '--pretty', 'false'], {
      cwd: folder,
      encoding: 'utf8',
      maxBuffer: 2 ** 26,
    });
    const faults = readFaults(stdout);
    const strays = faults.filter(
      (fault) => fault.code !== FOLLOWS.index && !doors.some(({ names }) => isAbout(names, fault)),
    );
    return {
      places: doors.map(({ names }) =>
        placesOf(
          folder,
          faults.filter((fault) => isAbout(names, fault)),
        ),
      ),
      strays: strays.map(({ file, line, message }) => `${file}:${line}: ${message}`),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
