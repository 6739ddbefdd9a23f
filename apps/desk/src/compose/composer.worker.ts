/** Composing and grading beside the page. */
import {
  arrangeAll,
  barsNear,
  type Composition,
  compose,
  composeDialogue,
  composeGoal,
  explain,
  gradeExercise,
  type PassNoteFact,
} from '@shedbook/composer';
import { type Exercise, type Lesson, parseLesson, sectionOf } from '@shedbook/core';
import type {
  Ask,
  BarGrade,
  ComposeAnswer,
  ComposeOrder,
  FromAsk,
  Proposal,
  Proposed,
} from './composer-messages.ts';

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

function proposed(lesson: Lesson, exercise: Exercise, made: Partial<Proposed> = {}): Proposed {
  const { points } = gradeExercise(lesson, exercise);
  return { exercise, points, from: null, isKept: false, said: [], notes: [], ...made };
}

/** Bars near an exercise, each with what it makes of it, or the steps that lead to it. */
function proposeFrom(lesson: Lesson, ask: FromAsk): Proposal {
  const { exercise: number } = ask;
  const from = lesson.exercises.find((each) => each.number === number);
  if (!from) return { of: ask.ask, exercises: [], notes: [], blocks: [] };
  if (ask.ask === 'goal') {
    const has = ask.hasBefore ? lesson.exercises.filter((each) => each.number < number) : [];
    const steps = composeGoal(lesson, from, has).exercises.slice(0, -1);
    return { of: ask.ask, exercises: steps.map((each) => proposed(lesson, each)), notes: [], blocks: [] };
  }
  const near = barsNear(lesson, from, ask.direction).map(({ pattern, what }) => {
    const parts = [{ voice: lesson.comping, pattern }];
    const exercise = { number, name: null, parts, sticking: null, notes: null };
    return proposed(lesson, exercise, { from: number, said: [what] });
  });
  return { of: ask.ask, exercises: near, notes: [], blocks: [] };
}

function proposalFor(lesson: Lesson, ask: Ask): Proposal {
  if (ask.ask === 'page') return proposePage(lesson, ask);
  return ask.ask === 'passes' ? proposePasses(lesson, ask) : proposeFrom(lesson, ask);
}

function answer({ id, text, ask }: ComposeOrder): ComposeAnswer {
  const { lesson: whole } = parseLesson(text, 'lesson');
  // The view composes for the first section of a divided lesson; the command line for any.
  const lesson = whole && sectionOf(whole, null);
  if (!lesson) return { id, grades: [], proposal: null };
  const proposal = ask && proposalFor(lesson, ask);
  return { id, grades: gradeAll(lesson), proposal };
}

self.onmessage = ({ data }: MessageEvent<ComposeOrder>) => self.postMessage(answer(data));
