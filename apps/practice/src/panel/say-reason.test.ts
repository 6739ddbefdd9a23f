import { Bpm } from '@shedbook/core';
import type { Reason } from '@shedbook/judge';
import { HEARING } from '@shedbook/words';
import { expect, it } from 'vitest';
import { formOnce, HEARING_LESSON, lessonOf } from '../../../../internal/testing/hearing.ts';
import type { PlayedTask } from '../ear/judge-loop.ts';
import { sayReason } from './say-reason.ts';

const lesson = lessonOf(HEARING_LESSON);
const task: PlayedTask = { lesson, exercise: 1, form: formOnce(lesson), layers: 9, bpm: Bpm(160), mine: [] };

function reason(change: Partial<Reason>): Reason {
  const at = { bar: 2, beat: 2, slot: 3 };
  return { kind: 'late', voice: 'snare', place: at, amount: 40, loops: 1, strength: 1, text: '', ...change };
}

it('[ST92] says a reason by limb, count and amount in the reader’s language', () => {
  // common practice: the last of three slots is counted "let"; the left hand of a right-handed set-up plays the snare
  expect(sayReason(task, reason({}), HEARING.en)).toBe(
    'Left hand (snare): late by about 40 ms on the let of 2 in bar 2.',
  );
  expect(sayReason(task, reason({}), HEARING.de)).toBe(
    'Linke Hand (Snare): etwa 40 ms zu spät auf dem „let“ der 2 in Takt 2.',
  );
  const missed = reason({ kind: 'missed', voice: 'hihat-foot', place: null, amount: 1 });
  expect(sayReason(task, missed, HEARING.en)).toBe('Left foot (hi-hat foot): missing throughout.');
  const slow = reason({ kind: 'slow', voice: null, place: null, amount: 12 });
  expect(sayReason(task, slow, HEARING.de)).toBe('Etwa 12 Prozent langsamer als verlangt.');
});

it('[ST92] mirrors the limbs of a left-handed set-up', () => {
  const mirrored = { ...task, lesson: { ...lesson, setUp: 'left-handed' as const } };
  // definition: a left-handed set-up is the mirror image
  expect(sayReason(mirrored, reason({ place: null }), HEARING.en)).toBe(
    'Right hand (snare): late by about 40 ms throughout.',
  );
});
