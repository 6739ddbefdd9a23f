import { readFileSync } from 'node:fs';
import { type Form, type Lesson, parseLesson, type Stroke, type Voice } from '@shedbook/core';
import { expect, it } from 'vitest';
import { hearSound } from '../../../../internal/testing/stories/sound.mjs';
import { NO_ENERGY } from '../detect/events.ts';
import { HEARD_COUNT, HEARD_VOICES, type HeardVoice, outputOf } from '../network/heard-voices.data.ts';
import { freeEvidence } from './evidence.ts';
import { withInstead } from './instead.ts';
import type { Place } from './places.ts';

const NOTHING = { description: NO_ENERGY, energyDb: NO_ENERGY };

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

/** What is told of a written voice where evidence of both it and another one comes at each of its twelve places. */
function toldBeside(written: HeardVoice & Voice, other: HeardVoice): readonly Voice[] {
  const events = Array.from({ length: 12 }, (_, i) => {
    const of = (value: number) => new Float32Array(HEARD_COUNT).fill(value);
    return { timeSeconds: i / 4, presence: of(-8), offsetMs: of(0), levelDb: of(-20), ...NOTHING };
  });
  const free = new Float64Array(events.length * HEARD_COUNT).fill(-8);
  const places = events.map(({ timeSeconds }, i): Place => {
    free[i * HEARD_COUNT + outputOf(written)] = 1;
    free[i * HEARD_COUNT + HEARD_VOICES.indexOf(other)] = 5;
    const expected = { voice: written, position: 0, onBeat: true, stroke: {} as Stroke };
    return { expected, takeBar: i, idealSeconds: timeSeconds, likelySeconds: timeSeconds };
  });
  const strokes = places.map((place) => {
    const { idealSeconds: timeSeconds } = place;
    return { voice: written, timeSeconds, levelDb: -20, place, confidence: 0.7 };
  });
  const decision = {
    strokes,
    missed: [],
    playing: new Map(),
    clear: new Set<Voice>(),
    shy: new Set<Voice>(),
  };
  const evidence = freeEvidence(events, free, [written]);
  return withInstead(decision, { events, free, evidence, places }).strokes.map(({ voice }) => voice);
}

it('[LI7804] a hand on closed hats is never told as the foot that closes them, whichever they sound like', () => {
  expect(new Set(toldBeside('snare', 'tom-mid'))).toEqual(new Set(['tom-mid']));
  // definition: the plates are one thing
  expect(new Set(toldBeside('hihat', 'hihat-foot'))).toEqual(new Set(['hihat']));
  expect(new Set(toldBeside('hihat-foot', 'hihat'))).toEqual(new Set(['hihat-foot']));
});

it('[LI64] where the written drum is struck, or nothing at all, no other one is heard', () => {
  const OTHERS: readonly Voice[] = ['tom-high', 'tom-mid', 'tom-low', 'sidestick', 'crash'];
  for (const play of [{}, { leaves: ['snare'] }]) {
    const heard = heardOf('nothing instead', 10, play);
    expect(OTHERS.filter((voice) => heard.has(voice))).toEqual([]);
  }
}, 60_000);
