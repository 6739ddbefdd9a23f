/** Where the groove is silent under an exercise: limbs that rest, and fills. */
import type { Voice } from '../kit/voice.ts';
import type { Silent } from '../lesson/expression.ts';
import type { Exercise, GroovePart, Lesson } from '../lesson/lesson.ts';
import { silentLike } from '../rhythm/cell.ts';
import { commonGrid } from '../rhythm/grid.ts';

/** What of a lesson says who plays a voice. */
type Limbed = Pick<Lesson, 'limbs'>;

function isAmong(lesson: Limbed, voice: Voice, silent: readonly Silent[]): boolean {
  return silent.includes(voice) || silent.includes(lesson.limbs[voice]);
}

/** Whether a voice of the groove is silent under an exercise on a beat; bars and beats of the exercise from 0. */
export function isSilenced(
  lesson: Limbed,
  exercise: Exercise,
  voice: Voice,
  at: { readonly bar: number; readonly beat: number },
): boolean {
  const { rests, fill } = exercise;
  if (rests && isAmong(lesson, voice, rests)) return true;
  if (!fill || at.bar < fill.bar || (at.bar === fill.bar && at.beat < fill.beat)) return false;
  return fill.silences === null || isAmong(lesson, voice, fill.silences);
}

/** A part as often as a number of bars has room for it, silent where the exercise wants it. */
function under(lesson: Limbed, exercise: Exercise, { voice, pattern }: GroovePart, own: number): GroovePart {
  const count = commonGrid([own, Math.max(1, pattern.bars.length)]);
  const bars = Array.from({ length: count }, (_, index) =>
    (pattern.bars[index % pattern.bars.length] ?? []).map((each, beat) => {
      const isSilent = isSilenced(lesson, exercise, voice, { bar: index % own, beat });
      return isSilent ? silentLike(each) : each;
    }),
  );
  return { voice, pattern: { bars } };
}

/**
 * The groove as it is played under an exercise: without the voices that the exercise plays, and silent where it is to
 * be. A part that is silent somewhere has as many bars as it takes until it and the exercise begin anew together.
 */
export function grooveUnder(
  lesson: Pick<Lesson, 'groove' | 'limbs'>,
  exercise: Exercise,
): readonly GroovePart[] {
  const named = new Set(exercise.parts.map((part) => part.voice));
  const parts = lesson.groove.filter((part) => !named.has(part.voice));
  if (!exercise.rests && !exercise.fill) return parts;
  const own = exercise.parts[0]?.pattern.bars.length ?? 1;
  return parts.map((part) => under(lesson, exercise, part, own));
}
