import { expect, it } from 'vitest';
import { swingTask } from '../../../../internal/testing/loops.ts';
import { ALLOWANCES } from '../level/levels.data.ts';
import { findReasons } from './reasons.ts';

const task = swingTask();
const SNARE_LET = { bar: 2, beat: 3, slot: 3 };

/** A missed snare on the last triplet of a beat: the left hand of a right-handed set-up. */
function missedAt(bar: number, beat: number) {
  const place = { fact: 'in-bar', place: { fact: 'syllable', syllable: 'let', beat }, bar };
  return { fact: 'missed-at', limb: 'left hand', voice: 'snare', place };
}

it('[CH6] over several loops a reason says how often, and the more frequent comes first', () => {
  const missed = { kind: 'missed' as const, voice: 'snare' as const, amount: 1 };
  const often = { ...missed, place: SNARE_LET };
  const once = { ...missed, place: { bar: 1, beat: 1, slot: 3 } };
  const loops = [{ faults: [once, often] }, { faults: [often] }, { faults: [often] }, { faults: [] }];
  expect(findReasons(task, loops, ALLOWANCES.intermediate).map(({ fact }) => fact)).toEqual([
    { fact: 'loops-reason', what: missedAt(2, 3), times: 3, of: 4 },
    { fact: 'loops-reason', what: missedAt(1, 1), times: 1, of: 4 },
  ]);
});
