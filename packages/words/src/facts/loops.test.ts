import { Bpm, Milliseconds } from '@shedbook/core';
import { judgeLoop, loopTask, type Reason } from '@shedbook/judge';
import { expect, it } from 'vitest';
import { formOf, lessonOf, play, playLoop, swing, swingTask } from '../../../../internal/testing/loops.ts';
import { ENGLISH } from '../english/english.ts';
import { GERMAN } from '../german/german.ts';
import { say } from './say.ts';

const task = swingTask();

function english(reasons: readonly Reason[]): readonly string[] {
  return reasons.map(({ fact }) => say(fact, ENGLISH));
}

const SNARE_LET = { bar: 2, beat: 3, slot: 3 };

it('[CH6] a missed stroke is named by limb and place, and stands before a late one', () => {
  const strokes = task.strokes
    .filter(({ voice, written }) => !(voice === 'snare' && written.bar === 2 && written.beat === 3))
    .map((stroke) => {
      const isLate = stroke.voice === 'snare' && stroke.written.bar === 1 && stroke.written.beat === 1;
      return play(stroke, isLate ? { offsetMs: Milliseconds(45) } : {});
    });
  const loop = playLoop(task, { strokes, missed: [{ voice: 'snare', ...SNARE_LET }] });
  // common practice: triplets are counted "1 trip let", the snare is the left hand of a right-handed set-up
  expect(english(judgeLoop(task, loop, 'advanced').reasons)).toEqual([
    'Left hand (snare): missing on the let of 3 in bar 2.',
    'Left hand (snare): late by about 45 ms on the let of 1 in bar 1.',
  ]);
});

it('[CH6] an early stroke that parts from the ride is said to be heard apart', () => {
  const together = swingTask(2);
  const strokes = together.strokes.map((stroke) => {
    const isEarly = stroke.voice === 'snare' && stroke.written.bar === 1 && stroke.written.beat === 1;
    return play(stroke, isEarly ? { offsetMs: Milliseconds(-40) } : {});
  });
  // published: two events 40 ms apart are beyond the order threshold of 22 ms (mazurka.org.uk/experiments)
  expect(english(judgeLoop(together, playLoop(together, { strokes }), 'intermediate').reasons)[0]).toBe(
    'Left hand (snare): early by about 40 ms on 1 in bar 1, heard apart from the ride and the bass drum.',
  );
});

it('[CH6] a voice that is late everywhere is said once', () => {
  const strokes = task.strokes.map((stroke) =>
    play(stroke, stroke.voice === 'hihat-foot' ? { offsetMs: Milliseconds(50) } : {}),
  );
  const { reasons } = judgeLoop(task, playLoop(task, { strokes }), 'intermediate');
  expect(english(reasons)).toEqual(['Left foot (hi-hat foot): late by about 50 ms throughout.']);
});

it('[CH6] one late stroke of two is named by its place, not called "throughout"', () => {
  const form = { ...formOf(swing.lesson), sections: [{ play: 'pattern' as const, bars: 1, ending: null }] };
  const bar = loopTask(swing.lesson, { exercise: 1, form, bpm: Bpm(72) });
  const strokes = bar.strokes.map((stroke) => {
    const isLate = stroke.voice === 'snare' && stroke.written.beat === 1;
    return play(stroke, isLate ? { offsetMs: Milliseconds(50) } : {});
  });
  expect(english(judgeLoop(bar, playLoop(bar, { strokes }), 'advanced').reasons)).toEqual([
    'Left hand (snare): late by about 50 ms on the let of 1.',
  ]);
});

it('[CH6] a stroke too many is named with what is near it', () => {
  const extra = [{ voice: 'snare' as const, near: { bar: 4, beat: 2, slot: 1 }, confidence: 0.9 }];
  const { reasons } = judgeLoop(task, playLoop(task, { extra }), 'advanced');
  expect(english(reasons)[0]).toBe('Left hand (snare): a stroke too many near 2 in bar 4.');
});

it('[CH6] a left-handed set-up mirrors the limbs, and a written hand decides', () => {
  const lesson = lessonOf(
    'title: Mirror\nsetUp: left-handed\ngroove: {bass: x . x .}\nexercises:\n  - {pattern: x x x x, sticking: RLRL}\n',
  );
  const mirrored = loopTask(lesson, { exercise: 1, form: formOf(lesson), bpm: Bpm(80) });
  const strokes = mirrored.strokes.map((stroke) => {
    const isLate = stroke.voice === 'snare' && stroke.written.bar === 1 && stroke.written.beat === 2;
    return play(stroke, isLate ? { offsetMs: Milliseconds(90) } : {});
  });
  expect(english(judgeLoop(mirrored, playLoop(mirrored, { strokes }), 'advanced').reasons)[0]).toBe(
    'Left hand (snare): late by about 90 ms on 2 in bar 1.',
  );
});

it('[ST92] a reason is said in the reader’s language', () => {
  const place = { fact: 'in-bar', place: { fact: 'syllable', syllable: 'let', beat: 2 }, bar: 2 } as const;
  const what = { fact: 'late-at', limb: 'left hand', voice: 'snare', ms: 33.6, place } as const;
  // common practice: the last of three slots is counted "let"; the left hand of a right-handed set-up plays the snare
  expect([ENGLISH, GERMAN].map((language) => say({ fact: 'loop-reason', what }, language))).toEqual([
    'Left hand (snare): late by about 34 ms on the let of 2 in bar 2.',
    'Linke Hand (Snare): etwa 34 ms zu spät auf dem „let“ der 2 in Takt 2.',
  ]);
  const apart = { fact: 'heard-apart', what, voices: ['ride', 'bass'] } as const;
  const often = { fact: 'loops-reason', what: apart, times: 2, of: 3 } as const;
  expect(say(often, GERMAN)).toBe(
    'Linke Hand (Snare): etwa 34 ms zu spät auf dem „let“ der 2 in Takt 2, getrennt zu hören von Ride und Bassdrum, 2 von 3 Mal.',
  );
  const slow = { fact: 'slower-than-asked', percent: 12 } as const;
  expect(say({ fact: 'loop-reason', what: slow }, GERMAN)).toBe('Etwa 12 Prozent langsamer als verlangt.');
});
