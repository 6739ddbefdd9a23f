/**
 * Lasting names: what a student's practice, a teacher's assignment and a copy hold on to while lessons are renumbered,
 * moved, renamed and copied.
 *
 * Conventions: an exercise is called by its patterns until it has an `id`; a lesson by its title as a file name. Both
 * are written only where an edit would change a name that something refers to.
 */
import { formatPattern } from '../rhythm/pattern.ts';
import type { Expression } from './expression.ts';
import { expressionName } from './expression-data.ts';
import { fileNameOf } from './file-name.ts';
import { handsOf } from './hands.ts';
import type { Exercise, Lesson } from './lesson.ts';
import { type Repetition, repetitionName } from './repeats.ts';

/**
 * What an exercise is called as long as it has no `id`: its voices and patterns, and where written its hands, repeats,
 * dynamics, fill and rests.
 * @example patternsName({ parts: [{ voice: 'snare', pattern: parsePattern('..x x.. ... x.x') }], sticking: null }) // 'snare ..x x.. ... x.x'
 */
export function patternsName(
  exercise: Pick<Exercise, 'parts' | 'sticking'> & Expression & Repetition,
): string {
  const { parts } = exercise;
  const hands = parts.map((_, part) => {
    const own = handsOf(exercise, part);
    return own ? ` (${own.join('')})` : '';
  });
  const voices = parts.map(
    ({ voice, pattern }, part) => `${voice} ${formatPattern(pattern)}${part === 0 ? '' : hands[part]}`,
  );
  return `${voices.join('; ')}${hands[0] ?? ''}${repetitionName(exercise)}${expressionName(exercise)}`;
}

/** The name of an exercise for good inside its lesson. */
export function exerciseKey(exercise: Pick<Exercise, 'parts' | 'sticking'> & Partial<Exercise>): string {
  const { id, nth } = exercise;
  return id ?? `${patternsName(exercise)}${nth === undefined ? '' : ` #${nth}`}`;
}

/** The name of a lesson for good: its `id`, else its title as a file name. */
export function lessonKey({ id, title }: Pick<Lesson, 'id' | 'title'>): string {
  return id ?? fileNameOf(title, '');
}

/** What an exercise of a section is played over, as one text: the same bar over the same is the same exercise. */
export function surroundingsOf({
  meter,
  feel,
  groove,
  playedWith,
}: Pick<Lesson, 'meter' | 'feel' | 'groove' | 'playedWith'>): string {
  const parts = groove.map(({ voice, pattern }) => `${voice} ${formatPattern(pattern)}`);
  const held = playedWith === 'brushes' ? [playedWith] : [];
  return [meter.text, JSON.stringify(feel), ...held, ...parts.toSorted()].join('\n');
}
