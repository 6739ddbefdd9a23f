/**
 * A minute of film: how exactly picture and sound stand where the strokes' times say, measured in what FFmpeg decodes,
 * and what it costs beside FFmpeg encoding the same frames from a file.
 */
import { execFileSync, spawn } from 'node:child_process';
import {
  closeSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Bpm, Hertz, perform, Seconds, seededRandom } from '@shedbook/core';
import { createPainter, frameAt, planFilm } from '@shedbook/film';
import { loadEngravingTools, loadKit } from '@shedbook/host';
import { loadRasteriser, makeFilm } from '@shedbook/host/film';
import { listen } from '@shedbook/listen';
import { createProgram, followTake, landingsOf } from '@shedbook/playing';
import { median, nearestQuantile } from '@shedbook/signal';
import { createKit, render } from '@shedbook/sound';
import { barsOnce, lessonOf } from './material.mjs';

export const name = 'film';

const COMMAND = fileURLToPath(new URL('../bin/shedbook.mjs', import.meta.url));
const RATE_HZ = 48_000;
const TEMPI = [50, 93, 120, 240];
const FRAMES_EACH = 50;
/** Pixels of a millimetre: 768 × 432. */
const SMALL = 4;

const LESSON = {
  title: 'A minute',
  feel: 'triplet',
  groove: { ride: 'x x.x x x.x', 'hihat-foot': '. x . x', bass: 'x x x x' },
  exercises: ['x.. ..x x.x ...'],
};

/** @typedef {import('@shedbook/film').StagedScene} StagedScene */
/** @typedef {import('@shedbook/film').Film} Film */

/** @param {readonly string[]} args */
function ffmpeg(args) {
  return execFileSync('ffmpeg', ['-v', 'error', '-nostdin', ...args], { maxBuffer: 2 ** 31 - 1 });
}

/**
 * Middle of what has a colour over the notes, in pixels: the ball. The accent differs from ink and paper by its red.
 * @param {Buffer} frame
 * @param {Film} film
 * @param {{ readonly topPx: number, readonly bottomPx: number }} rows
 */
function ballIn(frame, { widthPx, heightPx }, { topPx, bottomPx }) {
  const [half, from] = [widthPx / 2, 1.25 * widthPx * heightPx];
  const paper = frame[from] ?? 0;
  let [sum, x, y] = [0, 0, 0];
  for (let row = Math.ceil(topPx / 2); row < bottomPx / 2; row += 1)
    for (let column = 0; column < half; column += 1) {
      const weight = Math.abs((frame[from + row * half + column] ?? paper) - paper);
      if (weight < 4) continue;
      sum += weight;
      x += weight * (2 * column + 1);
      y += weight * (2 * row + 1);
    }
  return { x: x / sum, y: y / sum };
}

/**
 * The ball in the first frame after each stroke that it comes down on (beats, and what the exercise plays), in frames that it is away from the stroke's head: its
 * way in pixels over what it moves in a frame there.
 * @param {Film} film
 * @param {StagedScene} scene
 * @param {Buffer} planes
 */
function ballErrors(film, scene, planes) {
  const bar = scene.stagePages[0]?.[0]?.bars[0];
  if (!bar) throw new Error('no bar');
  const size = 1.5 * film.widthPx * film.heightPx;
  const strokes = scene.strokes.filter(
    ({ role, voice, written }) => role === 'pattern' || (voice === 'ride' && written.slot === 1),
  );
  const rows = { topPx: 24 * SMALL, bottomPx: (bar.floorMm + 1.5 * bar.size) * SMALL };
  return strokes.slice(0, FRAMES_EACH).map(({ timeSeconds, at, voice }) => {
    const exact = scene.leadFrames + timeSeconds * film.request.framesPerSecond;
    const frame = scene.startFrame + Math.ceil(exact - 1e-6);
    const seen = ballIn(planes.subarray(frame * size, (frame + 1) * size), film, rows);
    const inBar = at.num / at.den - Math.floor(at.num / at.den);
    const head = bar.bar.tile.heads.find(
      (each) => each.voice === voice && Math.abs(each.start.num / each.start.den - inBar) < 1e-9,
    );
    const wanted = (bar.xMm + bar.size * (head?.xMm ?? 0)) * SMALL;
    const [now, next] = [frame, frame + 1].map((each) => frameAt(film, each).ball?.xMm ?? 0);
    const way = Math.max(1, Math.abs((next ?? 0) - (now ?? 0)) * SMALL);
    return Math.abs(seen.x - wanted) / way;
  });
}

/**
 * Between what lights up and what sounds at the clicks of the count-in, in ms; only where a click falls on a frame.
 * @param {Film} film
 * @param {StagedScene} scene
 * @param {Buffer} planes
 * @param {Float32Array} samples
 */
function flashErrors(film, scene, planes, samples) {
  const bar = scene.stagePages[0]?.[0]?.bars[0];
  if (!bar) throw new Error('no bar');
  const rate = film.request.framesPerSecond;
  const [half, size] = [film.widthPx / 2, 1.5 * film.widthPx * film.heightPx];
  const colour = (/** @type {number} */ frame, /** @type {number} */ x, /** @type {number} */ y) => {
    const from = frame * size + 1.25 * film.widthPx * film.heightPx;
    let most = 0;
    for (let dy = -2; dy <= 2; dy += 1)
      for (let dx = -2; dx <= 2; dx += 1)
        most = Math.max(most, Math.abs((planes[from + (y + dy) * half + x + dx] ?? 0) - (planes[from] ?? 0)));
    return most;
  };
  return [2, 3, 4].flatMap((beat) => {
    const click = scene.startFrame + scene.leadFrames + ((beat - 1) * 60 * rate) / scene.bpm;
    if (Math.abs(click - Math.round(click)) > 1e-6) return [];
    const slot = bar.bar.slots.find((each) => each.beat === beat && each.slot === 1);
    const x = Math.round(((bar.xMm + bar.size * (slot?.xMm ?? 0)) * SMALL) / 2);
    const y = Math.round(((bar.countsMm - 1.2 * bar.size) * SMALL) / 2);
    const first = Math.round(click) - 3;
    const seen = [0, 1, 2, 3, 4, 5, 6].map((by) => first + by).find((frame) => colour(frame, x, y) > 6) ?? 0;
    const from = Math.round((click / rate - 0.1) * RATE_HZ);
    const window = samples.subarray(from, from + 0.2 * RATE_HZ);
    const loudest = window.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    const heard = (from + window.findIndex((value) => Math.abs(value) > 0.1 * loudest)) / RATE_HZ;
    return [Math.abs(seen / rate - heard) * 1000];
  });
}

/** @param {string} folder */
async function exactness(folder) {
  const lesson = lessonOf(JSON.stringify({ ...LESSON, tempo: 120 }));
  const form = {
    name: 'ten',
    repeat: 1,
    countInBars: 1,
    sections: [{ play: /** @type {const} */ ('pattern'), bars: 10, ending: null }],
  };
  const film = planFilm(
    { lesson, exercises: [1], form, tempi: TEMPI.map(Bpm), framesPerSecond: 30, buildUp: false },
    { shape: 'landscape', scheme: 'light', pixelsPerMm: SMALL },
    await loadEngravingTools(),
    'en',
  );
  const out = join(folder, 'exact.mp4');
  const kit = await loadKit(null, Hertz(RATE_HZ));
  await makeFilm({ film, kit, out, signal: new AbortController().signal, tell: () => {} });
  const pcm = ffmpeg(['-i', out, '-map', '0:a', '-f', 'f32le', '-ac', '1', '-']);
  const samples = new Float32Array(pcm.buffer.slice(pcm.byteOffset, pcm.byteOffset + pcm.length));
  const planes = ffmpeg(['-i', out, '-map', '0:v', '-f', 'rawvideo', '-pix_fmt', 'yuv420p', '-']);
  const scenes = film.scenes.flatMap((scene) => (scene.kind === 'exercise' ? [scene] : []));
  const rows = scenes.map((scene) => ({ scene, errors: ballErrors(film, scene, planes) }));
  const flashes = scenes.flatMap((scene) => flashErrors(film, scene, planes, samples));
  return [
    ...rows.map(({ scene, errors }) => ({
      what: `ball from its stroke, at most, ${errors.length} frames at ${scene.bpm} bpm`,
      value: Math.max(...errors),
      unit: 'frames',
    })),
    {
      what: 'ball from its stroke, median of all',
      value: median(rows.flatMap(({ errors }) => errors)),
      unit: 'frames',
    },
    {
      what: `flash from beep, at most, ${flashes.length} clicks on frames`,
      value: Math.max(...flashes),
      unit: 'ms',
    },
    { what: 'flash from beep, 95 %', value: nearestQuantile(flashes, 0.95), unit: 'ms' },
  ];
}

/** What hands do to the grid: how far the tempo drifts over the form, and how far strokes scatter to each side. */
const HANDS = [
  { bpm: 60, drift: 0.08, scatterSeconds: 0.015 },
  { bpm: 93, drift: -0.08, scatterSeconds: 0.012 },
  { bpm: 120, drift: 0.1, scatterSeconds: 0.01 },
  { bpm: 240, drift: 0.05, scatterSeconds: 0.006 },
];

/**
 * How far the ball comes down from when each stroke sounded, over takes whose strokes are known: in ms. Strokes of the
 * exercise, and of the lead voice where the exercise has none; the kits are none that the ear was taught with.
 */
function landingErrors() {
  const lesson = lessonOf(JSON.stringify({ ...LESSON, tempo: 120 }));
  const errors = HANDS.map(({ bpm, drift, scatterSeconds }, index) => {
    const random = seededRandom(`film ${index}`);
    const performance = perform(lesson, { exercise: 1, form: barsOnce(8), bpm: Bpm(bpm) });
    const whole = performance.durationSeconds;
    const strokes = performance.strokes
      .map((stroke) => {
        const drifted = stroke.timeSeconds - (drift * stroke.timeSeconds ** 2) / (2 * whole);
        return { ...stroke, timeSeconds: Seconds(1 + drifted + (2 * random.next() - 1) * scatterSeconds) };
      })
      .toSorted((a, b) => a.timeSeconds - b.timeSeconds);
    const kit = createKit({ sampleRateHz: Hertz(44_100), seed: `film ${index}` });
    const { left, right } = render({ strokes, durationSeconds: Seconds(whole + 3) }, { kit });
    const mono = left.map((sample, i) => sample + (right[i] ?? 0) + 1e-3 * (random.next() - 0.5));
    const { report } = listen(mono, Hertz(44_100), { lesson, exercise: 1, form: barsOnce(8), bpm: Bpm(bpm) });
    if (!report) throw new Error(`no report at ${bpm}`);
    const asked = { exercise: 1, form: barsOnce(8), bpm: report.alignment.bpm, layers: lesson.layers.length };
    const { program, clock } = followTake(
      { program: createProgram(lesson, asked), performance: perform(lesson, asked), meter: lesson.meter },
      report,
    );
    return landingsOf(program).flatMap(({ place }) => {
      const due = program.strokes.filter((each) => Math.abs(each.place - place) < 1e-6);
      const own = due.find(({ role }) => role === 'pattern') ?? due.find(({ voice }) => voice === 'ride');
      const struck = strokes.find(
        ({ voice, written: { bar, beat, slot } }) =>
          own?.voice === voice &&
          own.written.bar === bar &&
          own.written.beat === beat &&
          own.written.slot === slot,
      );
      return struck ? [1000 * Math.abs(clock.secondsAt(place) - struck.timeSeconds)] : [];
    });
  });
  const all = errors.flat();
  return [
    ...HANDS.map(({ bpm, drift, scatterSeconds }, index) => ({
      what: `landing, median, ${bpm} bpm, drift ${100 * drift} %, scatter ${1000 * scatterSeconds} ms`,
      value: median(errors[index] ?? []),
      unit: 'ms',
    })),
    { what: `landing over performances, median of ${all.length}`, value: median(all), unit: 'ms' },
    { what: 'landing over performances, 95 %', value: nearestQuantile(all, 0.95), unit: 'ms' },
    { what: 'landing over performances, at most', value: Math.max(...all), unit: 'ms' },
  ];
}

/**
 * Wall and processor time of a command with all that it starts, in seconds, and the most memory of its Node.
 * @param {string} command
 * @param {readonly string[]} args
 */
async function cost(command, args) {
  const child = spawn('bash', ['-c', 'TIMEFORMAT="%R %U %S"; time "$@"', 'bash', command, ...args], {
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  let said = '';
  child.stderr.on('data', (chunk) => {
    said += chunk;
  });
  let mostMb = 0;
  const look = setInterval(() => {
    try {
      const [pid] = readFileSync(`/proc/${child.pid}/task/${child.pid}/children`, 'utf8').split(' ');
      const peak = /VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
      mostMb = Math.max(mostMb, Number(peak ?? 0) / 1024);
    } catch {
      // It has ended between two looks.
    }
  }, 100);
  await new Promise((resolve) => child.once('close', resolve));
  clearInterval(look);
  const [wall = 0, user = 0, system = 0] = (said.trim().split('\n').at(-1) ?? '').split(' ').map(Number);
  return { wall, processor: user + system, mostMb };
}

/**
 * A film through the command, about as long as asked for.
 * @param {string} folder
 * @param {number} bars
 */
function makeMinutes(folder, bars) {
  const path = join(folder, `${bars}.lesson.yaml`);
  const forms = { long: { sections: [{ pattern: bars }], repeat: 1 } };
  writeFileSync(path, JSON.stringify({ ...LESSON, tempo: 120, forms }));
  const out = join(folder, `${bars}.mp4`);
  return cost('node', [COMMAND, 'film', path, '--form', 'long', '--no-build-up', '--out', out]);
}

/** @param {string} folder */
async function speed(folder) {
  // definition: 3 s of title, 1 s, a bar of 2 s counted in, 26 bars of 2 s and 2 s of ringing make a minute
  const minute = await makeMinutes(folder, 26);
  const three = await makeMinutes(folder, 86);
  const left = readdirSync(folder).filter((file) => file.startsWith('.'));
  const lesson = lessonOf(
    JSON.stringify({ ...LESSON, tempo: 120, forms: { long: { sections: [{ pattern: 26 }], repeat: 1 } } }),
  );
  const film = planFilm(
    {
      lesson,
      exercises: [1],
      form: lesson.forms.find(({ name: each }) => each === 'long') ?? null,
      tempi: [],
      framesPerSecond: 30,
      buildUp: false,
    },
    { shape: 'landscape', scheme: 'light' },
    await loadEngravingTools(),
    'en',
  );
  const painter = createPainter(film, (await loadRasteriser()).rasterise);
  const raw = join(folder, 'frames.yuv');
  const file = openSync(raw, 'w');
  for (let frame = 0; frame < film.frames; frame += 1) writeSync(file, painter.paint(frame));
  closeSync(file);
  const limit = await cost('ffmpeg', [
    ...[
      '-y',
      '-v',
      'error',
      '-nostdin',
      '-f',
      'rawvideo',
      '-pix_fmt',
      'yuv420p',
      '-s',
      '1920x1080',
      '-r',
      '30',
      '-i',
      raw,
    ],
    ...['-c:v', 'libx264', '-preset', 'ultrafast', '-crf', '19', join(folder, 'limit.mp4')],
  ]);
  const beside = 'FFmpeg encoding its frames from a file';
  return [
    {
      what: `${film.frames / 30} s of film at 1080p30, wall`,
      value: minute.wall,
      unit: 's',
      ratio: minute.wall / limit.wall,
      ratioTo: beside,
    },
    {
      what: 'the same, processor',
      value: minute.processor,
      unit: 's',
      ratio: minute.processor / limit.processor,
      ratioTo: beside,
    },
    { what: beside, value: limit.wall, unit: 's wall' },
    { what: 'most memory for 1 minute', value: minute.mostMb, unit: 'MB' },
    {
      what: 'most memory for 3 minutes',
      value: three.mostMb,
      unit: 'MB',
      ratio: three.mostMb / minute.mostMb,
      ratioTo: '1 minute',
    },
    { what: 'files left half-written', value: left.length, unit: '' },
  ];
}

/** Runs the bench. */
export async function run() {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-film-bench-'));
  try {
    return [...(await exactness(folder)), ...landingErrors(), ...(await speed(folder))];
  } finally {
    rmSync(folder, { recursive: true });
  }
}
