import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Bpm, Hertz, parseLesson, Seconds } from '@shedbook/core';
import { type Film, frameAt, planFilm, type StagedScene } from '@shedbook/film';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { keptKit } from '../../../../internal/testing/kept-kit.mjs';
import { loadEngravingTools } from '../engraving-tools.ts';
import { InputError } from '../input-error.ts';
import { findEncoder } from './encoder.ts';
import { type FilmFile, makeFilm } from './make-film.ts';

const LESSON = `title: Two = one; a test
tempo: 120
feel: even
groove:
  ride: x x x x
exercises:
  - x.x ... ..x ...
forms:
  Two: {sections: [{pattern: 2}], repeat: 1}
`;

const RATE_HZ = 44_100;
const FRAMES = 30;
const folder = mkdtempSync(join(tmpdir(), 'shedbook-film-test-'));
const out = join(folder, 'film.mp4');
const kit = keptKit({ sampleRateHz: Hertz(RATE_HZ) });
let film: Film;
let made: readonly FilmFile[];

beforeAll(async () => {
  const { lesson } = parseLesson(LESSON, 'lesson');
  if (!lesson) throw new Error('the lesson has problems');
  const form = lesson.forms.find(({ name }) => name === 'Two') ?? null;
  film = planFilm(
    { lesson, exercises: [1], form, tempi: [Bpm(120), Bpm(93)], framesPerSecond: FRAMES, buildUp: false },
    { shape: 'landscape', scheme: 'light', pixelsPerMm: 4 },
    await loadEngravingTools(),
    'en',
  );
  made = await makeFilm({ film, kit, out, signal: new AbortController().signal, tell: () => {} });
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true }));

/** What FFmpeg says of a file on its way through. */
function ffmpeg(...args: readonly string[]): Buffer {
  return execFileSync('ffmpeg', ['-v', 'error', ...args], { maxBuffer: 1 << 30 });
}

/** What FFmpeg reports about a file: streams, chapters and what filters measure. */
function report(...args: readonly string[]): string {
  const script = ['-hide_banner', '-nostdin', ...args, '-f', 'null', '-'];
  return execFileSync('sh', ['-c', 'ffmpeg "$@" 2>&1', 'sh', ...script], { maxBuffer: 1 << 28 }).toString();
}

const scenes = () => film.scenes.filter((scene): scene is StagedScene => scene.kind === 'exercise');

let decoded: Buffer | null = null;

/** Red of each frame, as decoded, at half the picture's size. */
function redOf(frame: number): Uint8Array {
  decoded ??= ffmpeg('-i', out, '-map', '0:v', '-f', 'rawvideo', '-pix_fmt', 'yuv420p', '-');
  const size = film.widthPx * film.heightPx;
  const at = frame * 1.5 * size;
  return decoded.subarray(at + 1.25 * size, at + 1.5 * size);
}

/** Loudness in LUFS and true peak in dBTP, as FFmpeg's meter tells them. */
function metered(told: string): readonly [number, number] {
  const last = (pattern: RegExp) => Number([...told.matchAll(pattern)].at(-1)?.[1]);
  return [last(/I: +([-\d.]+) LUFS/g), last(/Peak: +([-\d.]+) dBFS/g)];
}

describe('a film that was made', () => {
  it('[HO1700] has streams, chapters, length and colours as they should be', () => {
    const told = report('-i', out, '-map', '0:v');
    expect(told).toMatch(/Video: h264.*yuv420p\(tv, bt709.*768x432.* 30 fps/);
    expect(told).toMatch(/Audio: aac.*44100 Hz, stereo/);
    expect(told).toMatch(/\(eng\): Subtitle/);
    expect(told).toMatch(/\((?:deu|ger)\): Subtitle/);
    // definition: title 3 s; each exercise 1 s still, three bars of four beats, 2 s until all has died away
    const [hours = 0, minutes = 0, seconds = 0] = (/Duration: ([\d:.]+)/.exec(told)?.[1] ?? '')
      .split(':')
      .map(Number);
    const length = 3 + (1 + 6 + 2) + Math.ceil((3 + (12 * 60) / 93) * FRAMES) / FRAMES;
    expect(hours * 3600 + minutes * 60 + seconds).toBeCloseTo(length, 1);
    const meta = ffmpeg('-i', out, '-f', 'ffmetadata', '-').toString();
    const titles = [...meta.matchAll(/^title=(.*)$/gm)].map(([, title]) => title?.replaceAll('\\', ''));
    expect(titles).toEqual([
      'Two = one; a test',
      'Title',
      'Exercise 1, 120 beats a minute',
      'Exercise 1, 93 beats a minute',
    ]);
    expect([...meta.matchAll(/^START=(\d+)$/gm)].map(([, at]) => Number(at) / 1000)).toEqual([0, 3, 12]);
  });

  it('[HO1700] is as loud as films are', () => {
    const told = report('-i', out, '-map', '0:a', '-af', 'ebur128=peak=true');
    const [integrated, peak] = metered(told);
    // standard: EBU R 128 by FFmpeg's own meter: true peak under −1 dBTP; definition: −16 LUFS within 0.5 LU
    expect(peak).toBeLessThan(-1);
    expect(Math.abs((integrated as number) + 16)).toBeLessThanOrEqual(0.5);
  });

  it('[HO1700] has captions, chapters and a cover beside it', () => {
    expect(made.map(({ what, path }) => [what, path.slice(folder.length)])).toEqual([
      ['film', '/film.mp4'],
      ['captions', '/film.en.vtt'],
      ['captions', '/film.de.vtt'],
      ['chapters', '/film.chapters.txt'],
      ['cover', '/film.png'],
    ]);
    expect(readdirSync(folder).toSorted()).toEqual(
      made.map(({ path }) => path.slice(folder.length + 1)).toSorted(),
    );
    // standard: PNG (ISO/IEC 15948), 5.2: the signature, then the header with width and height
    const png = readFileSync(join(folder, 'film.png'));
    expect([png.toString('latin1', 1, 4), png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([
      'PNG',
      768,
      432,
    ]);
    expect(readFileSync(join(folder, 'film.chapters.txt'), 'utf8').split('\n')[2]).toBe(
      '00:12 Exercise 1, 93 beats a minute',
    );
  });

  it('[HO1701] has the ball within a frame of where the strokes say, as decoded', () => {
    const half = film.widthPx / 2;
    const paper = redOf(0)[0] ?? 0;
    // definition: every frame is there, and no more
    expect(decoded?.length).toBe(film.frames * 1.5 * film.widthPx * film.heightPx);
    for (const scene of scenes()) {
      const bar = scene.stagePages[0]?.[0]?.bars[0];
      if (!bar) throw new Error('no bar');
      const heads = bar.bar.tile.heads;
      const strokes = scene.strokes.filter(({ voice }) => voice === 'snare' || voice === 'ride');
      for (const { timeSeconds, voice, at } of strokes) {
        const exact = scene.startFrame + scene.leadFrames + timeSeconds * FRAMES;
        // The first frame that appears once the stroke has sounded.
        const frame = Math.ceil(exact - 1e-6);
        const v = redOf(frame);
        // The ball is the only thing over the notes that has a colour.
        const rows = Math.floor(((bar.floorMm + 1.5 * bar.size) * 4) / 2);
        const top = Math.ceil((24 * 4) / 2);
        let [sum, x, y] = [0, 0, 0];
        for (let row = top; row < rows; row += 1)
          for (let column = 0; column < half; column += 1) {
            const weight = Math.abs((v[row * half + column] ?? paper) - paper);
            if (weight < 4) continue;
            sum += weight;
            x += weight * (2 * column + 1);
            y += weight * (2 * row + 1);
          }
        const inBar = at.num / at.den - Math.floor(at.num / at.den);
        const head = heads.find(
          (each) => each.voice === voice && Math.abs(each.start.num / each.start.den - inBar) < 1e-9,
        );
        const wanted = { x: (bar.xMm + bar.size * (head?.xMm ?? 0)) * 4, y: bar.floorMm * 4 };
        // A frame's way: what the planned ball moves in a frame before and after, and a pixel for reading it.
        const [before, now, after] = [-1, 0, 1].map((by) => frameAt(film, frame + by).ball);
        const way = (axis: 'xMm' | 'yMm') =>
          1 +
          4 *
            Math.max(...[before, after].map((other) => Math.abs((other?.[axis] ?? 0) - (now?.[axis] ?? 0))));
        expect(Math.abs(x / sum - wanted.x), `x of ${voice} at ${timeSeconds}`).toBeLessThan(way('xMm'));
        expect(Math.abs(y / sum - wanted.y), `y of ${voice} at ${timeSeconds}`).toBeLessThan(way('yMm'));
      }
    }
  });

  it('[HO1701] lights up what sounds at the same moment, as decoded', () => {
    const pcm = ffmpeg('-i', out, '-map', '0:a', '-f', 'f32le', '-ac', '1', '-');
    const samples = new Float32Array(pcm.buffer.slice(pcm.byteOffset, pcm.byteOffset + pcm.length));
    const scene = scenes()[0] as StagedScene;
    const bar = scene.stagePages[0]?.[0]?.bars[0];
    if (!bar) throw new Error('no bar');
    // The beep: the clicks of the count-in, at 120 beats a minute each on a frame.
    for (const beat of [1, 2, 3]) {
      const from = scene.startFrame / FRAMES + scene.leadFrames / FRAMES + beat * 0.5 - 0.1;
      const window = samples.subarray(Math.round(from * RATE_HZ), Math.round((from + 0.2) * RATE_HZ));
      const loudest = window.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
      const heard = from + window.findIndex((value) => Math.abs(value) > 0.1 * loudest) / RATE_HZ;
      // The flash: the count under the beat takes on colour.
      const count = bar.bar.slots.find((slot) => slot.beat === beat + 1 && slot.slot === 1);
      const [x, y] = [(bar.xMm + bar.size * (count?.xMm ?? 0)) * 2, (bar.countsMm - 1.2 * bar.size) * 2].map(
        Math.round,
      );
      const colour = (frame: number) => {
        const v = redOf(frame);
        let most = 0;
        for (let dy = -2; dy <= 2; dy += 1)
          for (let dx = -2; dx <= 2; dx += 1)
            most = Math.max(
              most,
              Math.abs((v[((y ?? 0) + dy) * (film.widthPx / 2) + (x ?? 0) + dx] ?? 128) - (redOf(0)[0] ?? 0)),
            );
        return most;
      };
      const first = Math.round(from * FRAMES);
      const frame = [0, 1, 2, 3, 4, 5, 6].map((by) => first + by).find((each) => colour(each) > 6) ?? 0;
      expect(
        Math.abs(frame / FRAMES - heard) * 1000,
        `beat ${beat + 1}: seen ${frame / FRAMES}, heard ${heard}`,
      ).toBeLessThan(5);
      // definition: 120 beats a minute, after a title of 3 s and a second that stands still
      expect(scene.clock.secondsAt(scene.program.start)).toBe(Seconds(0));
    }
  });
});

describe('a film that is not made', () => {
  /** The title alone: its sound is made at once. */
  const titleAlone = () => {
    const [title] = film.scenes;
    if (!title) throw new Error('no title');
    return { ...film, scenes: [title], frames: title.frames };
  };

  it('[HO1702] leaves nothing behind where what belongs beside it cannot be written', async () => {
    const taken = join(folder, 'taken');
    mkdirSync(join(taken, 'film.png'), { recursive: true });
    const { signal } = new AbortController();
    const order = { film: titleAlone(), kit, out: join(taken, 'film.mp4'), signal, tell: () => {} };
    await expect(makeFilm(order)).rejects.toThrow(InputError);
    expect(readdirSync(taken)).toEqual(['film.png']);
    rmSync(taken, { recursive: true });
  });

  it('[HO1702] leaves nothing behind where it is cancelled', async () => {
    const empty = join(folder, 'cancelled');
    mkdirSync(empty);
    const control = new AbortController();
    const order = { film: titleAlone(), kit, out: join(empty, 'film.mp4'), signal: control.signal };
    const tell = ({ stage, part }: { stage: string; part: number }) => {
      if (stage === 'picture' && part > 0) control.abort();
    };
    await expect(makeFilm({ ...order, tell })).rejects.toThrow(/abort/i);
    expect(readdirSync(empty)).toEqual([]);
    rmSync(empty, { recursive: true });
  });

  it('[HO1702] says what is missing: the folder, FFmpeg, or an encoder', async () => {
    const order = { film, kit, signal: new AbortController().signal, tell: () => {} };
    await expect(makeFilm({ ...order, out: join(folder, 'no/film.mp4') })).rejects.toThrow(/film.mp4/);
    const { PATH } = process.env;
    process.env['PATH'] = folder;
    try {
      await expect(findEncoder('.mp4')).rejects.toThrow(/needs FFmpeg/);
      await expect(findEncoder('.mp4')).rejects.toBeInstanceOf(InputError);
    } finally {
      process.env['PATH'] = PATH;
    }
  });
});
