/**
 * Prints what a line check is worth: how takes of grooves that lessons start from are heard without it and with it, and how
 * many strokes of limbs that stay out are believed.
 *
 * Usage: node line-check.mjs room|phone [SOUNDFONT [PROGRAM]]   (build the packages first; SEED names another built-in kit)
 *
 * Strokes scatter by 9 ms and 1.8 dB, 3 of a hundred stay out, and none sounds quite like another: three equalizers of four
 * random bells each. The room is made up, the phone adds its high pass, its automatic gain and its coding (FFmpeg). The check
 * has six voices, eight strokes of each. Refused takes count as nothing heard.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { Hertz, parseLesson, perform, Seconds, seededRandom, starterText } from '@shedbook/core';
import { learnKitInTurn, listen } from '@shedbook/listen';
import { createKit, loadSoundFontKit, render } from '@shedbook/sound';

const RATE = 44_100;
const [condition, font, program] = process.argv.slice(2);
const options = {
  sampleRateHz: Hertz(RATE),
  ...(process.env.SEED ? { seed: process.env.SEED } : {}),
  ...(program ? { program: Number(program) } : {}),
};
const kit = font ? loadSoundFontKit(readFileSync(font), options) : createKit(options);
const CHECK_DB = { ride: 0, hihat: 0, 'hihat-foot': -6, bass: -6, snare: -1, sidestick: -2 };
const VOICES = Object.keys(CHECK_DB);
const MUTED = ['hihat-foot', 'bass', 'snare', 'sidestick'];
const FORM = {
  name: 'loop',
  sections: [{ play: 'pattern', bars: 8, ending: null }],
  repeat: 1,
  countInBars: 0,
};
const normal = (random) =>
  Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next());

/** A bell at a random place, up or down by some 2 dB (R. Bristow-Johnson's cookbook). */
function bell(sound, random) {
  const turn = (2 * Math.PI * 120 * 2 ** (6.4 * random.next())) / RATE;
  const gain = 10 ** ((2 * normal(random)) / 40);
  const alpha = Math.sin(turn) / 1.6;
  const [b0, b1, b2] = [1 + alpha * gain, -2 * Math.cos(turn), 1 - alpha * gain];
  const [a0, a2] = [1 + alpha / gain, 1 - alpha / gain];
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  return sound.map((x) => {
    const y = (b0 * x + b1 * x1 + b2 * x2 - b1 * y1 - a2 * y2) / a0;
    [x2, x1, y2, y1] = [x1, x, y1, y];
    return y;
  });
}

function sounded(strokes, seconds, seed) {
  const random = seededRandom(`equalizer ${seed}`);
  const groups = [[], [], []];
  for (const stroke of strokes) groups[random.below(3)].push(stroke);
  const whole = new Float32Array(Math.ceil(seconds * RATE));
  for (const group of groups) {
    if (group.length === 0) continue;
    const what = { strokes: group, durationSeconds: Seconds(seconds) };
    const { left, right } = render(what, { kit, room: false, tail: 'cut' });
    let mono = left.map((sample, i) => (sample + right[i]) / 2);
    for (let i = 0; i < 4; i += 1) mono = bell(mono, random);
    for (let i = 0; i < Math.min(whole.length, mono.length); i += 1) whole[i] += mono[i];
  }
  return whole;
}

const floats = ({ buffer, byteOffset, byteLength }) =>
  new Float32Array(buffer.slice(byteOffset, byteOffset + byteLength - (byteLength % 4)));
const RAW = ['-f', 'f32le', '-ac', '1', '-ar', String(RATE)];
const ffmpeg = (input, args) =>
  spawnSync('ffmpeg', ['-v', 'error', ...args, '-'], { input, maxBuffer: 2 ** 28 }).stdout;
const PHONE =
  'highpass=f=140,acompressor=threshold=0.06:ratio=4:attack=8:release=250:makeup=2.5,alimiter=limit=0.9';

function recorded(sound, seed) {
  const [walls, noise] = [seededRandom(`room ${condition}`), seededRandom(`noise ${seed}`)];
  const room = sound.slice();
  for (let k = 0; k < 240; k += 1) {
    const late = walls.next() ** 2 * 0.35;
    const gain = 0.24 * normal(walls) * Math.exp((-6.9 * late) / 0.35);
    for (let i = Math.round(120 + late * RATE); i < room.length; i += 1)
      room[i] += gain * sound[i - Math.round(120 + late * RATE)];
  }
  const most = room.reduce((peak, sample) => Math.max(peak, Math.abs(sample)), 1e-6);
  const heard = room.map((sample) => (0.5 * sample) / most + 3e-4 * normal(noise));
  if (condition !== 'phone') return heard;
  const coded = ffmpeg(Buffer.from(heard.buffer), [
    ...RAW,
    '-i',
    '-',
    '-af',
    PHONE,
    '-c:a',
    'libopus',
    '-b:a',
    '40k',
    '-f',
    'ogg',
  ]);
  return floats(ffmpeg(coded, ['-i', '-', ...RAW]));
}

function lineCheck(like) {
  const random = seededRandom('line check');
  const strokes = VOICES.flatMap((voice, limb) =>
    Array.from({ length: 8 }, (_, i) => ({
      ...{ ...like, voice, levelDb: CHECK_DB[voice] + 2.5 * normal(random) },
      timeSeconds: Seconds(1 + 5 * limb + 0.5 * i + 0.012 * normal(random)),
    })),
  );
  const samples = recorded(sounded(strokes, 5 * VOICES.length + 2, 'check'), 'check');
  return learnKitInTurn({ samples, sampleRateHz: options.sampleRateHz }, VOICES);
}

function takeOf(asked, without, seed) {
  const { strokes, durationSeconds } = perform(asked.lesson, asked);
  const random = seededRandom(seed);
  const own = strokes.flatMap((stroke) => {
    const [late, louder, out] = [0.009 * normal(random), 1.8 * normal(random), random.next() < 0.03];
    if (stroke.voice === 'click' || stroke.voice === without || out) return [];
    return [
      { ...stroke, timeSeconds: Seconds(stroke.timeSeconds + 0.7 + late), levelDb: stroke.levelDb + louder },
    ];
  });
  const ordered = own.toSorted((a, b) => a.timeSeconds - b.timeSeconds);
  return { strokes: ordered, samples: recorded(sounded(ordered, durationSeconds + 1.7, seed), seed) };
}

const sums = {};
function count(way, { report }, strokes, without) {
  sums[way] ??= { refused: 0, believed: 0, voices: {} };
  const sum = sums[way];
  if (!report) sum.refused += 1;
  for (const voice of new Set(strokes.map((stroke) => stroke.voice))) {
    const own = (report?.strokes ?? []).filter((stroke) => stroke.voice === voice);
    const truth = strokes.filter((stroke) => stroke.voice === voice);
    const free = new Set(own);
    for (const { timeSeconds } of truth) {
      const near = [...free].find((one) => Math.abs(one.timeSeconds - timeSeconds) < 0.05);
      if (near) free.delete(near);
    }
    sum.voices[voice] ??= { played: 0, there: 0, invented: 0 };
    sum.voices[voice].played += truth.length;
    sum.voices[voice].there += own.length - free.size;
    sum.voices[voice].invented += free.size;
  }
  sum.believed += report?.voices[without]?.hits ?? 0;
}

let known = null;
for (const name of ['swing', 'jazz-waltz', 'bossa', 'rock-eighths']) {
  const { lesson } = parseLesson(starterText(name, name), name);
  const asked = { lesson, exercise: 1, form: FORM, bpm: lesson.tempo.startBpm };
  const { strokes: written } = perform(lesson, asked);
  known ??= lineCheck(written.find(({ voice }) => voice !== 'click'));
  if (!known) throw new Error('the limbs of this line check cannot be told apart');
  const mutes = MUTED.filter((voice) => written.some((stroke) => stroke.voice === voice));
  for (const without of [undefined, ...mutes]) {
    const { strokes, samples } = takeOf(asked, without, `${name} ${without}`);
    count('without', listen(samples, options.sampleRateHz, asked), strokes, without);
    count(
      'with',
      listen(samples, options.sampleRateHz, asked, { kit: { name: 'check', ...known } }),
      strokes,
      without,
    );
  }
}
for (const [way, { refused, believed, voices }] of Object.entries(sums)) {
  console.log(`${way}: ${refused} refused, ${believed} strokes of silent limbs believed`);
  for (const [voice, { played, there, invented }] of Object.entries(voices))
    console.log(
      `  ${voice.padEnd(11)} ${(there / played).toFixed(3)} of ${played} there, ${invented} invented`,
    );
}
