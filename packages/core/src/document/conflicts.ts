/** Exercises that ask one limb to be in two places at once. */
import { perform } from '../groove/perform.ts';
import { barsOf } from '../groove/place.ts';
import type { Stroke } from '../groove/stroke.ts';
import type { Limb } from '../kit/voice.ts';
import type { Exercise, Form } from '../lesson/lesson.ts';
import { formatFraction } from '../rhythm/fraction.ts';
import type { Fault } from './fault.ts';
import type { Resolved } from './resolve.ts';

interface Conflict {
  readonly first: Stroke;
  readonly second: Stroke;
  readonly limb: Limb;
}

function loopOf(bars: number): Form {
  return { name: 'check', sections: [{ play: 'pattern', bars, ending: null }], repeat: 1, countInBars: 0 };
}

/** The first moment at which one limb has two strokes, or null. */
function firstConflict(strokes: readonly Stroke[]): Conflict | null {
  const taken = new Map<string, Stroke>();
  for (const stroke of strokes) {
    if (!stroke.limb) continue;
    const moment = `${stroke.limb} ${formatFraction(stroke.at)}`;
    const other = taken.get(moment);
    if (other) return { first: other, second: stroke, limb: stroke.limb };
    taken.set(moment, stroke);
  }
  return null;
}

function conflictOf({ lesson, pathOf }: Resolved, exercise: Exercise): Fault | null {
  const form = loopOf(barsOf(exercise));
  const conflict = firstConflict(perform(lesson, { exercise: exercise.number, form }).strokes);
  if (!conflict) return null;
  const { first, second, limb } = conflict;
  const { bar, beat, slot } = second.written;
  return {
    code: 'limb-conflict',
    severity: 'warning',
    path: pathOf(exercise.number),
    found: { fact: 'limb-conflict', voices: [first.voice, second.voice], limb, bar, beat, slot },
    expected: { fact: 'one-stroke-a-limb' },
    repair: { fact: 'sticking-or-limb' },
  };
}

/** A warning for each exercise in which a limb has two strokes at the same moment. */
export function findLimbConflicts(resolved: Resolved): readonly Fault[] {
  return resolved.lesson.exercises.flatMap((exercise) => conflictOf(resolved, exercise) ?? []);
}
