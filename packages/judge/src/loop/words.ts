/**
 * A teacher's words for limbs, places and faults.
 *
 * Conventions: places are counted aloud as in core's counting: "the & of 2", "the let of 3"; a bar is named only
 * where the loop has more than one.
 */
import {
  countSyllable,
  handLetter,
  type Limb,
  type LoopFault,
  type SetUp,
  VOICE_FACTS,
  type Voice,
  type WrittenPlace,
} from '@shedbook/core';
import type { LoopTask } from './task.ts';

/**
 * A limb as the student knows it.
 * @example limbName('other hand', 'right-handed') // 'left hand'
 */
export function limbName(limb: Limb, setUp: SetUp): string {
  const hand = limb === 'lead hand' || limb === 'lead foot' ? 'lead hand' : 'other hand';
  const side = handLetter(hand, setUp) === 'R' ? 'right' : 'left';
  return `${side} ${limb.endsWith('hand') ? 'hand' : 'foot'}`;
}

/** The limb and voice that a fault is about, with a capital: `Left hand (snare)`. */
export function whoPlays(task: LoopTask, voice: Voice, place: WrittenPlace | null): string {
  const own = task.strokes.filter((stroke) => stroke.voice === voice);
  const here = own.find(
    ({ written }) => written.bar === place?.bar && written.beat === place.beat && written.slot === place.slot,
  );
  const limb = here?.limb ?? own[0]?.limb ?? VOICE_FACTS[voice].limb;
  const name = limbName(limb, task.setUp);
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} (${VOICE_FACTS[voice].label})`;
}

/** A place as it is counted: `2`, `the let of 2`, `the & of 3 in bar 2`. */
export function placeName(task: LoopTask, place: WrittenPlace): string {
  const at = task.strokes.find(
    ({ written, slots }) =>
      written.bar === place.bar && written.beat === place.beat && written.slot === place.slot && slots > 1,
  );
  const syllable = place.slot === 1 ? null : countSyllable(place.beat - 1, place.slot - 1, at?.slots ?? 4);
  const counted = syllable === null ? `${place.beat}` : `the ${syllable} of ${place.beat}`;
  return task.bars > 1 ? `${counted} in bar ${place.bar}` : counted;
}

function where(task: LoopTask, place: WrittenPlace | null): string {
  return place === null ? 'throughout' : `on ${placeName(task, place)}`;
}

/** One fault as a clause without a full stop. `place` null means throughout. */
export function sayFault(task: LoopTask, fault: LoopFault): string {
  const { kind, voice, place } = fault;
  const amount = Math.round(fault.amount);
  if (voice === null) return `${kind === 'slow' ? 'Slower' : 'Faster'} than asked by about ${amount} percent`;
  const who = whoPlays(task, voice, place);
  switch (kind) {
    case 'missed':
      return `${who}: missing ${where(task, place)}`;
    case 'extra':
      return `${who}: a stroke too many${place ? ` near ${placeName(task, place)}` : ''}`;
    case 'loud':
    case 'quiet':
      return `${who}: about ${amount} dB too ${kind} against the ${VOICE_FACTS[task.lead].label}`;
    default:
      return `${who}: ${kind} by about ${amount} ms ${where(task, place)}`;
  }
}
