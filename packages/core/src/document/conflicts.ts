/** Exercises that ask one limb to be in two places at once. */
import { perform } from '../groove/perform.ts';
import { barsOf } from '../groove/place.ts';
import type { Stroke } from '../groove/stroke.ts';
import { VOICE_FACTS } from '../kit/voice.ts';
import type { Exercise, Form, Lesson } from '../lesson/lesson.ts';
import { formatFraction } from '../rhythm/fraction.ts';
import type { Fault } from './fault.ts';

function loopOf(bars: number): Form {
  return { name: 'check', sections: [{ play: 'pattern', bars, ending: null }], repeat: 1, countInBars: 0 };
}

function label(stroke: Stroke): string {
  return stroke.voice === 'click' ? 'click' : VOICE_FACTS[stroke.voice].label;
}

/** The first moment at which one limb has two strokes, or null. */
function firstConflict(strokes: readonly Stroke[]): readonly [Stroke, Stroke] | null {
  const taken = new Map<string, Stroke>();
  for (const stroke of strokes) {
    const moment = `${stroke.limb} ${formatFraction(stroke.at)}`;
    const other = taken.get(moment);
    if (other) return [other, stroke];
    taken.set(moment, stroke);
  }
  return null;
}

function conflictOf(lesson: Lesson, exercise: Exercise): Fault | null {
  const form = loopOf(barsOf(exercise));
  const conflict = firstConflict(perform(lesson, { exercise: exercise.number, form }).strokes);
  if (!conflict) return null;
  const [first, second] = conflict;
  const { bar, beat, slot } = second.written;
  return {
    code: 'limb-conflict',
    severity: 'warning',
    path: ['exercises', exercise.number - 1],
    found: `${label(first)} and ${label(second)} for the ${second.limb} at bar ${bar}, beat ${beat}, slot ${slot}`,
    expected: 'one stroke at a time for a limb',
    repair: 'write a sticking, or name the limb of a voice under "limbs"',
  };
}

/** A warning for each exercise in which a limb has two strokes at the same moment. */
export function findLimbConflicts(lesson: Lesson): readonly Fault[] {
  return lesson.exercises.flatMap((exercise) => conflictOf(lesson, exercise) ?? []);
}
