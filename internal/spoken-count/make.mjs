/**
 * Makes the recordings of the spoken count anew: one FLAC file a language, every word in a place of its own.
 *
 * Says each word with SVOX Pico (`pico2wave`, Debian's non-free `libttspico-utils`), takes the silence off, brings all to
 * one loudness, and tells where each word is felt to fall. Needs FFmpeg; see SOURCE.md beside what it makes.
 * Run: node internal/spoken-count/make.mjs
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const TO = fileURLToPath(new URL('../../packages/sound/src/spoken/', import.meta.url));
const FFMPEG = 'ffmpeg';
const RATE_HZ = 16_000;
/** Seconds from the start of one word to that of the next. */
const PLACE_SECONDS = 0.5;
/** Faster than plain speech: a count is short. */
const SPEED = 125;
/** Below this share of its loudest 10 ms a word is silent: the f of "four" lies far below its vowel. */
const SILENT = 0.006;
/** Loudest 50 ms of every word, as a share of full scale. */
const LOUDEST = 0.22;

const COMMON = { ta: 'ta', di: 'di', gi: 'gi', na: 'na', tom: 'tom', ka: 'ka', mi: 'mi', ki: 'ki' };
const SAID = {
  en: {
    voice: 'en-US',
    words: {
      ...{
        1: 'one',
        2: 'two',
        3: 'three',
        4: 'four',
        5: 'five',
        6: 'six',
        7: 'seven',
        8: 'eight',
        9: 'nine',
      },
      ...{ 10: 'ten', 11: 'eleven', 12: 'twelve', '&': 'and', trip: 'trip', let: 'let', e: 'e', a: 'uh' },
      ...COMMON,
    },
  },
  de: {
    voice: 'de-DE',
    words: {
      ...{
        1: 'eins',
        2: 'zwei',
        3: 'drei',
        4: 'vier',
        5: 'fünf',
        6: 'sechs',
        7: 'sieben',
        8: 'acht',
        9: 'neun',
      },
      ...{ 10: 'zehn', 11: 'elf', 12: 'zwölf', '&': 'und', trip: 'tri', let: 'ole', e: 'e', a: 'de' },
      ...COMMON,
    },
  },
};

const work = mkdtempSync(join(tmpdir(), 'spoken-count-'));

/** Samples of a file, by FFmpeg. */
function samplesOf(path, filters) {
  const out = execFileSync(FFMPEG, [
    ...['-v', 'error', '-i', path, ...(filters ? ['-af', filters] : [])],
    ...['-f', 'f32le', '-ac', '1', '-ar', `${RATE_HZ}`, '-'],
  ]);
  return new Float32Array(out.buffer.slice(out.byteOffset, out.byteOffset + out.byteLength));
}

/** Root mean square of every window of some seconds. */
function envelopeOf(samples, seconds) {
  const width = Math.round(seconds * RATE_HZ);
  const out = new Float32Array(samples.length);
  let sum = 0;
  for (let at = 0; at < samples.length; at += 1) {
    sum += samples[at] ** 2 - (at >= width ? samples[at - width] ** 2 : 0);
    out[Math.max(0, at - (width >> 1))] = Math.sqrt(Math.max(0, sum) / width);
  }
  return out;
}

/** A word without the silence round it. */
function spoken(voice, word) {
  const path = join(work, 'word.wav');
  execFileSync('pico2wave', ['-l', voice, '-w', path, `<speed level='${SPEED}'>${word}</speed>`]);
  const all = samplesOf(path);
  const envelope = envelopeOf(all, 0.01);
  const loudest = Math.max(...envelope);
  const from = envelope.findIndex((level) => level > loudest * SILENT);
  const to = envelope.findLastIndex((level) => level > loudest * SILENT);
  const most = Math.round((PLACE_SECONDS - 0.02) * RATE_HZ);
  const trimmed = all.slice(from, Math.min(to, from + most));
  const gain = LOUDEST / Math.max(...envelopeOf(trimmed, 0.05));
  const fade = Math.round(0.01 * RATE_HZ);
  return trimmed.map(
    (sample, at) => sample * gain * Math.min(1, at / (fade / 5), (trimmed.length - at) / fade),
  );
}

/**
 * Where a word is felt to fall, in seconds from its start: where what lies between 500 and 1500 Hz first reaches half
 * of its loudest, which is about where its vowel begins. After Scott 1998, Psychological Research 61 (from memory).
 */
function feltAt(word) {
  const path = join(work, 'band.f32');
  writeFileSync(path, Buffer.from(word.buffer));
  const out = execFileSync(FFMPEG, [
    ...['-v', 'error', '-f', 'f32le', '-ac', '1', '-ar', `${RATE_HZ}`, '-i', path],
    ...['-af', 'highpass=f=500,lowpass=f=1500', '-f', 'f32le', '-'],
  ]);
  const envelope = envelopeOf(
    new Float32Array(out.buffer.slice(out.byteOffset, out.byteOffset + out.byteLength)),
    0.02,
  );
  return envelope.findIndex((level) => level > Math.max(...envelope) / 2) / RATE_HZ;
}

const LANGUAGES = { en: 'english', de: 'german' };

/** The words of a language as one run of samples, and where each is. */
function runOf({ voice, words }) {
  const all = new Float32Array(Math.round(Object.keys(words).length * PLACE_SECONDS * RATE_HZ));
  const round = (seconds) => Math.round(seconds * 1000) / 1000;
  const places = Object.entries(words).map(([name, word], index) => {
    const samples = spoken(voice, word);
    const startSeconds = index * PLACE_SECONDS;
    all.set(samples, Math.round(startSeconds * RATE_HZ));
    return [name, [startSeconds, round(samples.length / RATE_HZ), round(feltAt(samples))]];
  });
  return { all, places: Object.fromEntries(places) };
}

const places = {};
for (const [tag, name] of Object.entries(LANGUAGES)) {
  const run = runOf(SAID[tag]);
  places[tag] = run.places;
  const path = join(work, 'all.f32');
  writeFileSync(path, Buffer.from(run.all.buffer));
  execFileSync(FFMPEG, [
    ...['-v', 'error', '-y', '-f', 'f32le', '-ac', '1', '-ar', `${RATE_HZ}`, '-i', path],
    ...['-sample_fmt', 's16', '-compression_level', '12', join(TO, `${name}.flac`)],
  ]);
}
writeFileSync(
  join(TO, 'places.data.ts'),
  `/** Where each word of the spoken count lies in its recording: start, length, and where it is felt to fall from there, in seconds. Written by internal/spoken-count/make.mjs. */
export const PLACES = ${JSON.stringify(places, null, 2)} as const;\n`,
);
