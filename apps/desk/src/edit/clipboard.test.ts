import { exerciseKey, parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { copyExercises, pastedExercises, plainText, printCopied, readCopied } from './clipboard.ts';
import { withExercises } from './exercises.ts';

function read(text: string) {
  const { lesson, problems } = parseLesson(text, 'lesson');
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

const FROM = read('title: First swing\nexercises: [x . . ., { pattern: . x . ., id: the push }]\n');
const INTO = 'title: For Kaito\nexercises: [. . x .]\n';

/** The lesson with what was copied put behind its exercises. */
function pasted(text: string, copied: ReturnType<typeof copyExercises>) {
  const lesson = read(text);
  return read(withExercises(text, lesson, [...lesson.exercises, ...pastedExercises(copied, lesson)]));
}

it('[ST423] exercises that are put in another lesson say what they are copies of; in their own they need not', () => {
  const copied = copyExercises(FROM, FROM, FROM.exercises, false);
  expect(readCopied(printCopied(copied))).toEqual(copied);
  const [, first, second] = pasted(INTO, copied).exercises;
  expect(first?.from).toEqual({ lesson: 'first-swing', exercise: 'snare x . . .' });
  expect(second?.from).toEqual({ lesson: 'first-swing', exercise: 'the push' });
  expect(second?.id).toBeUndefined();
  // A copy of a copy comes from where that came from.
  const again = pasted('title: Third\n', copyExercises(pasted(INTO, copied), FROM, [first as never], false));
  expect(again.exercises[0]?.from).toEqual({ lesson: 'first-swing', exercise: 'snare x . . .' });
  const cut = copyExercises(FROM, FROM, FROM.exercises.slice(1), true);
  const back = pasted('title: First swing\nexercises: [x . . .]\n', cut);
  expect(back.exercises.map(exerciseKey)).toEqual(['snare x . . .', 'the push']);
});

it('[ST423] gives other programs pattern texts, and takes nothing that it cannot read', () => {
  expect(plainText(copyExercises(FROM, FROM, FROM.exercises, false))).toBe('x . . .\n. x . .');
  for (const text of [null, '', '{', '{"version":9}']) expect(readCopied(text)).toBeNull();
});
