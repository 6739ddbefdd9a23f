import { Bpm, LeadDb, Milliseconds } from '@shedbook/core';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { formOf, funk, play, playLoop, swing, swingTask } from '../../../../internal/testing/loops.ts';
import { LEVELS } from '../level/levels.data.ts';
import type { HeardLoop } from './heard.ts';
import { judgeLoop } from './judge.ts';
import type { LoopTask } from './task.ts';
import { loopTask } from './task.ts';

const RANK = { unheard: -1, stumble: 0, loose: 1, clean: 2 };

it('[CH3] a loop exactly as written is clean at every level, in every exercise', () => {
  for (const shelf of [swing, funk]) {
    expect(shelf.lesson.exercises.length).toBeGreaterThan(2);
    for (const { number } of shelf.lesson.exercises) {
      const form = formOf(shelf.lesson);
      const task = loopTask(shelf.lesson, { exercise: number, form, bpm: shelf.lesson.tempo.goalBpm });
      for (const level of LEVELS) {
        // definition: nothing missed, nothing added, nothing off
        expect(judgeLoop(task, playLoop(task), level)).toMatchObject({ verdict: 'clean', faults: [] });
      }
    }
  }
});

/** How far each stroke is off, whether it is played at all, and what is added. */
interface Playing {
  readonly strokes: readonly {
    readonly offsetMs: number;
    readonly levelDb: number;
    readonly isMissed: boolean;
  }[];
  readonly extra: number;
  readonly tempo: number;
}

function heardFrom(task: LoopTask, playing: Playing): HeardLoop {
  const pairs = task.strokes.map((asked, i) => ({
    asked,
    ...(playing.strokes[i] as Playing['strokes'][number]),
  }));
  const first = task.strokes[0];
  return playLoop(task, {
    bpm: Bpm(task.bpm * playing.tempo),
    strokes: pairs
      .filter((each) => !each.isMissed)
      .map(({ asked, offsetMs, levelDb }) =>
        play(asked, { offsetMs: Milliseconds(offsetMs), levelDb: LeadDb(asked.levelDb + levelDb) }),
      ),
    missed: pairs
      .filter((each) => each.isMissed)
      .map(({ asked }) => ({ ...asked.written, voice: asked.voice })),
    extra: Array.from({ length: first ? playing.extra : 0 }, () => ({
      voice: 'snare',
      near: first?.written ?? { bar: 1, beat: 1, slot: 1 },
      confidence: 1,
    })),
  });
}

const task = swingTask();

const playing: fc.Arbitrary<Playing> = fc.record({
  strokes: fc.array(
    fc.record({
      offsetMs: fc.oneof(fc.integer({ min: -15, max: 15 }), fc.integer({ min: -120, max: 120 })),
      levelDb: fc.integer({ min: -12, max: 12 }),
      isMissed: fc.oneof(
        { weight: 9, arbitrary: fc.constant(false) },
        { weight: 1, arbitrary: fc.boolean() },
      ),
    }),
    { minLength: task.strokes.length, maxLength: task.strokes.length },
  ),
  extra: fc.integer({ min: 0, max: 6 }),
  tempo: fc.constantFrom(0.85, 0.95, 1, 1, 1, 1.05, 1.15),
});

/** The same playing, each thing wrong made smaller by its own share; what was missed may now be played. */
function better(from: Playing, kept: readonly number[], filled: readonly boolean[]): Playing {
  return {
    strokes: from.strokes.map(({ offsetMs, levelDb, isMissed }, i) => {
      const share = kept[i % kept.length] as number;
      if (isMissed) return { offsetMs: 0, levelDb: 0, isMissed: !filled[i % filled.length] };
      return { offsetMs: offsetMs * share, levelDb: levelDb * share, isMissed };
    }),
    extra: Math.floor(from.extra * (kept[0] as number)),
    tempo: 1 + (from.tempo - 1) * (kept[0] as number),
  };
}

it('[CH5] a better loop never gets a worse verdict', () => {
  const shares = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 7 });
  const fills = fc.array(fc.boolean(), { minLength: 1, maxLength: 5 });
  fc.assert(
    fc.property(playing, shares, fills, fc.constantFrom(...LEVELS), (from, kept, filled, level) => {
      const before = judgeLoop(task, heardFrom(task, from), level).verdict;
      const after = judgeLoop(task, heardFrom(task, better(from, kept, filled)), level).verdict;
      expect(RANK[after]).toBeGreaterThanOrEqual(RANK[before]);
    }),
    { numRuns: 150, seed: 7 },
  );
});

it('[CH4] a stricter level never gives a better verdict', () => {
  fc.assert(
    fc.property(playing, (from) => {
      const ranks = LEVELS.map((level) => RANK[judgeLoop(task, heardFrom(task, from), level).verdict]);
      expect(ranks).toEqual(ranks.toSorted((a, b) => b - a));
    }),
    { numRuns: 100, seed: 8 },
  );
});

it('[CH4] untrained timing passes the first level and not the last', () => {
  const wander = [30, -20, 10, -30, 20, -10, 25, -25];
  const strokes = task.strokes.map((stroke, i) =>
    play(stroke, { offsetMs: Milliseconds(wander[i % wander.length] as number) }),
  );
  const verdicts = LEVELS.map((level) => judgeLoop(task, playLoop(task, { strokes }), level).verdict);
  // definition: at 72 bpm a first level may be 30 ms off where limbs meet, a fluent one 11 ms
  expect(verdicts[0]).toBe('clean');
  expect(verdicts[2]).toBe('stumble');
});

it('[CH3] a pattern that is left out is a stumble, and one missed stroke is not', () => {
  const missed = task.strokes.filter((stroke) => stroke.voice === 'snare' || stroke.voice === 'ride');
  const left = task.strokes.filter((stroke) => !missed.includes(stroke));
  const loop = playLoop(task, {
    strokes: left.map((stroke) => play(stroke)),
    missed: missed.map(({ voice, written }) => ({ ...written, voice })),
  });
  expect(judgeLoop(task, loop, 'beginner').verdict).toBe('stumble');
  const [one, ...rest] = task.strokes;
  const nearly = playLoop(task, {
    strokes: rest.map((stroke) => play(stroke)),
    missed: one ? [{ ...one.written, voice: one.voice }] : [],
  });
  expect(judgeLoop(task, nearly, 'beginner').verdict).toBe('clean');
  expect(judgeLoop(task, nearly, 'advanced').verdict).toBe('loose');
});

it('[CH7] what the ear is unsure of is not held against anyone', () => {
  const strokes = task.strokes.map((stroke) =>
    play(stroke, { offsetMs: Milliseconds(200), confidence: 0.3 }),
  );
  const extra = [{ voice: 'crash' as const, near: { bar: 1, beat: 1, slot: 1 }, confidence: 0.2 }];
  expect(judgeLoop(task, playLoop(task, { strokes, extra }), 'advanced').verdict).toBe('clean');
});

it('[CH7] too little heard is unheard, not a stumble', () => {
  const feet = playLoop(task, { voices: ['bass'] });
  expect(judgeLoop(task, feet, 'intermediate')).toMatchObject({
    verdict: 'unheard',
    faults: [],
    reasons: [],
  });
  const nothing = playLoop(task, { voices: [], strokes: [] });
  expect(judgeLoop(task, nothing, 'intermediate').verdict).toBe('unheard');
});

it('[CH9] a bass drum that is not feathered is said to be too loud against the ride', () => {
  const strokes = task.strokes.map((stroke) =>
    play(stroke, stroke.voice === 'bass' ? { levelDb: LeadDb(-4) } : {}),
  );
  const judged = judgeLoop(task, playLoop(task, { strokes }), 'intermediate');
  expect(judged.verdict).toBe('loose');
  // definition: feathered is -18 dB in this lesson, so -4 dB is 14 dB too loud
  expect(judged.reasons[0]?.fact).toEqual({
    fact: 'loop-reason',
    what: { fact: 'too-loud', limb: 'right foot', voice: 'bass', db: 14, lead: 'ride' },
  });
});

it('[CH9] the lead voice is what the others are measured against, never out of balance itself', () => {
  const strokes = task.strokes.map((stroke) =>
    play(stroke, stroke.voice === 'ride' ? { levelDb: LeadDb(12) } : {}),
  );
  expect(judgeLoop(task, playLoop(task, { strokes }), 'advanced').verdict).toBe('clean');
});

it('[CH8] a stroke that is both heard and missed was heard', () => {
  const missed = task.strokes.map(({ voice, written }) => ({ ...written, voice }));
  expect(judgeLoop(task, playLoop(task, { missed }), 'advanced').verdict).toBe('clean');
});

it('[CH9] a tempo other than the one asked is not clean', () => {
  const judged = judgeLoop(task, playLoop(task, { bpm: Bpm(72 * 0.85) }), 'beginner');
  // definition: 85 percent of the tempo is 15 percent slower
  expect(judged.reasons.map(({ kind }) => kind)).toEqual(['slow']);
  expect(judged.reasons[0]?.amount).toBeCloseTo(15, 9);
  expect(judged.verdict).toBe('loose');
});
