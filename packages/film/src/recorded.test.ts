import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { Seconds, seededRandom } from '@shedbook/core';
import { loadEngraver, loadFonts } from '@shedbook/engrave';
import { FILM_WORDS, SHEET_WORDS } from '@shedbook/words';
import { beforeAll, describe, expect, it } from 'vitest';
import { asked, playNotes, reportOfNotes, type TrueNote } from '../../../internal/testing/played-notes.ts';
import { createFilm, type Film, frameAt, type StagedScene } from './film.ts';
import { PICTURE_PLACES } from './layout.ts';
import type { DrawingTools } from './pages.ts';
import { LevelMeter, type Recorded, soundingOf } from './recorded.ts';
import type { FilmRequest } from './scenes.ts';

const RATE = 30;
const random = seededRandom('over');
/** A tempo that rises by a tenth, and strokes some ms before or after. */
const notes: readonly TrueNote[] = playNotes(1, 100, (note) => ({
  ...note,
  timeSeconds: Seconds(note.timeSeconds - note.timeSeconds ** 2 / 400 + (random.next() - 0.5) * 0.02),
}));
const recorded: Recorded = {
  ...{ exercise: 1, form: asked.form, report: reportOfNotes(notes) },
  sounding: { fromSeconds: Seconds(0.5), toSeconds: Seconds(24) },
  picture: { widthPx: 1920, heightPx: 1080 },
};
const request: FilmRequest = {
  ...{ lesson: asked.lesson, exercises: [1], form: asked.form, tempi: [] },
  ...{ framesPerSecond: RATE, buildUp: false },
  over: { recorded: [recorded], heard: 'teacher', modelDb: -9, speeds: [1, 0.5] },
};
let tools: DrawingTools;

beforeAll(async () => {
  const { resolve } = createRequire(import.meta.url);
  const fonts = await loadFonts((specifier) => readFile(resolve(specifier)));
  tools = { engraver: await loadEngraver(), fonts, words: SHEET_WORDS.en, said: FILM_WORDS.en };
});

const look = { shape: 'landscape', scheme: 'light', pixelsPerMm: 2 } as const;

function scenesOf(film: Film): readonly StagedScene[] {
  return film.scenes.filter((scene): scene is StagedScene => scene.kind === 'exercise');
}

describe('a film over a performance', () => {
  it('[FI2000] has the ball within a frame of each stroke as it was struck, at full and at half speed', () => {
    const film = createFilm(request, look, tools);
    const scenes = scenesOf(film);
    expect(scenes.map(({ shown }) => shown?.speed)).toEqual([1, 0.5]);
    for (const scene of scenes) {
      const speed = scene.shown?.speed ?? 1;
      const bar = scene.stagePages[0]?.[0]?.bars[0];
      if (!bar) throw new Error('no bar');
      const snares = notes.filter(({ voice }) => voice === 'snare');
      for (const { timeSeconds, written } of snares) {
        // definition: the film begins 0.5 s into the take, and is as many times longer as it is slower
        const exact = scene.startFrame + scene.leadFrames + ((timeSeconds - 0.5) / speed) * RATE;
        const [after, next] = [0, 1].map((by) => frameAt(film, Math.ceil(exact) + by).ball?.xMm ?? 0) as [
          number,
          number,
        ];
        const slot = bar.bar.slots.find(
          (each) => each.beat === written.beat && each.slot === written.slot && each.voice === 'snare',
        );
        const x = bar.xMm + bar.size * (slot?.xMm ?? 0);
        // In the first frame after it the ball has left its head by a frame's way at most.
        const way = 1.5 * Math.abs(next - after) + 0.01;
        expect(Math.abs(after - x), `${written.bar} ${written.beat}`).toBeLessThanOrEqual(way);
      }
    }
    // definition: from 0.5 to 24 s
    expect(scenes.map(({ frames }) => frames)).toEqual([23.5 * RATE, 47 * RATE]);
    expect(scenes[1]?.bpm).toBeCloseTo((scenes[0]?.bpm ?? 0) / 2, -0.3);
  });

  it('[FI2001] keeps notation and picture apart, wherever the picture stands', () => {
    for (const shape of ['landscape', 'portrait'] as const)
      for (const picture of PICTURE_PLACES)
        for (const [widthPx, heightPx] of [
          [1920, 1080],
          [1080, 1920],
        ] as const) {
          const over = { ...recorded, picture: { widthPx, heightPx } };
          const film = createFilm(
            { ...request, over: { ...request.over, recorded: [over], speeds: [1] } as FilmRequest['over'] },
            { ...look, shape, picture },
            tools,
          );
          const [scene] = scenesOf(film);
          const box = scene?.layout.picture;
          if (!scene || !box) throw new Error('no picture');
          const told = `${shape}, ${picture}, ${widthPx} × ${heightPx}`;
          // definition: as wide for its height as it was recorded, and on the page
          expect(box.width / box.height, told).toBeCloseTo(widthPx / heightPx, 6);
          expect(Math.min(box.x, box.y), told).toBeGreaterThanOrEqual(0);
          expect(box.x + box.width, told).toBeLessThanOrEqual(scene.layout.widthMm + 1e-6);
          const bars = scene.stagePages.flat(2).flatMap((page) => page.bars);
          for (const { xMm, yMm, floorMm, size, countsMm, bar } of bars) {
            const apart =
              xMm >= box.x + box.width ||
              xMm + size * bar.tile.widthMm <= box.x ||
              // The ball at its highest is 9.5 mm of the tile over where it comes down.
              Math.min(yMm, floorMm - 9.5 * size) >= box.y + box.height - 1;
            expect(apart, told).toBe(true);
            expect(countsMm + size, told).toBeLessThanOrEqual(scene.layout.stripTop);
          }
        }
  });

  it('[FI2002] begins with a count-in that is played, and leaves out silence before and after', () => {
    const rate = 1000;
    const { report } = recorded;
    const first = notes[0]?.timeSeconds ?? 0;
    const last = notes.at(-1)?.timeSeconds ?? 0;
    const clicks = (times: readonly number[]) => {
      const samples = new Float32Array((last + 12) * rate);
      for (const time of times) samples.fill(0.5, Math.round(time * rate), Math.round((time + 0.05) * rate));
      const meter = new LevelMeter(rate);
      for (let at = 0; at < samples.length; at += 777) meter.push(samples.subarray(at, at + 777));
      return meter;
    };
    const strokes = notes.map(({ timeSeconds }) => timeSeconds);
    const plain = soundingOf(clicks(strokes), report);
    // definition: a second before the first stroke and after the last
    expect(plain.fromSeconds).toBeCloseTo(first - 1, 1);
    expect(plain.toSeconds).toBeCloseTo(last + 1, 1);
    const counted = soundingOf(clicks([first - 1.2, first - 0.6, ...strokes]), report);
    expect(counted.fromSeconds).toBeCloseTo(first - 1.2 - 0.4, 1);
    // Somebody coughs long after the end.
    const late = soundingOf(clicks([...strokes, last + 9]), report);
    expect(late.toSeconds).toBeLessThanOrEqual(last + 4.1);
  });
});
