import { Bpm, defaultForm, parseLesson, perform, Seconds } from '@shedbook/core';
import { asJudged, judge } from '@shedbook/judge';
import { listenToNotes } from '@shedbook/listen';
import { createProgram } from '@shedbook/playing';
import { strToU8, zipSync } from 'fflate';
import { expect, it } from 'vitest';
import { notesSent } from '../../../../internal/testing/played-notes.ts';
import { FARTHEST, heardPlaces } from './heard-places.ts';
import { openTake } from './open-take.ts';

const TEXT =
  'title: First swing\ntempo: 120\nfeel: triplet\nexercises:\n  - x.. ..x x.x ... | ..x x.. ... x..\n';
const BPM = Bpm(120);
const LATE_SECONDS = 0.03;

/** Farther than half a triplet of this tempo, and not as far as a whole one. */
const FAR_SECONDS = 0.105;

/**
 * Two rounds: in the second the snare on the last triplet of the second beat is late, and its very last stroke is not played.
 * @param snareLate how late each stroke of the snare comes besides
 */
function aTake(snareLate = 0) {
  const { lesson } = parseLesson(TEXT, 'lesson');
  if (!lesson) throw new Error('the lesson has problems');
  const sections = [{ play: 'pattern' as const, bars: 2, ending: null }];
  const form = { ...defaultForm(lesson), sections, repeat: 2, countInBars: 0 };
  const { strokes, durationSeconds } = perform(lesson, { exercise: 1, form, bpm: BPM });
  const half = durationSeconds / 2;
  const snare = strokes.filter(({ voice, timeSeconds }) => voice === 'snare' && timeSeconds >= half);
  const [, late] = snare;
  const last = snare.at(-1);
  const played = strokes
    .filter((stroke) => stroke !== last)
    .map((stroke) => {
      const more = (stroke === late ? LATE_SECONDS : 0) + (stroke.voice === 'snare' ? snareLate : 0);
      return more === 0 ? stroke : { ...stroke, timeSeconds: Seconds(stroke.timeSeconds + more) };
    })
    .toSorted((a, b) => a.timeSeconds - b.timeSeconds);
  const { report } = listenToNotes(notesSent(played), durationSeconds, {
    ...{ lesson, exercise: 1, form, bpm: BPM },
  });
  const loops = [0, half].map((startSeconds) => ({
    ...{ startSeconds, endSeconds: startSeconds + half, bpm: BPM },
  }));
  const once = { ...form, repeat: 1 };
  const program = createProgram(lesson, { exercise: 1, form: once, layers: lesson.layers.length, bpm: BPM });
  return { lesson, program, loops, form, report };
}

it('[ST2201] draws each stroke of a round where it fell, and what did not come, in that round alone', () => {
  const { lesson, program, loops, report } = aTake();
  const of = (round: number) =>
    heardPlaces({ report, latencySeconds: 0 }, loops[round] as (typeof loops)[number], program, lesson.meter);
  const drawn = (round: number) =>
    of(round).map(({ bar, voice, dx }) => [bar, voice, dx === null ? null : Math.round(dx)]);
  expect(drawn(0)).toEqual([
    ...[0, 0, 0, 0].map((bar) => [bar, 'snare', 0]),
    ...[1, 1, 1].map((bar) => [bar, 'snare', 0]),
  ]);
  // definition: at 120 a quarter note lasts 0.5 s and is 96 wide; 0.03 s, four times: 23.04
  expect(drawn(1)).toEqual([
    [0, 'snare', 0],
    [0, 'snare', 23],
    [0, 'snare', 0],
    [0, 'snare', 0],
    [1, 'snare', 0],
    [1, 'snare', 0],
    [1, 'snare', null],
  ]);
  // definition: 16 from a beat's left end to its head; the last triplet of the second beat is at 96 + 2/3 of 96
  expect(of(1)[1]?.x).toBeCloseTo(16 + 96 + 64, 6);
});

it('[ST4301] draws a stroke that came far from its place as late, as the report tells it, and not as missing', () => {
  const { lesson, program, loops, form, report } = aTake(FAR_SECONDS);
  const [first] = loops;
  if (!report || !first) throw new Error('a report');
  const judgement = judge({ lesson, exercise: 1, form, bpm: BPM }, { report }, 'beginner');
  const dxOf = (shown: typeof report) =>
    heardPlaces({ report: shown, latencySeconds: 0 }, first, program, lesson.meter).map(({ dx }) => dx);
  // definition: farther than a head is moved at all; unjudged, as far as half a triplet, what is later has no place
  expect(dxOf(asJudged(report, judgement))).toEqual(dxOf(report).map(() => FARTHEST));
  expect(dxOf(report)).toContain(null);
});

it('[ST2201] opens a file that says when its rounds were, and hears no round that cannot be', () => {
  const rounds = (loops: unknown) =>
    openTake(zipSync({ 'take.json': strToU8(JSON.stringify({ loops })) }), { exercise: null } as never).played
      ?.loops ?? null;
  const sound = { startSeconds: 0, endSeconds: 4, bpm: 120 };
  expect(rounds([sound])).toEqual([sound]);
  for (const wrong of [{ ...sound, endSeconds: 1e9 }, { ...sound, startSeconds: 5 }, { bpm: 120 }, null, 'x'])
    expect(rounds([sound, wrong]), JSON.stringify(wrong)).toBeNull();
});
