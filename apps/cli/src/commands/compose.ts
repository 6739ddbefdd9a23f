/** `shedbook compose`: writes exercises from the lesson's vocabulary into the lesson, or into another file. */
import { isDeepStrictEqual } from 'node:util';
import {
  answeringLevel,
  answeringVoices,
  barsNear,
  type ComposeReport,
  type Composition,
  compose,
  composeDialogue,
  composeGoal,
  composeReview,
  composeTerm,
  composeWeakMove,
  DIRECTIONS,
  type Direction,
  exerciseText,
  gradeExercise,
  keptNumbers,
  NoSuchCellError,
  REVIEW_COUNT,
  termFacts,
  variationsOf,
  withComping,
  withHeadings,
  withTerm,
} from '@shedbook/composer';
import {
  type Exercise,
  exerciseLabel,
  type Lesson,
  type PhraseForm,
  sectionsOf,
  setExerciseLevel,
  setExercises,
  type Voice,
} from '@shedbook/core';
import { InputError } from '@shedbook/host';
import { type CliWords, type Language, type Sayable, say } from '@shedbook/words';
import { readLessonFile, requireExercise, requireLesson, requireSection } from '../lesson-file.ts';
import { readChoice, refuseOption } from '../options.ts';
import type { Speaker } from '../terminal.ts';
import { replaceTextFile, writeTextFile } from '../text-file.ts';

/** What the command line asks for. */
export interface ComposeRequest {
  readonly lesson: string;
  /** Number of the section, from 1; the lesson's only one when left out. */
  readonly section?: number;
  readonly count?: number;
  readonly seed?: string;
  readonly bars?: number;
  /** Numbers of exercises that stay in place. */
  readonly keep?: readonly number[];
  /** How far figures of the trade are quoted, 0 to 1. */
  readonly idiom?: number;
  /** Whether the first exercise of each block is named after its figure. */
  readonly headings?: boolean;
  /** The voice that answers the comping voice. */
  readonly with?: string;
  /** What holds the bars of an exercise together. */
  readonly phrase?: PhraseForm;
  /** Calls and answers: short for that phrase. */
  readonly questions?: boolean;
  /** A page for one move between cells, e.g. `..x ...`. */
  readonly weak?: string;
  /** Lesson files whose exercises are mixed. */
  readonly review?: readonly string[];
  /** Number of an exercise whose variations are proposed. */
  readonly variations?: number;
  /** Number of an exercise that easier bars are proposed to. */
  readonly easier?: number;
  /** Number of an exercise that harder bars are proposed to. */
  readonly harder?: number;
  /** Number of an exercise that bars like it are proposed to. */
  readonly like?: number;
  /** Number of an exercise that a page is proposed to lead to. */
  readonly goal?: number;
  /** Whether what is proposed round an exercise is put beside it. */
  readonly put?: boolean;
  /** Number of pages of a term. */
  readonly term?: number;
  /** Numbers of the exercises that the student has. */
  readonly has?: readonly number[];
  readonly out?: string;
  readonly explain?: boolean;
  readonly json?: boolean;
}

/** What is proposed beside an exercise of a section. */
interface Proposal {
  readonly lesson: Lesson;
  readonly page: Composed;
  /** Text of the lesson's file. */
  readonly text: string;
  /** Which section, from 0. */
  readonly index: number;
  /** Number of the exercise. */
  readonly number: number;
}

/** What was composed: exercises, and a report where the page was composed from the vocabulary. */
interface Composed {
  readonly exercises: readonly Omit<Exercise, 'number'>[];
  readonly report: ComposeReport | null;
  /** Where the page has no report: its bars, and what they are or where they come from. */
  readonly bars?: readonly PlainBar[];
  /** What else there is to say of it. */
  readonly remark?: string;
  /** The voice that answers, where one does. */
  readonly answering?: Voice;
}

/** A bar of a review or of variations. */
interface PlainBar {
  readonly number: number;
  readonly text: string;
  readonly points: number;
  /** What it is, or where it comes from; null for the bar itself. */
  readonly what: string | null;
}

const KINDS = [
  'with',
  'phrase',
  'questions',
  'weak',
  'review',
  'variations',
  ...DIRECTIONS,
  'goal',
  'term',
] as const;

/** Kinds that start from one exercise: what they give is proposed beside it. */
const BESIDE = ['variations', ...DIRECTIONS, 'goal'] as const;

/** The bar itself and four near it. */
const DEFAULT_NEAR_COUNT = 5;

function coverageLine({ coverage }: ComposeReport, said: CliWords['compose']): string {
  const { possible, met, missed, completeAt } = coverage;
  if (missed.length === 0) {
    return said.allMet({ possible, exercise: completeAt ?? 0 });
  }
  const missing = missed.map(({ from, to }) => `${from} → ${to}`).join(', ');
  return said.someMet({ met, possible, missing });
}

function difficultyLine({ difficulty }: ComposeReport, said: CliWords['compose']): string {
  const { easiest, hardest, largestStep: step } = difficulty;
  return said.difficulty({ easiest, hardest, step });
}

/** The bars of a page under the headings of their blocks, each with its points and what it makes of the theme. */
function barLines(report: ComposeReport, language: Language<Sayable>): readonly string[] {
  const headings = new Map(report.blocks.map((block) => [block.first, block.heading]));
  return report.bars.flatMap((bar) => {
    const heading = headings.get(bar.number);
    const what = bar.idea && say(bar.idea, language);
    const line = barLine({ number: bar.number, text: bar.text, points: bar.grade.points, what });
    return heading ? [say(heading, language), line] : [line];
  });
}

function barLine({ number, text, points, what }: PlainBar): string {
  return `${exerciseLabel(number).padStart(3)}  ${text}  ${points.toFixed(2)}${what === null ? '' : `  ${what}`}`;
}

/** The bars of a page without a report. */
function plainLines(bars: readonly PlainBar[]): readonly string[] {
  return bars.map(barLine);
}

function readSeed(seed: string | undefined, lesson: Lesson): number | string {
  if (seed === undefined) return lesson.compose.seed;
  return /^\d+$/.test(seed) ? Number(seed) : seed;
}

function optionsOf(request: ComposeRequest, seed: number | string) {
  const { count, bars, keep, idiom, phrase, questions } = request;
  const asked = questions ? 'call-and-answer' : phrase;
  return {
    seed,
    ...(count === undefined ? {} : { count }),
    ...(bars === undefined ? {} : { bars }),
    ...(keep === undefined ? {} : { keep }),
    ...(idiom === undefined ? {} : { idiom }),
    ...(asked === undefined ? {} : { phrase: asked }),
  };
}

function weakMove(lesson: Lesson, text: string, options: ReturnType<typeof optionsOf>): Composition {
  const [from, to, ...rest] = text.trim().split(/\s+/);
  if (!from || !to || rest.length > 0) {
    refuseOption('weak', text, ({ cells }) => cells);
  }
  try {
    return composeWeakMove(lesson, { from, to }, options);
  } catch (error) {
    if (!(error instanceof NoSuchCellError)) throw error;
    const { cell, cells } = error;
    throw new InputError(({ words }) => words.compose.weak({ cell, cells: cells.join(', ') }));
  }
}

async function review(lesson: Lesson, request: ComposeRequest, seed: number | string, terminal: Speaker) {
  const paths = request.review ?? [];
  const sheets = await Promise.all(
    paths.map(async (path) => sectionsOf(requireLesson(await readLessonFile(path), terminal))),
  );
  const fits = (section: Lesson) => section.meter.text === lesson.meter.text;
  const other = sheets.findIndex((sections) => !sections.some(fits));
  if (other >= 0) {
    const file = paths[other] ?? '';
    const found = sheets[other]?.[0]?.meter.text ?? '';
    throw new InputError(({ words }) =>
      words.compose.otherMeter({ file, found, expected: lesson.meter.text }),
    );
  }
  const count = request.count ?? REVIEW_COUNT;
  const reviewed = composeReview(lesson, sheets.flat().filter(fits), { count, seed });
  return withBars(
    lesson,
    reviewed.map(({ exercise }) => ({ exercise, what: exercise.name })),
  );
}

/** Exercises and what is said of them. */
function withBars(
  lesson: Lesson,
  of: readonly { readonly exercise: Omit<Exercise, 'number'>; readonly what: string | null }[],
): Composed {
  const exercises = of.map(({ exercise }) => exercise);
  const bars = of.map(({ exercise, what }, i): PlainBar => {
    const number = i + 1;
    const { points } = gradeExercise(lesson, { ...exercise, number });
    return { number, text: exerciseText(lesson, exercise), points, what };
  });
  return { exercises, report: null, bars };
}

function variations(lesson: Lesson, number: number, count: number | undefined, terminal: Speaker): Composed {
  const exercise = requireExercise(lesson, number, '--variations');
  const part = exercise.parts.find((each) => each.voice === lesson.comping);
  if (!part)
    throw new InputError(({ words }) => words.compose.noComping({ exercise: number, voice: lesson.comping }));
  const others = variationsOf(lesson, part.pattern).slice(0, count === undefined ? undefined : count - 1);
  const plain = { sticking: null, notes: null };
  const { language } = terminal.catalogue;
  return withBars(lesson, [
    { exercise, what: null },
    ...others.map(({ what, pattern }) => {
      const name = say(what, language);
      return { exercise: { ...plain, name, parts: withComping(lesson, exercise, pattern) }, what: name };
    }),
  ]);
}

/** A bar, and bars a step from it. */
function near(lesson: Lesson, direction: Direction, request: ComposeRequest, terminal: Speaker): Composed {
  const exercise = requireExercise(lesson, request[direction] ?? 0, `--${direction}`);
  const most = (request.count ?? DEFAULT_NEAR_COUNT) - 1;
  const plain = { sticking: null, notes: null };
  return withBars(lesson, [
    { exercise, what: null },
    ...barsNear(lesson, exercise, direction, most).map(({ pattern, what }) => {
      const name = say(what, terminal.catalogue.language);
      return { exercise: { ...plain, name, parts: withComping(lesson, exercise, pattern) }, what: name };
    }),
  ]);
}

/** A page that leads to an exercise of the lesson. */
function leading(lesson: Lesson, number: number, request: ComposeRequest, terminal: Speaker): Composed {
  const goal = requireExercise(lesson, number, '--goal');
  const mastered = (request.has ?? []).map((each) => requireExercise(lesson, each, '--has'));
  const { exercises, skills, mastered: known, news } = composeGoal(lesson, goal, mastered);
  const said = terminal.catalogue.words.compose;
  const page = withBars(
    lesson,
    exercises.map((exercise, i) => ({ exercise, what: said.fresh({ count: news[i] ?? 0 }) })),
  );
  return { ...page, remark: said.goal({ skills, known }) };
}

function refuseTwoKinds(request: ComposeRequest): void {
  const [first, second] = KINDS.filter((kind) => request[kind] !== undefined && request[kind] !== false);
  if (first && second) throw new InputError(({ words }) => words.compose.twoKinds({ first, second }));
}

/**
 * Writes what was composed into the lesson, or into another file. What stood there is kept beside it where an exercise
 * would be lost otherwise.
 */
function writePage(
  { lesson, out }: ComposeRequest,
  before: readonly Exercise[],
  after: readonly Omit<Exercise, 'number'>[],
  text: string,
  terminal: Speaker,
): Promise<void> {
  const isLost = before.some((exercise) => !isAmong(exercise, after));
  if (out !== undefined || isLost) return replaceTextFile(out ?? lesson, text, terminal);
  return writeTextFile(lesson, text);
}

/** Whether an exercise is among others, whatever its number. */
function isAmong(exercise: Omit<Exercise, 'number'>, others: readonly Omit<Exercise, 'number'>[]): boolean {
  return others.some((each) => isDeepStrictEqual({ ...each, number: 0 }, { ...exercise, number: 0 }));
}

/** The exercises that stay where what is written into their lesson is no page that is composed round them. */
function keptOf(lesson: Lesson, { keep, out }: ComposeRequest): readonly Exercise[] {
  const numbers = out === undefined ? keptNumbers(lesson, keep) : [];
  return lesson.exercises.filter(({ number }) => numbers.includes(number));
}

/** Bars without a report, behind the exercises that stay. */
function behindKept(lesson: Lesson, page: Composed, request: ComposeRequest): Composed {
  const kept = keptOf(lesson, request).filter((exercise) => !isAmong(exercise, page.exercises));
  if (page.report || kept.length === 0) return page;
  const made = page.exercises.map((exercise, i) => ({ exercise, what: page.bars?.[i]?.what ?? null }));
  return { ...page, ...withBars(lesson, [...kept.map((exercise) => ({ exercise, what: null })), ...made]) };
}

/** Number of the exercise beside which bars are proposed, and null where a page of its own is composed. */
function besideOf(request: ComposeRequest): number | null {
  const kind = BESIDE.find((each) => request[each] !== undefined);
  if (request.put && kind === undefined) {
    const kinds = BESIDE.map((each) => `--${each}`).join(', ');
    throw new InputError(({ words }) => words.compose.putAlone({ kinds }));
  }
  const isBeside = kind !== undefined && (request.out === undefined || request.put === true);
  return isBeside ? (request[kind] ?? null) : null;
}

/** What is proposed beside an exercise: its bars, numbered as they stand once put there, and the section with them. */
function proposalOf(lesson: Lesson, page: Composed, number: number, isBefore: boolean) {
  const known = page.exercises.map((exercise) => isAmong(exercise, lesson.exercises));
  const fresh = page.exercises.filter((_, i) => !known[i]);
  const place = lesson.exercises.findIndex((each) => each.number === number) + (isBefore ? 0 : 1);
  const bars = (page.bars ?? []).map((bar, i) => ({ ...bar, number: number + i }));
  const own: readonly Omit<Exercise, 'number'>[] = lesson.exercises;
  return { bars, fresh, exercises: own.toSpliced(place, 0, ...fresh) };
}

/** Prints what is proposed beside an exercise and, where asked to, puts it there; nothing that was written goes. @returns the exit status. */
async function propose(
  { lesson, page, text, index, number }: Proposal,
  request: ComposeRequest,
  terminal: Speaker,
): Promise<number> {
  const { words } = terminal.catalogue;
  const isBefore = request.goal !== undefined;
  const { bars, fresh, exercises } = proposalOf(lesson, page, number, isBefore);
  const { out = request.lesson, put = false } = request;
  if (put && fresh.length > 0) {
    const written = setExercises(text, exercises, lesson.comping, index);
    await writePage(request, lesson.exercises, exercises, written, terminal);
  }
  const count = fresh.length;
  if (request.json) {
    const file = put && count > 0 ? out : null;
    terminal.say(JSON.stringify({ file, count, report: null, bars }, null, 2));
    return 0;
  }
  for (const line of plainLines(bars)) terminal.say(line);
  if (page.remark !== undefined) terminal.say(page.remark);
  if (count === 0) terminal.say(words.compose.noneBeside({ exercise: number }));
  else if (put) terminal.say(words.compose.written({ count, file: out }));
  else terminal.say(words.compose.proposed[isBefore ? 'before' : 'behind']({ exercise: number }));
  return 0;
}

/** Composes a term and writes its pages as sections. @returns the exit status. */
async function writeTerm(
  lesson: Lesson,
  text: string,
  pages: number,
  request: ComposeRequest,
  terminal: Speaker,
): Promise<number> {
  const { out = request.lesson } = request;
  const { words, language } = terminal.catalogue;
  if (lesson.sections.length > 0) {
    throw new InputError((to) => to.words.compose.termDivided({ file: request.lesson }));
  }
  const options = { ...optionsOf(request, readSeed(request.seed, lesson)), pages };
  const term = composeTerm(lesson, options);
  const [first] = term;
  if (!first) throw nothingComposed(request.lesson, null);
  const named = {
    ...lesson,
    compose: { ...lesson.compose, headings: request.headings ?? lesson.compose.headings },
  };
  const kept = keptOf(lesson, request);
  const start = kept.length > 0 ? setExercises(text, kept, lesson.comping) : text;
  const place = kept.length > 0 ? 'behind' : 'instead';
  const pagesText = withTerm(start, named, term, (fact) => say(fact, language), place);
  await writePage(request, lesson.exercises, kept, pagesText, terminal);
  if (request.json) {
    terminal.say(JSON.stringify({ file: out, pages: term }, null, 2));
    return 0;
  }
  const count = term.reduce((sum, { exercises }) => sum + exercises.length, 0);
  terminal.say(words.compose.written({ count, file: out }));
  for (const page of term) {
    const told = [{ fact: 'term-page', page: page.page } as const, ...termFacts(page)];
    terminal.say(told.map((fact) => say(fact, language)).join('  '));
    if (request.explain) for (const line of barLines(page.report, language)) terminal.say(line);
    for (const note of page.report.notes) terminal.say(say(note, language));
  }
  return 0;
}

async function composed(lesson: Lesson, request: ComposeRequest, terminal: Speaker): Promise<Composed> {
  const seed = readSeed(request.seed, lesson);
  if (request.review) return review(lesson, request, seed, terminal);
  if (request.variations !== undefined) {
    return variations(lesson, request.variations, request.count, terminal);
  }
  const direction = DIRECTIONS.find((each) => request[each] !== undefined);
  if (direction) return near(lesson, direction, request, terminal);
  if (request.goal !== undefined) return leading(lesson, request.goal, request, terminal);
  const page = composedPage(lesson, request, optionsOf(request, seed));
  if (!(request.headings ?? lesson.compose.headings)) return page;
  const { language } = terminal.catalogue;
  const exercises = withHeadings(page.exercises, page.report.blocks, (theme) => say(theme, language));
  return { ...page, exercises };
}

function composedPage(
  lesson: Lesson,
  request: ComposeRequest,
  options: ReturnType<typeof optionsOf>,
): Composition & Pick<Composed, 'answering'> {
  if (request.with !== undefined) {
    const answering = readChoice('with', request.with, answeringVoices(lesson));
    return { ...composeDialogue(lesson, answering, options), answering };
  }
  return request.weak === undefined ? compose(lesson, options) : weakMove(lesson, request.weak, options);
}

function nothingComposed(path: string, report: ComposeReport | null): InputError {
  const notes = report?.notes ?? [];
  return new InputError(({ words: { compose: said }, language }) => {
    const why = notes.length === 0 ? said.noBar : notes.map((note) => say(note, language)).join(' ');
    return said.nothing({ file: path, why });
  });
}

/**
 * Composes and writes. @returns the exit status.
 * @throws InputError when the lesson has an error, the request makes no sense, or no bar is allowed.
 */
export async function composeCommand(request: ComposeRequest, terminal: Speaker): Promise<number> {
  refuseTwoKinds(request);
  const file = await readLessonFile(request.lesson);
  const whole = requireLesson(file, terminal);
  if (request.term !== undefined) return writeTerm(whole, file.text, request.term, request, terminal);
  const { section: lesson, index } = requireSection(whole, request.section);
  const { out = request.lesson } = request;
  const number = besideOf(request);
  const page = await composed(lesson, request, terminal);
  if (number !== null) return propose({ lesson, page, text: file.text, index, number }, request, terminal);
  if (page.exercises.length === 0) throw nothingComposed(request.lesson, page.report);
  const { exercises, report, bars, answering, remark } = behindKept(lesson, page, request);
  const levelDb = answering ? answeringLevel(lesson, answering) : null;
  const text = setExercises(file.text, exercises, lesson.comping, index);
  const levelled = answering && levelDb !== null ? setExerciseLevel(text, answering, levelDb, index) : text;
  await writePage(request, lesson.exercises, exercises, levelled, terminal);
  if (request.json) {
    terminal.say(JSON.stringify({ file: out, count: exercises.length, report, bars }, null, 2));
    return 0;
  }
  if (request.explain) {
    const lines = report ? barLines(report, terminal.catalogue.language) : plainLines(bars ?? []);
    for (const line of lines) terminal.say(line);
  }
  const { words, language } = terminal.catalogue;
  terminal.say(words.compose.written({ count: exercises.length, file: out }));
  if (answering && levelDb !== null) terminal.say(words.compose.louder({ voice: answering, levelDb }));
  if (remark !== undefined) terminal.say(remark);
  if (report) {
    const notes = report.notes.map((note) => say(note, language));
    // a page for one move has that move in every bar: nothing to tell
    const coverage = request.weak === undefined ? [coverageLine(report, words.compose)] : [];
    for (const line of [...coverage, difficultyLine(report, words.compose), ...notes]) terminal.say(line);
  }
  return 0;
}
