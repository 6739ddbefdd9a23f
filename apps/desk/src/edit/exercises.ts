/** Changing the list of exercises; their numbers follow from their order. */
import {
  cell,
  type Exercise,
  editLesson,
  exerciseKey,
  type Lesson,
  type Pattern,
  patternsName,
  sectionPath,
  sectionsOf,
  setExercises,
  silentLike,
  type Voice,
  withHands,
  withinItsBars,
} from '@shedbook/core';
import type { NamesInUse } from '@shedbook/routes';
import type { Line } from './strokes.ts';
import type { Unnumbered } from './unnumbered.ts';

export type { Unnumbered };

/**
 * The text of the lesson with other exercises in one of its sections, which `lesson` is; in the first, which is the
 * whole of a lesson that is not divided, when left out.
 */
export function withExercises(
  text: string,
  lesson: Lesson,
  exercises: readonly Unnumbered[],
  section = 0,
): string {
  const path = sectionPath(text, section);
  if (exercises.length === 0) return editLesson(text, [...path, 'exercises'], undefined);
  return setExercises(text, exercises, lesson.comping, section);
}

/** Where an exercise stands. */
export interface ExerciseHome {
  readonly section: Lesson;
  /** Number of the section among all, from 0. */
  readonly index: number;
  /** Number of its place in the section, from 0. */
  readonly at: number;
}

/** Where the exercise at a place (from 0) of the whole lesson stands; the end of the last section where there is none. */
export function homeOf(lesson: Lesson, place: number): ExerciseHome {
  const sections = sectionsOf(lesson);
  const number = lesson.exercises[place]?.number;
  const index = sections.findIndex(({ exercises }) => exercises.some((each) => each.number === number));
  const section = (index < 0 ? sections.at(-1) : sections[index]) as Lesson;
  const at = section.exercises.findIndex((each) => each.number === number);
  return {
    section,
    index: index < 0 ? sections.length - 1 : index,
    at: at < 0 ? section.exercises.length : at,
  };
}

/** An exercise that goes by the same patterns as another one, with its name written: its place tells them apart no more. */
function underItsOwnName(lesson: Lesson, exercise: Exercise | undefined): Exercise | undefined {
  const isSame = (other: Exercise) => exercise && patternsName(other) === patternsName(exercise);
  if (!exercise || lesson.exercises.filter(isSame).length < 2) return exercise;
  return { ...exercise, id: exerciseKey(exercise) };
}

/** The text with the exercise at one place of the lesson moved to another, into another section where that stands in it. */
export function withMoved(text: string, lesson: Lesson, from: number, to: number): string {
  const [here, there] = [homeOf(lesson, from), homeOf(lesson, to)];
  const moved = underItsOwnName(lesson, here.section.exercises[here.at]);
  if (here.index === there.index || !moved) {
    return withExercises(
      text,
      here.section,
      moveExercise(here.section.exercises, here.at, there.at),
      here.index,
    );
  }
  const at = there.at + (to > from ? 1 : 0);
  // First where it goes to: a section that is left empty may be no section any more.
  const added = withExercises(
    text,
    there.section,
    there.section.exercises.toSpliced(at, 0, moved),
    there.index,
  );
  return withExercises(added, here.section, removeExercise(here.section.exercises, here.at), here.index);
}

/** Lasting names that something refers to. */
export type InUse = Pick<NamesInUse, 'exercises'>;

/** An exercise without a name of its own. */
function withoutName<T extends Unnumbered>({ id: _, ...exercise }: T): Omit<T, 'id'> {
  return exercise;
}

/** The exercise as it was changed, under its lasting name where something refers to it. */
function underItsName(before: Exercise, after: Unnumbered, inUse: InUse): Unnumbered {
  const name = exerciseKey(before);
  if (patternsName(after) === name) return withoutName(after);
  return inUse.exercises.includes(name) ? { ...after, id: name } : after;
}

/** The exercises with one changed. Of two that go by one name the first keeps it: the other is its copy. */
export function changeExercise(
  exercises: readonly Exercise[],
  index: number,
  change: Partial<Unnumbered>,
  inUse: InUse,
): readonly Unnumbered[] {
  const isFirst = (each: Exercise) =>
    exercises.findIndex((other) => exerciseKey(other) === exerciseKey(each)) === index;
  return exercises.map((each, i) => {
    if (i !== index) return each;
    // A whole exercise says by leaving it out what it no longer says.
    const changed = 'parts' in change && 'name' in change ? (change as Unnumbered) : { ...each, ...change };
    const after = withinItsBars(changed);
    return isFirst(each) ? underItsName(each, after, inUse) : after;
  });
}

/**
 * The text of the lesson with an exercise that stays when a page is composed, or no longer does; `lesson` is the section
 * (from 0) that it stands in.
 */
export function setKept(text: string, lesson: Lesson, number: number, on: boolean, section = 0): string {
  const exercises = lesson.exercises.map((exercise) => {
    if (exercise.number !== number) return exercise;
    const { keep: _, ...loose } = exercise;
    return on ? { ...loose, keep: true as const } : loose;
  });
  return withExercises(text, lesson, exercises, section);
}

/** The exercise with another line for one of its parts. */
export function withLine(exercise: Exercise, part: number, line: Line): Unnumbered {
  const parts = exercise.parts.map((each, i) =>
    i === part ? withHands({ ...each, pattern: line.pattern }, part === 0 ? null : line.sticking) : each,
  );
  return { ...exercise, parts, sticking: part === 0 ? line.sticking : exercise.sticking };
}

/** The exercise with one more voice, silent at first, divided as its first voice is. */
export function withVoice(exercise: Exercise, voice: Voice): Unnumbered {
  const bars = exercise.parts[0]?.pattern.bars ?? [];
  const silent = bars.map((bar) => bar.map(silentLike));
  return { ...exercise, parts: [...exercise.parts, { voice, pattern: { bars: silent } }] };
}

/** The exercise without one of its voices, and without its hands. */
export function withoutVoice(exercise: Exercise, part: number): Unnumbered {
  if (exercise.parts.length < 2) return exercise;
  const parts = exercise.parts.toSpliced(part, 1);
  return { ...exercise, parts, sticking: part === 0 ? null : exercise.sticking };
}

/** The exercises with one moved to another place. */
export function moveExercise(
  exercises: readonly Exercise[],
  from: number,
  to: number,
): readonly Unnumbered[] {
  const moved = exercises[from];
  if (!moved || from === to) return exercises;
  return exercises.toSpliced(from, 1).toSpliced(to, 0, moved);
}

/** The text of the lesson with its sections' exercises changed, from the last to the first, so that places stay true. */
function inSections(
  text: string,
  lesson: Lesson,
  change: (exercises: readonly Exercise[]) => readonly Unnumbered[] | null,
): string {
  return sectionsOf(lesson)
    .map((section, index) => [section, index] as const)
    .reduceRight((written, [section, index]) => {
      const exercises = change(section.exercises);
      return exercises ? withExercises(written, section, exercises, index) : written;
    }, text);
}

/** The text of the lesson with some exercises, by their numbers, changed in one way; names that are referred to stay. */
export function changeExercises(
  text: string,
  lesson: Lesson,
  numbers: readonly number[],
  change: (exercise: Exercise) => Unnumbered,
  inUse: InUse,
): string {
  return inSections(text, lesson, (exercises) => {
    if (!exercises.some(({ number }) => numbers.includes(number))) return null;
    return exercises.map((each, index) =>
      numbers.includes(each.number)
        ? (changeExercise(exercises, index, change(each), inUse)[index] as Unnumbered)
        : each,
    );
  });
}

/** The text of the lesson without some exercises, by their numbers. */
export function removeExercises(text: string, lesson: Lesson, numbers: readonly number[]): string {
  return inSections(text, lesson, (exercises) => {
    const left = exercises.filter(({ number }) => !numbers.includes(number));
    return left.length < exercises.length ? left : null;
  });
}

/** The exercises without one. */
export function removeExercise(exercises: readonly Exercise[], index: number): readonly Unnumbered[] {
  return exercises.toSpliced(index, 1);
}

/** The exercises with one twice. */
export function duplicateExercise(exercises: readonly Exercise[], index: number): readonly Unnumbered[] {
  const original = exercises[index];
  return original ? exercises.toSpliced(index + 1, 0, withoutName(original) as Exercise) : exercises;
}

/** A silent bar divided as the beats of another are, or by the lesson's smallest vocabulary, or as it stands. */
function silentPattern(lesson: Lesson, like: Pattern | null): Pattern {
  const usual = lesson.vocabulary[0]?.cell ?? cell(lesson.meter.compound ? '...' : '..');
  return { bars: [lesson.meter.beats.map((_, beat) => silentLike(like?.bars[0]?.[beat] ?? usual))] };
}

/** The exercises with a new silent one at a place. */
export function insertExercise(lesson: Lesson, at: number): readonly Unnumbered[] {
  const like = lesson.exercises[at - 1]?.parts[0]?.pattern ?? null;
  const fresh: Unnumbered = {
    name: null,
    parts: [{ voice: lesson.comping, pattern: silentPattern(lesson, like) }],
    sticking: null,
    notes: null,
  };
  return (lesson.exercises as readonly Unnumbered[]).toSpliced(at, 0, fresh);
}
