import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  Bpm,
  defaultForm,
  Hertz,
  type Lesson,
  parseLesson,
  perform,
  Seconds,
  type Stroke,
} from '@shedbook/core';
import { type Film, planFilm, type StagedScene } from '@shedbook/film';
import { encodeWav, render } from '@shedbook/sound';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { keptKit, lightKit } from '../../../../internal/testing/kept-kit.mjs';
import { loadEngravingTools } from '../engraving-tools.ts';
import { InputError } from '../input-error.ts';
import { type HeardPerformances, hearPerformances } from './hear-performances.ts';
import { makeFilm } from './make-film.ts';

const RATE_HZ = Hertz(44_100);
const FRAMES = 30;
/** The first click of the count-in in the recording's sound, and how much later its sound begins than its picture. */
const CLICK_SECONDS = 1;
const LATE_SECONDS = 0.4;
const folder = mkdtempSync(join(tmpdir(), 'shedbook-over-test-'));
const at = (name: string) => join(folder, name);
const kit = keptKit({ sampleRateHz: RATE_HZ });
const { signal } = new AbortController();

const { lesson } = parseLesson(
  `title: Over
tempo: 120
feel: even
groove: {ride: x x x x, bass: x . x .}
exercises: [". x . x", "x . x x"]
forms:
  Four: {sections: [{pattern: 4}], repeat: 1}
  Mixed: {sections: [{pattern: 2}, {time: 2}], repeat: 1}
`,
  'lesson',
) as { lesson: Lesson };

/** A tempo that falls by a tenth. */
function strokesPlayed(): readonly Stroke[] {
  const { strokes } = perform(lesson, { exercise: 1, form: defaultForm(lesson), bpm: Bpm(120) });
  return strokes.map((stroke) => ({
    ...stroke,
    timeSeconds: Seconds(CLICK_SECONDS + stroke.timeSeconds + stroke.timeSeconds ** 2 / 200),
  }));
}

function record(name: string, strokes: readonly Stroke[]): void {
  const audio = render({ strokes, durationSeconds: Seconds(12) }, { kit });
  writeFileSync(at(name), encodeWav({ ...audio, sampleRateHz: RATE_HZ }, { format: 'int16' }));
}

const snares = () => strokesPlayed().filter(({ voice }) => voice === 'snare');
let heard: HeardPerformances;
let film: Film;

beforeAll(async () => {
  record('good.wav', strokesPlayed());
  record(
    'worse.wav',
    strokesPlayed().filter(({ voice, written }) => voice !== 'snare' || written.bar !== 2),
  );
  // A picture that turns white for a tenth of a second at each stroke of the snare, its sound later than itself.
  const flashes = snares().map(({ timeSeconds }) => timeSeconds + LATE_SECONDS);
  const isWhite = flashes.map((time) => `between(t,${time - 0.001},${time + 0.1})`).join('+');
  const white = `drawbox=c=white:t=fill:enable='${isWhite}'`;
  const picture = ['-f', 'lavfi', '-i', 'color=black:s=96x54:r=60'];
  const sound = ['-itsoffset', `${LATE_SECONDS}`, '-i', at('good.wav')];
  const codecs = ['-c:v', 'libx264', '-preset', 'ultrafast', '-c:a', 'aac', '-t', '13'];
  execFileSync('ffmpeg', ['-v', 'error', ...picture, ...sound, '-vf', white, ...codecs, at('good.mp4')]);
  const files = ['worse.wav', 'good.mp4'].map((name) => ({ exercise: 1, path: at(name) }));
  heard = await hearPerformances({ lesson, form: null, files, signal, tell: () => {} });
  film = planFilm(
    {
      ...{ lesson, exercises: [1], form: null, tempi: [], framesPerSecond: FRAMES, buildUp: false },
      over: { recorded: heard.recorded, heard: 'teacher', modelDb: -9, speeds: [1] },
    },
    { shape: 'landscape', scheme: 'light', pixelsPerMm: 2 },
    await loadEngravingTools(),
    'en',
  );
  const { recordings } = heard;
  const light = lightKit({ sampleRateHz: RATE_HZ });
  await makeFilm({ film, kit: light, recordings, out: at('film.mp4'), signal, tell: () => {} });
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true }));

function decode(...args: readonly string[]): Buffer {
  const whole = ['-v', 'error', '-i', at('film.mp4'), ...args, '-'];
  return execFileSync('ffmpeg', whole, { maxBuffer: 1 << 28 });
}

it('[HO2000] shows of several takes the one with the fewest faults', () => {
  const missing = snares().filter(({ written }) => written.bar === 2).length;
  // definition: both slow down by as much, and one lacks the strokes of a bar
  const [worse, good] = heard.takes;
  expect([worse?.isShown, good?.isShown]).toEqual([false, true]);
  expect((worse?.faults ?? 0) - (good?.faults ?? 0)).toBe(missing);
  expect(heard.recorded[0]?.picture).toEqual({ widthPx: 96, heightPx: 54 });
});

it('[HO2001] shows and sounds a stroke, and has the ball down on it, at the same moment, as decoded', () => {
  const scene = film.scenes.find((each): each is StagedScene => each.kind === 'exercise');
  const box = scene?.layout.picture;
  if (!scene?.shown || !box) throw new Error('no picture');
  const { fromSeconds } = scene.shown;
  const planes = decode('-map', '0:v', '-f', 'rawvideo', '-pix_fmt', 'yuv420p');
  const size = film.widthPx * film.heightPx;
  // definition: every frame is there, and no more
  expect(planes.length).toBe(1.5 * size * film.frames);
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2].map((mm) => Math.round(2 * mm));
  const luma = (frame: number) => planes[1.5 * size * frame + (y ?? 0) * film.widthPx + (x ?? 0)] ?? 0;
  const pcm = decode('-map', '0:a', '-f', 'f32le', '-ac', '1');
  const samples = new Float32Array(pcm.buffer.slice(pcm.byteOffset, pcm.byteOffset + pcm.length));
  for (const { timeSeconds, written } of snares()) {
    const inScene = timeSeconds + LATE_SECONDS - fromSeconds;
    const exact = scene.startFrame + scene.leadFrames + inScene * FRAMES;
    const near = [-3, -2, -1, 0, 1, 2, 3].map((by) => Math.ceil(exact) + by);
    const seen = near.find((frame) => luma(frame) > 180) ?? 0;
    expect(Math.abs(seen - exact), `seen, ${written.bar} ${written.beat}`).toBeLessThanOrEqual(1);
    const window = (seconds: number) => {
      const first = Math.round(seconds * RATE_HZ);
      return samples.subarray(first, first + 0.004 * RATE_HZ).reduce((sum, value) => sum + value ** 2, 0);
    };
    const around = Array.from({ length: 31 }, (_, step) => exact / FRAMES + (step - 15) / 1000);
    const rises = around.map((seconds) => window(seconds + 0.004) / (window(seconds) + 1e-6));
    const sounds = (around[rises.indexOf(Math.max(...rises))] as number) + 0.004;
    expect(Math.abs(sounds - exact / FRAMES) * 1000, `heard, ${written.bar} ${written.beat}`).toBeLessThan(6);
    // The ear hears a stroke to a few milliseconds; the ball is down on it by the scene's clock.
    const place = written.bar - 1 + (written.beat - 1) / 4;
    expect(Math.abs(scene.clock.secondsAt(place) - inScene) * 1000).toBeLessThan(10);
  }
});

it('[HO3601] takes a form that nobody named for the one that is played', async () => {
  const [, mixed] = lesson.forms;
  if (!mixed) throw new Error('no form');
  const { strokes } = perform(lesson, { exercise: 1, form: mixed, bpm: Bpm(120) });
  record(
    'mixed.wav',
    strokes.map((stroke) => ({ ...stroke, timeSeconds: Seconds(CLICK_SECONDS + stroke.timeSeconds) })),
  );
  const files = [{ exercise: 1, path: at('mixed.wav') }];
  const asIs = await hearPerformances({ lesson, form: null, files, signal, tell: () => {} });
  expect([asIs.takes[0]?.faults, asIs.recorded[0]?.form?.name]).toEqual([0, 'Mixed']);
  // definition: in four bars of the exercise the strokes of two are missing
  const [four = null] = lesson.forms;
  const named = await hearPerformances({ lesson, form: four, files, signal, tell: () => {} });
  expect(named.recorded[0]?.form?.name).toBe('Four');
  expect(named.takes[0]?.faults).toBeGreaterThan(0);
});

it('[HO2002] says which recording cannot be followed, and why', async () => {
  execFileSync('ffmpeg', ['-v', 'error', '-f', 'lavfi', '-i', 'anullsrc', '-t', '1', at('silent.wav')]);
  writeFileSync(at('text.mp4'), 'no film');
  for (const [name, why] of [
    ['silent.wav', /silent\.wav: exercise 1 cannot be followed in it/],
    ['text.mp4', /text\.mp4: .*expected a video or a recording/],
    ['gone.mp4', /gone\.mp4: .*expected a video or a recording/],
  ] as const) {
    const files = [{ exercise: 1, path: at(name) }];
    const hearing = hearPerformances({ lesson, form: null, files, signal, tell: () => {} });
    await expect(hearing).rejects.toThrow(InputError);
    await expect(hearing).rejects.toThrow(why);
  }
});
