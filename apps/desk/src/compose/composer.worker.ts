/** Composing and grading beside the page. */
import {
  arrangeAll,
  type Composition,
  compose,
  composeDialogue,
  explain,
  gradeExercise,
  type PassNoteFact,
} from '@shedbook/composer';
import { type Exercise, type Lesson, parseLesson, sectionOf } from '@shedbook/core';
import type { Ask, BarGrade, ComposeAnswer, ComposeOrder, Proposal } from './composer-messages.ts';

type PageAsk = Extract<Ask, { ask: 'page' }>;
type PassesAsk = Extract<Ask, { ask: 'passes' }>;

function gradeAll(lesson: Lesson): readonly BarGrade[] {
  return lesson.exercises.map((exercise) => {
    const { grade, reasons } = explain(lesson, exercise);
    return { points: grade.points, reasons };
  });
}

function composed(lesson: Lesson, { answering }: PageAsk): Composition {
  return answering ? composeDialogue(lesson, answering) : compose(lesson);
}

function proposePage(lesson: Lesson, ask: PageAsk): Proposal {
  const { exercises, report } = composed(lesson, ask);
  const proposed = exercises.map((exercise, i) => {
    const bar = report.bars[i];
    const isKept = bar?.kept ?? false;
    return { exercise, points: bar?.grade.points ?? 0, from: null, isKept, said: [], notes: [] };
  });
  return { of: 'page', exercises: proposed, notes: report.notes, blocks: report.blocks };
}

/** Notes of exercises that a pass makes nothing of, each sentence once. */
function distinct(notes: readonly PassNoteFact[]): readonly PassNoteFact[] {
  return [...new Map(notes.map((note) => [JSON.stringify(note), note])).values()];
}

function proposePasses(lesson: Lesson, { pass, exercises, seed }: PassesAsk): Proposal {
  const results = lesson.exercises
    .filter(({ number }) => exercises.includes(number))
    .map((from) => ({ from, ...arrangeAll(lesson, from, [pass], seed) }));
  const made = results.flatMap(({ from, exercise, said, notes }) =>
    exercise ? [{ exercise, from: from.number, said, notes }] : [],
  );
  const points = (exercise: Exercise) => gradeExercise(lesson, exercise).points;
  return {
    of: 'passes',
    exercises: made.map((each) => ({ ...each, points: points(each.exercise), isKept: false })),
    notes: distinct(results.flatMap(({ exercise, notes }) => (exercise ? [] : notes))),
    blocks: [],
  };
}

function answer({ id, text, ask }: ComposeOrder): ComposeAnswer {
  const { lesson: whole } = parseLesson(text, 'lesson');
  // The view composes for the first section of a divided lesson; the command line for any.
  const lesson = whole && sectionOf(whole, null);
  if (!lesson) return { id, grades: [], proposal: null };
  const proposal = ask && (ask.ask === 'page' ? proposePage(lesson, ask) : proposePasses(lesson, ask));
  return { id, grades: gradeAll(lesson), proposal };
}

self.onmessage = ({ data }: MessageEvent<ComposeOrder>) => self.postMessage(answer(data));
