/**
 * Flams, drags and buzzes as single strokes, for a format that has only notes; and back.
 *
 * Conventions: an ornament's strokes are at `seconds` from the main stroke (grace strokes before it are negative)
 * and `levelDb` relative to it.
 * Grace strokes stand where they sound. Source: common practice for what a buzz is (a press of many bounces); its
 * times and levels are ours, no standard gives any.
 */
import { type Articulation, BOUNCES, GRACE_DB, GRACE_NOTES, GRACES_BEFORE_SECONDS } from '@shedbook/core';

/** Longest time between strokes of one ornament that is still heard as one, in seconds. */
export const ORNAMENT_GAP_SECONDS = 0.05;

/** Least difference of level between a main stroke and its grace strokes, in dB, when an ornament is read. */
export const ORNAMENT_STEP_DB = -6;

/** Fewest bounces after a stroke that make it a buzz. */
export const BUZZ_BOUNCES = 2;

/** Which ways of striking bounce. */
const IS_BOUNCED: Readonly<Record<Articulation, boolean>> = {
  normal: false,
  bell: false,
  splash: false,
  buzz: true,
  tap: false,
  sweep: false,
  flam: false,
  drag: false,
};

/** A stroke that an ornament adds, relative to its main stroke: seconds and dB. */
export interface OrnamentStroke {
  readonly seconds: number;
  readonly levelDb: number;
}

/** Bounces of a buzz: they fill the slot and leave the gap before the next one free where there is room. */
function bounces(slotSeconds: number): readonly OrnamentStroke[] {
  const count = Math.max(
    BUZZ_BOUNCES,
    Math.floor((slotSeconds - ORNAMENT_GAP_SECONDS) / BOUNCES.everySeconds) - 1,
  );
  const step = Math.min(BOUNCES.everySeconds, slotSeconds / (count + 2));
  return Array.from({ length: count }, (_, i) => ({ seconds: (i + 1) * step, levelDb: BOUNCES.levelDb }));
}

/** Grace strokes where they sound, or closer together where the stroke before leaves no room for that. */
function graces(count: 0 | 1 | 2, roomSeconds: number): readonly OrnamentStroke[] {
  const before = GRACES_BEFORE_SECONDS[count];
  const [first = 0] = before;
  const squeeze = Math.min(1, (roomSeconds * count) / ((count + 1) * first));
  return before.map((seconds) => ({ seconds: -seconds * squeeze, levelDb: GRACE_DB }));
}

/**
 * The strokes that an articulation adds to its main stroke.
 * @param slotSeconds length of the written slot, which a buzz fills
 * @param roomSeconds time since the stroke before, into which grace strokes must fit
 */
export function ornamentStrokes(
  articulation: Articulation,
  slotSeconds: number,
  roomSeconds: number,
): readonly OrnamentStroke[] {
  return IS_BOUNCED[articulation] ? bounces(slotSeconds) : graces(GRACE_NOTES[articulation], roomSeconds);
}

/** What is needed of a note to fold ornaments. */
export interface Ornamented {
  readonly timeSeconds: number;
  readonly levelDb: number;
  readonly articulation: Articulation;
}

interface Run<T> {
  readonly main: T;
  graces: number;
  bounces: number;
}

function isClose(earlier: Ornamented, later: Ornamented): boolean {
  return later.timeSeconds - earlier.timeSeconds <= ORNAMENT_GAP_SECONDS;
}

function isSofter(note: Ornamented, main: Ornamented): boolean {
  return note.levelDb - main.levelDb <= ORNAMENT_STEP_DB;
}

/** How many notes just before `index` are grace strokes of the note at `index`. */
function gracesBefore(notes: readonly Ornamented[], index: number, from: number): number {
  const main = notes[index] as Ornamented;
  let first = index;
  while (first > from && index - first < 2) {
    const before = notes[first - 1] as Ornamented;
    if (!isClose(before, notes[first] as Ornamented) || !isSofter(before, main)) break;
    first -= 1;
  }
  return index - first;
}

/** How many notes just after `index` are bounces of the note at `index`. */
function bouncesAfter(notes: readonly Ornamented[], index: number): number {
  const main = notes[index] as Ornamented;
  let last = index;
  while (last + 1 < notes.length) {
    const after = notes[last + 1] as Ornamented;
    if (!isClose(notes[last] as Ornamented, after) || !isSofter(after, main)) break;
    last += 1;
  }
  return last - index >= BUZZ_BOUNCES ? last - index : 0;
}

function isMain(notes: readonly Ornamented[], index: number): boolean {
  const next = notes[index + 1];
  if (!next) return true;
  const note = notes[index] as Ornamented;
  if (isClose(note, next) && isSofter(note, next)) return false;
  const second = notes[index + 2];
  return !(
    second &&
    isClose(note, next) &&
    isClose(next, second) &&
    isSofter(note, second) &&
    isSofter(next, second)
  );
}

/**
 * The main strokes of one voice with their ornaments folded in as articulations.
 * @param notes of one voice, in order of time
 */
export function foldOrnaments<T extends Ornamented>(notes: readonly T[]): readonly T[] {
  const runs: Run<T>[] = [];
  let from = 0;
  for (let index = 0; index < notes.length; index += 1) {
    if (index < from || !isMain(notes, index)) continue;
    const graces = gracesBefore(notes, index, from);
    const bounces = bouncesAfter(notes, index);
    for (let lone = from; lone < index - graces; lone += 1) {
      runs.push({ main: notes[lone] as T, graces: 0, bounces: 0 });
    }
    runs.push({ main: notes[index] as T, graces, bounces });
    from = index + bounces + 1;
  }
  return runs.map(({ main, graces, bounces }) => {
    if (main.articulation !== 'normal') return main;
    if (graces > 0) return { ...main, articulation: graces === 1 ? 'flam' : 'drag' };
    return bounces > 0 ? { ...main, articulation: 'buzz' } : main;
  });
}
