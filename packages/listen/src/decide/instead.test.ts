import { readFileSync } from 'node:fs';
import { type Form, type Lesson, parseLesson, type Voice } from '@shedbook/core';
import { expect, it } from 'vitest';
import { hearSound } from '../../../../internal/testing/stories/sound.mjs';

const file = new URL('../../../../demo/first-swing.lesson.yaml', import.meta.url);
const lesson = parseLesson(readFileSync(file, 'utf8'), 'first-swing').lesson as Lesson;
const FORM: Form = {
  name: 'loop',
  sections: [{ play: 'pattern', bars: 4, ending: null }],
  repeat: 1,
  countInBars: 0,
};

/** Voices of the strokes that were heard, with how many there were. */
function heardOf(name: string, exercise: number, play: object): ReadonlyMap<Voice, number> {
  const story = {
    name,
    exercise,
    level: 'beginner',
    click: true,
    rounds: 1,
    play: { spreadMs: 12, ...play },
  };
  const { take } = hearSound(lesson, FORM, story as never);
  const counts = new Map<Voice, number>();
  for (const { voice } of take.report?.strokes ?? []) counts.set(voice, (counts.get(voice) ?? 0) + 1);
  return counts;
}

it.each([
  // definition: in four bars, `x.. x.. x.. x.x` is 20 strokes, `..x` 4, `..x ... ... x..` 8
  { exercise: 10, written: 'snare', struck: 'tom-mid', due: 20 },
  { exercise: 5, written: 'snare', struck: 'tom-low', due: 4 },
  { exercise: 12, written: 'snare', struck: 'sidestick', due: 8 },
] as const)(
  '[LI64] $written on $struck is heard as that',
  ({ exercise, written, struck, due }) => {
    const heard = heardOf(`instead ${exercise}`, exercise, { on: { [written]: struck } });
    expect(heard.get(struck) ?? 0).toBeGreaterThanOrEqual(0.9 * due);
    expect(heard.get(written) ?? 0).toBeLessThanOrEqual(0.1 * due);
  },
  60_000,
);

it('[LI64] where the written drum is struck, or nothing at all, no other one is heard', () => {
  const OTHERS: readonly Voice[] = ['tom-high', 'tom-mid', 'tom-low', 'sidestick', 'crash'];
  for (const play of [{}, { leaves: ['snare'] }]) {
    const heard = heardOf('nothing instead', 10, play);
    expect(OTHERS.filter((voice) => heard.has(voice))).toEqual([]);
  }
}, 60_000);
