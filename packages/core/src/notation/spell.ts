/**
 * Spelling one beat: which note values and rests write a rhythm.
 *
 * Conventions: slots count from 0 in a grid of `slots` equal parts of the beat. A note lasts to the next note
 * of the beat where one value can say so; the last note takes the longest value that its place in the beat
 * allows; what is left is rests, never dotted.
 * Source: common practice as taught by E. Gould, Behind Bars (from memory): tuplets by their normal value,
 * rests that show the parts of the beat.
 */
import { divide, type Fraction, fraction, multiply } from '../rhythm/fraction.ts';
import { isPowerOfTwo, slotValue } from '../rhythm/slot-value.ts';
import type { NoteValue } from './notation.ts';

/** A note or rest of one beat. */
export interface SpelledEvent {
  readonly kind: 'note' | 'rest';
  readonly slot: number;
  readonly length: number;
  readonly value: NoteValue;
  /** Whether it only goes on from the note before it, which no single value could write. */
  readonly continues?: true;
}

/** A stretch of slots that one sound fills to its end, from a slot up to another. */
export interface HeldStretch {
  readonly from: number;
  readonly to: number;
}

/** One beat written out. */
export interface SpelledBeat {
  readonly slots: number;
  /** `actual` in the time of `normal`, both numbers of notes, or null. */
  readonly tuplet: { readonly actual: number; readonly normal: number } | null;
  readonly events: readonly SpelledEvent[];
}

function noteValue(base: number, dots: 0 | 1): NoteValue {
  if (![1, 2, 4, 8, 16, 32, 64].includes(base))
    throw new RangeError(`Internal error: no note value 1/${base}`);
  return { base: base as NoteValue['base'], dots };
}

/** The single value that is `length` slots long, or null when none is. */
function singleValue(base: number, length: number): NoteValue | null {
  if (isPowerOfTwo(length) && base % length === 0) return noteValue(base / length, 0);
  const undotted = (length * 2) / 3;
  if (Number.isInteger(undotted) && isPowerOfTwo(undotted) && base % undotted === 0) {
    return noteValue(base / undotted, 1);
  }
  return null;
}

/** Longest note from `slot` up to `end` that one value can write; to the end of the beat only where aligned. */
function noteLength(base: number, slots: number, slot: number, end: number): number {
  for (let length = end - slot; length > 1; length -= 1) {
    const aligned = slot % length === 0 && slots % length === 0;
    if (singleValue(base, length) && (end < slots || aligned)) return length;
  }
  return 1;
}

function restLength(slot: number, end: number): number {
  let length = 1;
  while (slot % (length * 2) === 0 && slot + length * 2 <= end) length *= 2;
  return length;
}

function restsBetween(base: number, from: number, to: number): SpelledEvent[] {
  const rests: SpelledEvent[] = [];
  for (let slot = from; slot < to; ) {
    const length = restLength(slot, to);
    rests.push({ kind: 'rest', slot, length, value: noteValue(base / length, 0) });
    slot += length;
  }
  return rests;
}

function noteOf(base: number, slot: number, length: number): SpelledEvent {
  const value = singleValue(base, length);
  if (!value) throw new RangeError(`Internal error: no value of ${length} slots of 1/${base}`);
  return { kind: 'note', slot, length, value };
}

/** What is held, exactly as long as it is: as many notes, tied, as that takes. */
function heldNotes(base: number, slots: number, { from, to }: HeldStretch): SpelledEvent[] {
  const notes: SpelledEvent[] = [];
  for (let slot = from; slot < to; ) {
    const length = singleValue(base, to - slot) ? to - slot : noteLength(base, slots, slot, to);
    const note = noteOf(base, slot, length);
    notes.push(slot === from ? note : { ...note, continues: true });
    slot += length;
  }
  return notes;
}

function wholeBeat(beat: Fraction, kind: 'note' | 'rest'): SpelledBeat {
  const value = beat.num === 1 ? noteValue(beat.den, 0) : noteValue(beat.den / 2, 1);
  return { slots: 1, tuplet: null, events: [{ kind, slot: 0, length: 1, value }] };
}

/**
 * Writes one beat.
 * @param beat length of the beat in whole notes: 1/2^k, or 3/2^k for a dotted one
 * @param slots grid of the beat, already reduced to what is needed
 * @param struck slots in ascending order that are struck, or where something goes on from the beat before
 * @param held what begins at such slots and is written as long as it sounds
 */
export function spellBeat(
  beat: Fraction,
  slots: number,
  struck: readonly number[],
  held: readonly HeldStretch[] = [],
): SpelledBeat {
  if (struck.length === 0) return wholeBeat(beat, 'rest');
  if (slots === 1) return wholeBeat(beat, 'note');
  const { base, tuplet } = slotValue(beat, slots);
  const events = restsBetween(base, 0, struck[0] ?? 0);
  struck.forEach((slot, index) => {
    const end = struck[index + 1] ?? slots;
    const stretch = held.find(({ from }) => from === slot);
    const notes = stretch
      ? heldNotes(base, slots, stretch)
      : [noteOf(base, slot, noteLength(base, slots, slot, end))];
    const length = notes.reduce((sum, note) => sum + note.length, 0);
    events.push(...notes, ...restsBetween(base, slot + length, end));
  });
  return { slots, tuplet, events };
}

/** Sounding length in whole notes of a value inside an optional tuplet. */
export function valueDuration(
  value: NoteValue,
  tuplet: { readonly actual: number; readonly normal: number } | null,
): Fraction {
  const plain = fraction(value.dots === 1 ? 3 : 1, value.dots === 1 ? value.base * 2 : value.base);
  return tuplet ? multiply(plain, divide(fraction(tuplet.normal), fraction(tuplet.actual))) : plain;
}
