import { exerciseKey, parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { swing } from '../../../../internal/testing/loops.ts';
import { entryOf, keyOf, logOf, loops, NOW, TODAY } from '../../test/students.ts';
import { addEntry } from '../log/merge.ts';
import { planPractice } from '../plan/plan.ts';
import { summariseStudent } from '../teacher/summary.ts';
import { standExercises } from './exercises.ts';
import { identityOf, originOf, type ShelfLesson } from './identity.ts';
import { exercisesOf, findExercise } from './shelf.ts';

const GROOVE = `tempo: {start: 72, goal: 120, step: 8}
feel: triplet
groove:
  ride: x x.x x x.x
  hihat-foot: {pattern: . x . x, level: -8}
  bass: {pattern: x x x x, level: feathered}
`;

function lessonOf(id: string, text: string): ShelfLesson {
  const { lesson } = parseLesson(text, id);
  if (!lesson) throw new Error(text);
  return { id, lesson };
}

/** What Bram was given of the swing sheet: two of its bars, and one of his own. */
const copy = lessonOf(
  'bram',
  `title: For Bram\nfrom: first-swing\n${GROOVE}exercises: [x.. ... x.. ..., ..x ... ..x ..., x x x x]\n`,
);

/** The same two bars, written down again in another lesson. */
const again = lessonOf(
  'again',
  `title: Warm up\n${GROOVE}exercises: [..x ... ..x ..., x.. ... x.. ..., x x . .]\n`,
);

const played = logOf({ number: 2, daysAgo: 1, loops: loops(12, 120) });

it('[CH46] an exercise and its copies are one: on the shelf, in a plan, in what is suggested', () => {
  for (const shelf of [
    [swing, copy],
    [copy, swing],
    [swing, again, copy],
  ]) {
    const numbers = exercisesOf(shelf).map(({ id, exercise }) => `${id} ${exercise.number}`);
    expect(new Set(numbers).size).toBe(numbers.length);
    expect(numbers).toEqual(expect.arrayContaining([1, 2, 3, 4, 5, 6].map((each) => `${swing.id} ${each}`)));
    expect(numbers).toContain('bram 3');
    expect(numbers).not.toContain('bram 1');
    expect(numbers).not.toContain('again 1');
    const standing = standExercises(shelf, played, TODAY).filter(({ evidence }) => evidence !== null);
    expect(standing.map(({ id, exercise }) => `${id} ${exercise.number}`)).toEqual([`${swing.id} 2`]);
    const plan = planPractice({ shelf, log: played, now: NOW, minutes: 60, assignments: [], seed: 1 });
    const set = plan.items.filter(({ number }) => number !== null).map(({ lesson }) => lesson);
    expect(new Set(set)).not.toContain('again 1');
  }
});

it('[CH46] what is practised in a copy counts for what it comes from, and the other way round', () => {
  const origin = originOf(copy, copy.lesson.exercises[0] ?? null);
  expect(origin).toEqual({ lesson: 'first-swing', exercise: keyOf(swing, 2) });
  const entry = { ...entryOf({ number: 2, daysAgo: 1, loops: loops(12, 120) }), ...origin };
  const log = addEntry(logOf(), entry as typeof entry & { exercise: string });
  for (const shelf of [[swing], [copy], [swing, copy]]) {
    const known = standExercises(shelf, log, TODAY).filter(({ evidence }) => evidence !== null);
    expect(known.map(({ exercise }) => exercise.parts)).toEqual([swing.lesson.exercises[1]?.parts]);
  }
});

it('[CH46] what is set in a copy is not suggested again in the original', () => {
  const shelf = [swing, copy];
  const assignments = [
    ...swing.lesson.exercises.slice(2).map((each) => ({ lesson: swing.id, exercise: exerciseKey(each) })),
    ...copy.lesson.exercises.map((each) => ({ lesson: copy.id, exercise: exerciseKey(each) })),
  ].map((each) => ({ ...each, pinned: false, note: null }));
  expect(summariseStudent({ name: 'Bram', shelf, log: logOf(), assignments }, NOW).next).toBeNull();
});

it('[CH46] a lesson keeps its practice when it is renamed, an exercise when it is edited and moved under its name', () => {
  const before = lessonOf('sheet', `title: Swing\n${GROOVE}exercises: [x . . ., . x . .]\n`);
  const [first] = exercisesOf([before]);
  // What was practised is named by a pack, which goes by the title, and by the patterns.
  const log = addEntry(logOf(), {
    ...entryOf({ number: 1, daysAgo: 1, loops: loops(12, 120) }),
    lesson: 'swing',
    exercise: first?.key ?? '',
  });
  const after = lessonOf(
    'sheet',
    `title: Swing for the spring\nid: swing\n${GROOVE}exercises: [. x . ., {pattern: x . . x, id: snare x . . .}]\n`,
  );
  const found = findExercise([after], 'swing', 'snare x . . .');
  expect(found?.exercise.number).toBe(2);
  const known = standExercises([after], log, TODAY).filter(({ evidence }) => evidence !== null);
  expect(known.map(({ exercise }) => exercise.number)).toEqual([2]);
});

it('[CH46] a name that is given later finds what was practised before it', () => {
  const named = lessonOf('swing', `title: Swing\n${GROOVE}exercises: [{pattern: x . . ., id: opener}]\n`);
  const { itemOf } = identityOf([named]);
  expect(itemOf('swing', 'snare x . . .')).toBe(itemOf('swing', 'opener'));
  expect(itemOf('swing', 'snare . . . x')).not.toBe(itemOf('swing', 'opener'));
  expect(findExercise([named], 'another', 'snare x . . .')).toBeUndefined();
});

it('[CH46] the same bar over another groove, or at another feel, is another exercise', () => {
  const even = lessonOf(
    'even',
    `title: Even\n${GROOVE.replace('feel: triplet\n', '')}exercises: [x . . .]\n`,
  );
  const swung = lessonOf('swung', `title: Swung\n${GROOVE}exercises: [x . . .]\n`);
  expect(exercisesOf([even, swung])).toHaveLength(2);
  const divided = lessonOf(
    'divided',
    'title: T\nsections: [{exercises: [x . . .]}, {groove: {ride: x x x x}, exercises: [x . . .]}]\n',
  );
  expect(exercisesOf([divided]).map(({ exercise }) => exercise.number)).toEqual([1, 2]);
});
