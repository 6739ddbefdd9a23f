/**
 * How often each limb got through a loop, over everything that an ear heard.
 *
 * Conventions: a limb is that of the voice in the lesson, and both hands clap; a loop counts for every limb that plays in
 * it and was heard. A fault of the tempo as a whole is nobody's.
 */
import { findExercise } from '@shedbook/coach';
import {
  type Exercise,
  type FaultKind,
  type Lesson,
  LIMBS,
  type Limb,
  type LoopRecord,
  type PracticeLog,
  type Voice,
} from '@shedbook/core';
import type { DeskShelf } from './take-in.ts';

/** How a limb got on. */
export interface LimbShare {
  readonly limb: Limb;
  /** Loops that it played in and that were heard. */
  readonly loops: number;
  /** Number of loops in which nothing was wrong with it. */
  readonly clean: number;
  /** What was wrong most often, or null. */
  readonly mostly: FaultKind | null;
}

interface HeardLoop {
  readonly lesson: Lesson;
  readonly limbs: ReadonlySet<Limb>;
  readonly loop: LoopRecord;
}

/** The limbs that play a voice. */
function limbsOf({ limbs }: Lesson, voice: Voice): readonly Limb[] {
  return voice === 'clap' ? ['lead hand', 'other hand'] : [limbs[voice]];
}

/** The limbs of which something was heard. */
function limbsIn(lesson: Lesson, exercise: Exercise | null, { unheard = [] }: LoopRecord): ReadonlySet<Limb> {
  const voices: readonly Voice[] = [...lesson.groove, ...(exercise?.parts ?? [])].map((part) => part.voice);
  return new Set(
    voices.filter((voice) => !unheard.includes(voice)).flatMap((voice) => limbsOf(lesson, voice)),
  );
}

function heardLoops(shelf: readonly DeskShelf[], log: PracticeLog): readonly HeardLoop[] {
  return log.entries.flatMap((entry) => {
    if (entry.heardBy !== 'ear') return [];
    const found =
      entry.exercise === null ? null : (findExercise(shelf, entry.lesson, entry.exercise) ?? null);
    const lesson = found?.lesson ?? shelf.find((each) => each.id === entry.lesson)?.lesson;
    if (!lesson) return [];
    const loops = entry.loops.filter((loop) => loop.verdict !== 'unheard');
    return loops.map((loop) => ({ lesson, limbs: limbsIn(lesson, found?.exercise ?? null, loop), loop }));
  });
}

function mostOften(kinds: readonly FaultKind[]): FaultKind | null {
  const counts = new Map<FaultKind, number>();
  for (const kind of kinds) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return [...counts].toSorted(([, a], [, b]) => b - a)[0]?.[0] ?? null;
}

/** Every limb that was heard, in the order of the limbs. */
export function limbShares(shelf: readonly DeskShelf[], log: PracticeLog): readonly LimbShare[] {
  const heard = heardLoops(shelf, log);
  return LIMBS.flatMap((limb) => {
    const own = heard.filter((each) => each.limbs.has(limb));
    const faults = own.map(({ lesson, loop }) =>
      loop.faults.filter((fault) => fault.voice !== null && limbsOf(lesson, fault.voice).includes(limb)),
    );
    const clean = faults.filter((each) => each.length === 0).length;
    const mostly = mostOften(faults.flatMap((each) => each.map((fault) => fault.kind)));
    return own.length === 0 ? [] : [{ limb, loops: own.length, clean, mostly }];
  });
}
