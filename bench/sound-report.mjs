/**
 * Pictures and figures of every sound of the kit at three levels, to be looked at.
 *
 * Usage: node bench/sound-report.mjs OUTDIR [--kit FILE.sf2]
 * Writes a WAV and a spectrogram for each sound and level, one sheet of all spectrograms, and figures.md.
 * Needs sox (spectrograms) and montage from ImageMagick (the sheet).
 */

import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Hertz, LeadDb, Seconds } from '@shedbook/core';
import { dbToPower, energyOf, gainToDb, hann, PowerSpectrum, peakOf, powerToDb } from '@shedbook/signal';
import { createKit, encodeWav, loadSoundFontKit, measureLoudness, render } from '@shedbook/sound';

const RATE = Hertz(44_100);
const LEVELS_DB = [-18, 0, 6].map(LeadDb);
const SHOWN_SECONDS = { ride: 2.5, crash: 2.5, 'hihat-open': 1.5 };

/** @typedef {import('@shedbook/sound').SoundingStroke} Stroke */

/**
 * Every sound that strokes can ask for: file name, then the stroke.
 * @type {readonly (readonly [string, Pick<Stroke, 'voice'> & Partial<Stroke>])[]}
 */
const STROKES = [
  ['ride', { voice: 'ride' }],
  ['ride-bell', { voice: 'ride', articulation: 'bell' }],
  ['hihat', { voice: 'hihat' }],
  ['hihat-open', { voice: 'hihat-open' }],
  ['hihat-foot', { voice: 'hihat-foot' }],
  ['hihat-splash', { voice: 'hihat-foot', articulation: 'splash' }],
  ['bass', { voice: 'bass' }],
  ['snare', { voice: 'snare' }],
  ['snare-buzz', { voice: 'snare', articulation: 'buzz' }],
  ['sidestick', { voice: 'sidestick' }],
  ['rimshot', { voice: 'rimshot' }],
  ['crash', { voice: 'crash' }],
  ['tom-high', { voice: 'tom-high' }],
  ['tom-mid', { voice: 'tom-mid' }],
  ['tom-low', { voice: 'tom-low' }],
  ['click-accent', { voice: 'click', mark: 'X' }],
  ['click-beat', { voice: 'click', mark: 'x' }],
  ['click-subdivision', { voice: 'click', mark: 'g' }],
];

/** Mean frequency of a stretch, weighted by amplitude, in hertz. */
function centroidHz(samples, fromSeconds, seconds) {
  const size = 16384;
  const share = Math.min(1, (seconds * RATE) / size);
  const falling = (place) => (place < share ? hann(0.5 + (0.5 * place) / share) : 0);
  const frame = new Float32Array(size);
  frame.set(samples.subarray(Math.round(fromSeconds * RATE)).subarray(0, size));
  const power = new Float64Array(size / 2 + 1);
  new PowerSpectrum(size, falling).compute(frame, 0, power);
  let [sum, weighted] = [0, 0];
  for (let k = 1; k < size / 2; k += 1) {
    const amplitude = Math.sqrt(power[k] ?? 0);
    sum += amplitude;
    weighted += (amplitude * k * RATE) / size;
  }
  return weighted / sum;
}

/** Seconds until the energy that is still to come has fallen by `db`. */
function decaySeconds(samples, db) {
  let rest = energyOf(samples);
  const goal = rest * dbToPower(-db);
  for (let i = 0; i < samples.length; i += 1) {
    rest -= (samples[i] ?? 0) ** 2;
    if (rest <= goal) return i / RATE;
  }
  return samples.length / RATE;
}

function figures(name, levelDb, audio) {
  const { left } = audio;
  const over = { left: left.slice(0, 4410), right: audio.right.slice(0, 4410), sampleRateHz: RATE };
  const padded = { ...over, left: padTo400(over.left), right: padTo400(over.right) };
  const level = measureLoudness(padded).momentaryLufs + powerToDb(4);
  const cells = [
    name,
    levelDb,
    level.toFixed(2),
    gainToDb(peakOf(left)).toFixed(1),
    centroidHz(left, 0, 0.02).toFixed(0),
    centroidHz(left, 0, 0.2).toFixed(0),
    centroidHz(left, 0.2, 0.3).toFixed(0),
    (1000 * decaySeconds(left, 20)).toFixed(0),
    (1000 * decaySeconds(left, 40)).toFixed(0),
  ];
  return `| ${cells.join(' | ')} |`;
}

function padTo400(samples) {
  const padded = new Float32Array(17640);
  padded.set(samples);
  return padded;
}

function makeKit() {
  const at = process.argv.indexOf('--kit');
  if (at < 0) return createKit({ sampleRateHz: RATE });
  return loadSoundFontKit(readFileSync(process.argv[at + 1] ?? ''), { sampleRateHz: RATE });
}

const out = process.argv[2];
if (!out) {
  process.stderr.write('Usage: node bench/sound-report.mjs OUTDIR [--kit FILE.sf2]\n');
  process.exit(2);
}
mkdirSync(out, { recursive: true });
const kit = makeKit();
const lines = [
  '| sound | asked dB | K-weighted, first 100 ms, LUFS | peak dBFS | centroid 0–20 ms, Hz | 0–200 ms | 200–500 ms | ms to −20 dB | ms to −40 dB |',
  '|---|---|---|---|---|---|---|---|---|',
];
const pictures = [];
for (const [name, stroke] of STROKES) {
  for (const levelDb of LEVELS_DB) {
    /** @type {readonly Stroke[]} */
    const strokes = [{ articulation: 'normal', mark: 'x', timeSeconds: Seconds(0), levelDb, ...stroke }];
    const audio = render({ strokes, durationSeconds: Seconds(0.5) }, { kit, room: false, picture: false });
    lines.push(figures(name, levelDb, audio));
    const wav = join(out, `${name}_${levelDb}.wav`);
    writeFileSync(wav, encodeWav(audio, { format: 'float32' }));
    const png = join(out, `${name}_${levelDb}.png`);
    const seconds = String(SHOWN_SECONDS[name] ?? (name.startsWith('ride') ? 2.5 : 0.6));
    const normal = ['gain', '-n', '-1', 'remix', '1', 'trim', '0', seconds];
    const view = [
      'spectrogram',
      '-x',
      '420',
      '-y',
      '257',
      '-z',
      '80',
      '-t',
      `${name} ${levelDb} dB`,
      '-o',
      png,
    ];
    execFileSync('sox', [wav, '-n', ...normal, ...view], { stdio: 'ignore' });
    pictures.push(png);
  }
}
writeFileSync(join(out, 'figures.md'), `${lines.join('\n')}\n`);
const sheet = (from, to, file) =>
  execFileSync('montage', [...pictures.slice(from, to), '-tile', '3x', '-geometry', '+2+2', join(out, file)]);
for (let i = 0; i < pictures.length; i += 9) sheet(i, i + 9, `sheet-${1 + i / 9}.png`);
process.stdout.write(`${lines.join('\n')}\nPictures and figures in ${out}\n`);
