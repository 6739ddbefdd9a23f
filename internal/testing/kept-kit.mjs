/**
 * Kits that tests play on, made once: a kit takes seconds of the processor, and dozens of tests want the same one.
 * Each of its sounds is made when it is first asked for and lies in the temporary folder from then on, for other files
 * of tests and their processes, and for pages. Tests whose subject is the sound itself make their own.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createKit, SOUND_NAMES } from '@shedbook/sound';
import { makeOnce } from './made-once.mjs';

/** Rooms that a kit is made of. */
const SOURCES = ['core', 'signal', 'sound'].map((room) =>
  fileURLToPath(new URL(`../../packages/${room}/src`, import.meta.url)),
);

/** What the rooms that a kit is made of contain, in short. */
function hashOfSources() {
  const hash = createHash('sha256');
  for (const folder of SOURCES) {
    const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
      name.endsWith('.ts'),
    );
    for (const name of names.toSorted()) hash.update(readFileSync(join(folder, name)));
  }
  return hash.digest('hex').slice(0, 16);
}

const HASH = hashOfSources();

/** The folder of a kit's sounds. */
function folderOf({ sampleRateHz, seed }) {
  const kit = `${sampleRateHz}-${seed.replaceAll(/\W/g, '-')}`;
  return join(tmpdir(), `shedbook-kit-${HASH}`, kit);
}

/** Whatever has samples in it as JSON, and the samples one after the other. */
export function written(sound) {
  const parts = [];
  let at = 0;
  const shape = JSON.stringify(sound, (_, value) => {
    if (!(value instanceof Float32Array || value instanceof Float64Array)) return value;
    parts.push(new Uint8Array(value.buffer, value.byteOffset, value.byteLength));
    const place = { samples: value.constructor.name, at, bytes: value.byteLength };
    at += value.byteLength;
    return place;
  });
  return { shape, bytes: Buffer.concat(parts) };
}

/** The sound of the two files that {@link written} gives. */
function read(folder, name) {
  const shape = readFileSync(join(folder, `${name}.json`), 'utf8');
  const { buffer, byteOffset } = readFileSync(join(folder, `${name}.bin`));
  const samples = { Float32Array, Float64Array };
  return JSON.parse(shape, (_, value) => {
    if (value?.samples === undefined || value.at === undefined) return value;
    const from = byteOffset + value.at;
    return new samples[value.samples](buffer.slice(from, from + value.bytes));
  });
}

/** Writes a file whole or not at all: another process may be reading it. */
function writeWhole(path, content) {
  const half = `${path}.${process.pid}`;
  writeFileSync(half, content);
  renameSync(half, path);
}

function keep(folder, name, sound) {
  const { shape, bytes } = written(sound);
  mkdirSync(folder, { recursive: true });
  // The samples first: whoever finds the shape finds them too.
  writeWhole(join(folder, `${name}.bin`), bytes);
  writeWhole(join(folder, `${name}.json`), shape);
}

/** How long a sound takes at most, in milliseconds. */
const MADE_MS = 60_000;

/** Kits of this process. */
const kits = new Map();

function makeKept(options) {
  const folder = folderOf(options);
  const kit = createKit(options);
  const sounds = new Map();
  const find = (name) => {
    makeOnce(join(folder, `${name}.json`), () => keep(folder, name, kit.sound(name)), MADE_MS);
    return read(folder, name);
  };
  const sound = (name) => {
    if (!sounds.has(name)) sounds.set(name, find(name));
    return sounds.get(name);
  };
  return { ...kit, folder, sound, prepare: (names = SOUND_NAMES) => names.forEach(sound) };
}

/**
 * The kit that `createKit` makes of the same options, sample for sample, and the folder in which its sounds lie as far
 * as they were asked for: NAME.json and NAME.bin.
 * @type {(options: import('@shedbook/sound').KitOptions) => import('@shedbook/sound').Kit & { readonly folder: string }}
 */
export function keptKit({ sampleRateHz, seed = 'set' }) {
  const key = `${sampleRateHz} ${seed}`;
  const kit = kits.get(key) ?? makeKept({ sampleRateHz, seed: String(seed) });
  kits.set(key, kit);
  return kit;
}

/** How long a light sound lasts, in seconds. */
const LIGHT_SECONDS = 0.1;

/** A sound cut to its start, of its plainest layer alone. */
function lightened(sound, sampleRateHz) {
  const plain = sound.layers.reduce((best, each) =>
    Math.abs(each.driveDb) < Math.abs(best.driveDb) ? each : best,
  );
  const [take] = plain.takes;
  const samples = take.samples.slice(0, Math.round(LIGHT_SECONDS * sampleRateHz));
  const takes = [{ ...take, samples, late: new Float32Array(0) }];
  return { ...sound, layers: [{ driveDb: plain.driveDb, takes, tail: null }], wash: [] };
}

/**
 * The same kit with every stroke alike and a tenth of a second long, for tests that hear when something sounds and not
 * how: a kit is 60 MB to hand over, and its cymbals ring in dozens at once.
 * @type {(options: import('@shedbook/sound').KitOptions) => import('@shedbook/sound').Kit}
 */
export function lightKit(options) {
  const kit = keptKit(options);
  const sounds = new Map();
  const sound = (name) => {
    if (!sounds.has(name)) sounds.set(name, lightened(kit.sound(name), kit.sampleRateHz));
    return sounds.get(name);
  };
  return { ...kit, sound, prepare: (names = SOUND_NAMES) => names.forEach(sound) };
}
