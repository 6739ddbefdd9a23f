import { exerciseKey, parseLesson, parsePattern } from '@shedbook/core';
import { expect, it } from 'vitest';
import { copyOf } from './copy.ts';
import { changeExercise, duplicateExercise, withExercises, withLine, withMoved } from './exercises.ts';
import { renamed, setSetUp } from './heading.ts';
import { withNamesKept } from './keep-names.ts';

const TEXT = 'title: First swing\nexercises:\n  - x . . .\n  - . x . .\n';

function read(text: string) {
  const { lesson, problems } = parseLesson(text, 'lesson');
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

/** The text with other strokes in an exercise (from 0). */
function rewritten(text: string, index: number, pattern: string, inUse: readonly string[]): string {
  const lesson = read(text);
  const exercise = lesson.exercises[index] as (typeof lesson.exercises)[0];
  const line = withLine(exercise, 0, { pattern: parsePattern(pattern), sticking: null });
  return withExercises(text, lesson, changeExercise(lesson.exercises, index, line, { exercises: inUse }));
}

const keys = (text: string) => read(text).exercises.map(exerciseKey);

it('[ST195] an exercise that is practised keeps its name when it is written anew; another has none', () => {
  const used = rewritten(TEXT, 0, 'x . x .', ['snare x . . .']);
  expect(keys(used)).toEqual(['snare x . . .', 'snare . x . .']);
  expect(used).toContain('id: snare x . . .');
  // Written further it keeps it, written back it needs none.
  expect(keys(rewritten(used, 0, 'x . x x', ['snare x . . .']))[0]).toBe('snare x . . .');
  expect(rewritten(used, 0, 'x . . .', ['snare x . . .'])).not.toContain('id:');
  expect(rewritten(TEXT, 0, 'x . x .', [])).not.toContain('id:');
});

it('[ST195] a copy in the same lesson that is written anew is an exercise of its own', () => {
  const lesson = read(TEXT);
  const twice = withExercises(TEXT, lesson, duplicateExercise(lesson.exercises, 0));
  const inUse = ['snare x . . .'];
  expect(keys(rewritten(twice, 1, 'x . x .', inUse))).toEqual([
    'snare x . . .',
    'snare x . x .',
    'snare . x . .',
  ]);
  expect(keys(rewritten(twice, 0, 'x . x .', inUse))[0]).toBe('snare x . . .');
});

it('[ST195] a bar that stands over two grooves keeps its practice wherever it is moved', () => {
  const text = `title: T
sections:
  - exercises: [x . . ., x x x x]
  - groove: {ride: x x x x}
    exercises: [x . . .]
  - groove: {ride: xx xx xx xx}
    exercises: [x x . .]
`;
  const before = keys(text);
  const moved = keys(withMoved(text, read(text), 0, 3));
  expect(before).toEqual(['snare x . . .', 'snare x x x x', 'snare x . . . #2', 'snare x x . .']);
  expect(moved.toSorted()).toEqual(before.toSorted());
});

it('[ST195] a lesson that is referred to keeps its name under another title', () => {
  const after = renamed(TEXT, 'Swing for the spring', { lesson: true });
  expect(read(after)).toMatchObject({ title: 'Swing for the spring', id: 'first-swing' });
  expect(read(renamed(after, 'Swing again', { lesson: true })).id).toBe('first-swing');
  expect(renamed(after, 'First Swing', { lesson: true })).not.toContain('id:');
  expect(renamed(TEXT, 'Swing for the spring', { lesson: false })).not.toContain('id:');
});

it('[ST195] a copy of a lesson says what it comes from, a copy of a copy too', () => {
  const copy = copyOf({ lesson: read(TEXT), text: TEXT }, 'For Bram');
  expect(read(copy)).toMatchObject({ title: 'For Bram', from: 'first-swing', id: null });
  expect(read(copyOf({ lesson: read(copy), text: copy }, 'For Kaito')).from).toBe('first-swing');
});

it('[ST7013] an exercise that is practised keeps its name when the text is written', () => {
  const inUse = { exercises: ['snare x . . .'] };
  const before = read(TEXT);
  const kept = withNamesKept(TEXT.replace('x . . .', 'x . x .'), before, inUse);
  expect(keys(kept)).toEqual(['snare x . . .', 'snare . x . .']);
  expect(withNamesKept(kept, before, inUse)).toBe(kept);
  // Nothing refers to the other one; a line more or less, or a new order, says itself what stays.
  const silent = [
    TEXT.replace('. x . .', '. x x .'),
    TEXT.replace('  - . x', '  - x x x x\n  - . x'),
    TEXT.replace('  - x . . .\n', ''),
    'title: First swing\nexercises:\n  - . x . .\n  - x . . .\n',
    TEXT.replace('x . . .', 'x . . y'),
  ];
  for (const text of silent) expect(withNamesKept(text, before, inUse)).toBe(text);
  // A name that somebody writes is theirs.
  const named = TEXT.replace('- x . . .', '- {pattern: x x . ., id: mine}');
  expect(withNamesKept(named, before, inUse)).toBe(named);
});

it('[ST7013] an exercise that is practised keeps its name in a set-up that is turned round', () => {
  const text =
    'title: T\nexercises:\n  - {pattern: x x . ., sticking: R L}\n  - {pattern: x . x ., sticking: R L}\n';
  const [first, second] = keys(text) as [string, string];
  const turned = keys(setSetUp(text, read(text), 'left-handed', { exercises: [first] }));
  expect(turned[0]).toBe(first);
  expect(turned[1]).not.toBe(second);
});
