import { type Lesson, parseLesson, perform } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { formGrid } from '../align/form-grid.ts';
import { judgeFit } from './fit.ts';
import type { Place } from './places.ts';

const TEXT = `title: Funk
tempo: 80
feel: even
groove: {hihat: xxxx xxxx xxxx xxxx, bass: x... .... x... ....}
comping: snare
exercises: ['.x.x X..x .x.x X..x']
`;
const lesson = parseLesson(TEXT, 'funk').lesson as Lesson;
const FORM = {
  name: 'loop',
  sections: [{ play: 'pattern', bars: 4, ending: null } as const],
  repeat: 1,
  countInBars: 0,
};
const grid = formGrid(perform(lesson, { exercise: 1, form: FORM }), lesson.meter);
const { barSeconds } = grid;
const places = grid.bars.flatMap(({ strokes }, takeBar) =>
  strokes.map((expected): Place => {
    const seconds = (takeBar + expected.position) * barSeconds;
    return { expected, takeBar, idealSeconds: seconds, likelySeconds: seconds };
  }),
);

/** What was heard of a take, with so many strokes at no written place. */
function fitOf(isHeard: (place: Place) => boolean, extra: number) {
  const of = (place: Place | null, timeSeconds: number) => ({
    ...{ voice: place?.expected.voice ?? 'crash', timeSeconds, levelDb: 0, place, confidence: 1 },
  });
  const heard = places.filter(isHeard).map((place) => of(place, place.idealSeconds));
  const others = Array.from({ length: extra }, (_, i) => of(null, i * barSeconds));
  const bars = grid.bars.map((_, formBar) => ({
    ...{ startSeconds: formBar * barSeconds, barSeconds, formBar, score: 0 },
  }));
  return judgeFit({
    grid,
    // a mean of what each written stroke gains or loses, under what a take of anything else comes to
    alignment: { bars, matchPerStroke: -0.3 },
    decision: { strokes: [...heard, ...others], missed: places.filter((place) => !isHeard(place)) },
    isExercise: true,
    rather: undefined,
  });
}

describe('a take in which the snare stays out', () => {
  const isElse = ({ expected }: Place) => expected.voice !== 'snare';

  it('[LI3302] is that exercise where all else is heard', () => {
    // definition: 8 strokes of 26 in a bar are the snare's, so that two thirds are there
    expect(fitOf(isElse, 0).refusal).toBeNull();
  });

  it('[LI3302] is not where as much was struck elsewhere, or hardly anything was heard', () => {
    expect(fitOf(isElse, 20).refusal).not.toBeNull();
    expect(fitOf(({ expected }) => expected.voice === 'bass', 0).refusal).not.toBeNull();
  });
});
