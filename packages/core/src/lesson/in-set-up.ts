/**
 * A lesson for a set-up other than the one that it is written for.
 *
 * Conventions: limbs are named by their job and mirror of themselves; the hands that are written for strokes are sides,
 * so a left-handed student's are the other ones: what a right-hander's right hand leads with, the left hand leads with
 * there. Both hands stay both. Exercises go by the names that they had.
 * Source: common practice of teaching left-handed players on a mirrored set.
 */
import type { SetUp } from '../kit/voice.ts';
import type { Hand } from './hand.ts';
import { isSticked, withHands } from './hands.ts';
import { exerciseKey } from './identity.ts';
import type { Exercise, Lesson } from './lesson.ts';

/** The hand on the other side. */
const OTHER: Readonly<Record<Hand, Hand>> = { R: 'L', L: 'R', B: 'B' };

/** An exercise with its written hands on the other side. */
export function handsMirrored<T extends Pick<Exercise, 'parts' | 'sticking'>>(exercise: T): T {
  const turned = (hands: readonly Hand[] | null | undefined) => hands?.map((hand) => OTHER[hand]) ?? null;
  return {
    ...exercise,
    parts: exercise.parts.map((part) => withHands(part, turned(part.hands))),
    sticking: turned(exercise.sticking),
  };
}

function mirrored(exercise: Exercise): Exercise {
  return isSticked(exercise) ? { ...handsMirrored(exercise), id: exerciseKey(exercise) } : exercise;
}

/** A lesson or section for somebody with a set-up of their own; as it is written where that is null. */
export function inSetUp(lesson: Lesson, setUp: SetUp | null): Lesson {
  if (setUp === null || setUp === lesson.setUp) return lesson;
  return {
    ...lesson,
    setUp,
    exercises: lesson.exercises.map(mirrored),
    sections: lesson.sections.map((section) => inSetUp(section, setUp)),
  };
}
