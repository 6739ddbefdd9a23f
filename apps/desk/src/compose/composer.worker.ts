/** Composing and grading beside the page. */
import {
  arrangeAll,
  barsNear,
  type Composition,
  compose,
  composeDialogue,
  composeGoal,
  composeReview,
  composeTerm,
  composeWeakMove,
  explain,
  gradeExercise,
  type IdeaFact,
  type PassNoteFact,
  REVIEW_COUNT,
  saidReasons,
  type VariationFact,
  variationsOf,
  withComping,
} from '@shedbook/composer';
import { type Exercise, type Fact, type Lesson, type Pattern, parseLesson, sectionsOf } from '@shedbook/core';
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
type TermAsk = Extract<Ask, { ask: 'term' }>;
type MoveAsk = Extract<Ask, { ask: 'move' }>;
type ReviewAsk = Extract<Ask, { ask: 'review' }>;

/** A bar that is made of another, and what it makes of it. */
interface MadeBar {
  readonly pattern: Pattern;
  readonly what: IdeaFact | VariationFact;
}

/** A proposal with nothing in it. */
function nothing(of: Ask['ask']): Proposal {
  return { of, exercises: [], notes: [], blocks: [], term: [] };
}

/** The lesson's seed, and another one each time that it is asked again. */
function seedFor({ compose: { seed } }: Lesson, again: number): number | string {
  return again === 0 ? seed : `${seed} ${again}`;
}

function gradeAll(lesson: Lesson): readonly BarGrade[] {
  return lesson.exercises.map((exercise) => {
    const { grade, reasons } = explain(lesson, exercise);
    return { points: grade.points, reasons: saidReasons(reasons) };
  });
}

function composed(lesson: Lesson, { answering }: PageAsk): Composition {
  return answering ? composeDialogue(lesson, answering) : compose(lesson);
}

function rowsOf({ exercises, report }: Composition): readonly Proposed[] {
  return exercises.map((exercise, i) => {
    const bar = report.bars[i];
    const isKept = bar?.kept ?? false;
    return { exercise, points: bar?.grade.points ?? 0, from: null, isKept, said: [], notes: [] };
  });
}

function proposePage(of: 'page' | 'move', page: Composition): Proposal {
  const { notes, blocks } = page.report;
  return { ...nothing(of), exercises: rowsOf(page), notes, blocks };
}

function proposeMove(lesson: Lesson, { from, to, again }: MoveAsk): Proposal {
  const known = lesson.vocabulary.map((each) => each.cell.text);
  if (!known.includes(from) || !known.includes(to)) return nothing('move');
  return proposePage('move', composeWeakMove(lesson, { from, to }, { seed: seedFor(lesson, again) }));
}

/** A term in one row: blocks count through all of its pages. */
function proposeTerm(lesson: Lesson, { pages, again }: TermAsk): Proposal {
  const term = composeTerm(lesson, { pages, seed: seedFor(lesson, again) });
  let before = 0;
  const blocks = term.flatMap(({ exercises, report }) => {
    const start = before;
    before += exercises.length;
    return report.blocks.map((block) => ({ ...block, first: block.first + start, last: block.last + start }));
  });
  const notes = distinct(term.flatMap(({ report }) => report.notes));
  return { of: 'term', exercises: term.flatMap(rowsOf), notes, blocks, term };
}

/** Notes that several exercises or pages have, each sentence once. */
function distinct<Note extends Fact>(notes: readonly Note[]): readonly Note[] {
  return [...new Map(notes.map((note) => [JSON.stringify(note), note])).values()];
}

function proposePasses(lesson: Lesson, { passes, exercises, seed }: PassesAsk): Proposal {
  const results = lesson.exercises
    .filter(({ number }) => exercises.includes(number))
    .map((from) => ({ from, ...arrangeAll(lesson, from, passes, seed) }));
  const made = results.flatMap(({ from, exercise, said, notes }) =>
    exercise ? [{ exercise, from: from.number, said, notes }] : [],
  );
  const points = (exercise: Exercise) => gradeExercise(lesson, exercise).points;
  return {
    ...nothing('passes'),
    exercises: made.map((each) => ({ ...each, points: points(each.exercise), isKept: false })),
    notes: distinct(
      results.flatMap(({ exercise, notes }): readonly PassNoteFact[] => (exercise ? [] : notes)),
    ),
  };
}

function proposed(lesson: Lesson, exercise: Exercise, made: Partial<Proposed> = {}): Proposed {
  const { points } = gradeExercise(lesson, exercise);
  return { exercise, points, from: null, isKept: false, said: [], notes: [], ...made };
}

/** Exercises of several lessons mixed, each named after where it is from; sections in another meter are left out. */
function proposeReview(lesson: Lesson, { lessons, again }: ReviewAsk): Proposal {
  const sheets = lessons.flatMap((text) => {
    const { lesson: read } = parseLesson(text, 'lesson');
    return read ? sectionsOf(read) : [];
  });
  const options = { count: REVIEW_COUNT, seed: seedFor(lesson, again) };
  const reviewed = composeReview(lesson, sheets, options);
  return { ...nothing('review'), exercises: reviewed.map(({ exercise }) => proposed(lesson, exercise)) };
}

/** Bars of the comping voice that are made of an exercise, each with what it makes of it. */
function madeOf(lesson: Lesson, from: Exercise, bars: readonly MadeBar[]): readonly Proposed[] {
  return bars.map(({ pattern, what }) => {
    const parts = withComping(lesson, from, pattern);
    const exercise = { number: from.number, name: null, parts, sticking: null, notes: null };
    return proposed(lesson, exercise, { from: from.number, said: [what] });
  });
}

function variationsFor(lesson: Lesson, { parts }: Exercise): readonly MadeBar[] {
  const part = parts.find((each) => each.voice === lesson.comping);
  return part ? variationsOf(lesson, part.pattern) : [];
}

/** Bars near an exercise, its variations, or the steps that lead to it. */
function proposeFrom(lesson: Lesson, ask: FromAsk): Proposal {
  const { exercise: number } = ask;
  const from = lesson.exercises.find((each) => each.number === number);
  if (!from) return nothing(ask.ask);
  if (ask.ask === 'goal') {
    const has = lesson.exercises.filter((each) => ask.has.includes(each.number) && each !== from);
    const steps = composeGoal(lesson, from, has).exercises.slice(0, -1);
    return { ...nothing(ask.ask), exercises: steps.map((each) => proposed(lesson, each)) };
  }
  const bars = ask.ask === 'near' ? barsNear(lesson, from, ask.direction) : variationsFor(lesson, from);
  return { ...nothing(ask.ask), exercises: madeOf(lesson, from, bars) };
}

function proposalFor(lesson: Lesson, ask: Ask): Proposal {
  switch (ask.ask) {
    case 'page':
      return proposePage('page', composed(lesson, ask));
    case 'term':
      return proposeTerm(lesson, ask);
    case 'move':
      return proposeMove(lesson, ask);
    case 'review':
      return proposeReview(lesson, ask);
    case 'passes':
      return proposePasses(lesson, ask);
    default:
      return proposeFrom(lesson, ask);
  }
}

function answer({ id, text, section, ask }: ComposeOrder): ComposeAnswer {
  const { lesson: whole } = parseLesson(text, 'lesson');
  const lesson = whole && sectionsOf(whole)[section];
  if (!lesson) return { id, grades: [], proposal: null };
  const proposal = ask && proposalFor(lesson, ask);
  return { id, grades: gradeAll(lesson), proposal };
}

self.onmessage = ({ data }: MessageEvent<ComposeOrder>) => self.postMessage(answer(data));
