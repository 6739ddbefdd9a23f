/**
 * Two parts of a beat, or of half of one, of which a stroke is the second: what a feel moves.
 *
 * Conventions: a share is where in its pair the second part lies, 0.5 in the middle; 2:1 swing is 2/3.
 */
import { beatLength, isDotted } from '@shedbook/core';
import { askedPhase, type LoopTask, type TaskStroke } from './task.ts';

/** Whether a beat is one of three parts by its meter among others that are not: no feel moves them. */
function isThreeAmongOthers({ meter }: LoopTask, beat: number): boolean {
  return !meter.compound && isDotted(beatLength(meter, beat - 1));
}

/** Where the two parts begin in the beat, and how long they are together, in beats. */
export interface Pair {
  readonly starts: number;
  readonly lasts: number;
}

/** A beat: its halves are eighths, or its first two triplets and its last. */
export const BEAT: Pair = { starts: 0, lasts: 1 };

/** The halves of a beat: where they are divided, sixteenths are. */
const HALVES: Readonly<Partial<Record<number, Pair>>> = {
  2: { starts: 0, lasts: 0.5 },
  4: { starts: 0.5, lasts: 0.5 },
};

/** The pair of a stroke that has its second part to itself; null where it is none. */
export function pairOf(task: LoopTask, { voice, written, slots }: TaskStroke): Pair | null {
  const { bar, beat, slot } = written;
  if (isThreeAmongOthers(task, beat)) return null;
  const isStruckAt = (...places: readonly number[]) =>
    task.strokes.some(
      (other) =>
        other.voice === voice &&
        other.written.bar === bar &&
        other.written.beat === beat &&
        places.includes(other.written.slot),
    );
  if (slots === 2) return slot === 2 ? BEAT : null;
  if (slots === 3) return slot === 3 && !isStruckAt(2) ? BEAT : null;
  if (slots !== 4 || task.meter.compound) return null;
  // the second half of the beat belongs to the eighths where it is not divided itself
  return slot === 3 && !isStruckAt(2, 4) ? BEAT : (HALVES[slot] ?? null);
}

/** Where in its pair a stroke is asked for. */
export function askedShare(task: LoopTask, stroke: TaskStroke, { starts, lasts }: Pair): number {
  return (askedPhase(task, stroke) - starts) / lasts;
}

/** What a task divides in two: its beats, or where more of its pairs are halves of them, these. */
export function dividedIn(task: LoopTask): 'eighths' | 'sixteenths' {
  const pairs = task.strokes.flatMap((stroke) => pairOf(task, stroke) ?? []);
  const halves = pairs.filter(({ lasts }) => lasts < BEAT.lasts).length;
  return task.swings ?? (halves > pairs.length / 2 ? 'sixteenths' : 'eighths');
}
