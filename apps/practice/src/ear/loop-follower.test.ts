import { Bpm, parseLesson } from '@shedbook/core';
import { createProgram } from '@shedbook/playing';
import type { Heard } from '@shedbook/stand';
import { describe, expect, it } from 'vitest';
import { type Follow, LoopFollower } from './loop-follower.ts';

const { lesson } = parseLesson(
  'title: T\ntempo: 120\nexercises:\n  - x.. ... ... ...\n  - ... x.. ... ...\n',
  't',
);

function programOf(exercise: number, formName = 'loop', repeat = 1) {
  const form = lesson?.forms.find((each) => each.name === formName);
  if (!lesson || !form) throw new Error('no lesson');
  return createProgram(lesson, { exercise, form: { ...form, repeat }, layers: 9, bpm: Bpm(120) });
}

/** A player that began its form at `from` seconds, at a moment. A bar at 120 takes two seconds. */
function at(seconds: number, { exercise = 1, from = 2, bpm = 120, pass = 0, repeat = 1 } = {}): Heard {
  const program = programOf(exercise, 'loop', repeat);
  const whole = 240 / bpm;
  const start = from + pass * program.end * whole;
  const secondsOf = (place: number) => start + place * whole;
  return { program, place: (seconds - start) / whole, pass, bpm: Bpm(bpm), secondsOf, fromPlace: 0 };
}

function starts(follows: readonly Follow[]): readonly (readonly [number, number, number])[] {
  return follows.flatMap((each) =>
    each.kind === 'loop' ? [[each.loop.startSeconds, each.loop.endSeconds, each.loop.bpm] as const] : [],
  );
}

function kinds(follows: readonly Follow[]): readonly string[] {
  return follows.map((each) => each.kind);
}

describe('following the player', () => {
  it('[ST73] announces the first loop in the count-in, and each next one while the last is played', () => {
    const follower = new LoopFollower();
    const first = follower.look(at(0.5), 1);
    expect(kinds(first)).toEqual(['exercise', 'loop', 'loop']);
    // definition: four bars of two seconds after a count-in of one
    expect(starts(first)).toEqual([
      [2, 10, 120],
      [10, 18, 120],
    ]);
    expect(follower.look(at(4), 1)).toEqual([]);
    expect(follower.look(at(9.99), 1)).toEqual([]);
    expect(starts(follower.look(at(10.03, { pass: 1 }), 1))).toEqual([[18, 26, 120]]);
  });

  it('[ST73] announces every time through a form that repeats', () => {
    const follower = new LoopFollower();
    expect(starts(follower.look(at(0.5, { repeat: 2 }), 2))).toEqual([
      [2, 10, 120],
      [10, 18, 120],
      [18, 26, 120],
    ]);
  });

  it('[ST73] announces the next loop anew where it comes at another tempo', () => {
    const follower = new LoopFollower();
    follower.look(at(0.5), 1);
    const next: Heard = { ...at(10.02, { from: 10, bpm: 160 }), pass: 1 };
    const follows = follower.look(next, 1);
    expect(kinds(follows)).toEqual(['break off', 'loop', 'loop']);
    // definition: four bars at 160 take six seconds
    expect(starts(follows)[0]).toEqual([10, 16, 160]);
  });

  it('[ST73] breaks a loop off whose tempo changes, and waits for the next', () => {
    const follower = new LoopFollower();
    follower.look(at(0.5), 1);
    // The tempo doubles at 6 s, half-way through: place 2 whole notes.
    const faster: Heard = { ...at(6), bpm: Bpm(240), secondsOf: (place) => 6 + (place - 2) };
    const follows = follower.look(faster, 1);
    expect(kinds(follows)).toEqual(['break off', 'loop']);
    expect(starts(follows)).toEqual([[8, 12, 240]]);
  });

  it('[ST73] says another exercise, after breaking off what was announced', () => {
    const follower = new LoopFollower();
    follower.look(at(0.5), 1);
    const follows = follower.look(at(20, { exercise: 2, from: 22 }), 1);
    expect(kinds(follows)).toEqual(['break off', 'exercise', 'loop', 'loop']);
    expect(kinds(follower.look(null, 1))).toEqual(['silence']);
    expect(follower.look(null, 1)).toEqual([]);
  });

  it('[ST73] leaves out a loop that it joins too late', () => {
    const follower = new LoopFollower();
    const follows = follower.look(at(5), 1);
    expect(starts(follows)).toEqual([[10, 18, 120]]);
  });
});
