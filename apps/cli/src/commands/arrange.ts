/** `shedbook arrange`: second passes over exercises that are there; what is written stays as it is. */
import {
  ACCENT_RULES,
  type ArrangedTogether,
  arrangeAll,
  exerciseText,
  gradeExercise,
  HANDS_RULES,
  KIT_RULES,
  type Pass,
  SHARING_RULES,
} from '@shedbook/composer';
import { type Exercise, exerciseLabel, type Lesson, setExercises, VOICES } from '@shedbook/core';
import { InputError } from '@shedbook/host';
import { type CliCatalogue, say } from '@shedbook/words';
import { readLessonFile, requireLesson } from '../lesson-file.ts';
import { readChoice, readExerciseList, refused } from '../options.ts';
import type { Speaker } from '../terminal.ts';
import { replaceTextFile, writeTextFile } from '../text-file.ts';

/** What the command line asks for. */
export interface ArrangeRequest {
  readonly lesson: string;
  /** Names of rules. */
  readonly share?: string;
  readonly lower?: string;
  readonly kit?: string;
  readonly accents?: string;
  readonly hands?: string;
  /** Beats of a fill. */
  readonly fill?: number;
  /** Bars of the phrase that a fill ends. */
  readonly phrase?: number;
  /** Numbers of the exercises, such as `1,3-5`; all when left out. */
  readonly exercise?: string;
  readonly seed?: string;
  readonly out?: string;
  readonly explain?: boolean;
  readonly json?: boolean;
}

const DEFAULT_PHRASE_BARS = 4;

/** The passes that are asked for, in the order in which they are made. */
function passesOf(request: ArrangeRequest): readonly Pass[] {
  const { share, kit, accents, hands, fill } = request;
  const lower = readChoice('lower', request.lower ?? 'bass', VOICES);
  const bars = request.phrase ?? DEFAULT_PHRASE_BARS;
  return [
    ...(share === undefined
      ? []
      : [{ pass: 'share', rule: readChoice('share', share, SHARING_RULES), lower } as const]),
    ...(kit === undefined ? [] : [{ pass: 'kit', rule: readChoice('kit', kit, KIT_RULES) } as const]),
    ...(accents === undefined
      ? []
      : [{ pass: 'accents', rule: readChoice('accents', accents, ACCENT_RULES) } as const]),
    ...(hands === undefined
      ? []
      : [{ pass: 'hands', rule: readChoice('hands', hands, HANDS_RULES) } as const]),
    ...(fill === undefined ? [] : [{ pass: 'fill', beats: fill === 1 ? 1 : 2, bars } as const]),
  ];
}

/** An exercise and what became of it. */
interface Tried extends ArrangedTogether {
  readonly from: Exercise;
}

/** What was made, numbered as it will stand in the file. */
interface Made extends Tried {
  readonly exercise: Exercise;
}

function tryAll(lesson: Lesson, request: ArrangeRequest): readonly Tried[] {
  const passes = passesOf(request);
  if (passes.length === 0) throw new InputError(({ words }) => words.arrange.noPass);
  const numbers = readExerciseList('exercise', request.exercise, lesson);
  if (numbers.length === 0) throw refused('lesson', request.lesson, (expected) => expected.withExercises);
  const seed = request.seed ?? lesson.compose.seed;
  return lesson.exercises
    .filter((exercise) => numbers.includes(exercise.number))
    .map((from) => ({ from, ...arrangeAll(lesson, from, passes, seed) }));
}

function madeOf(tried: readonly Tried[], before: number, { words }: CliCatalogue): readonly Made[] {
  return tried
    .flatMap(({ exercise, ...rest }) => (exercise ? [{ ...rest, exercise }] : []))
    .map((made, i): Made => {
      const name = made.from.name ?? words.arrange.from({ exercise: made.from.number });
      return { ...made, exercise: { ...made.exercise, number: before + i + 1, name } };
    });
}

function told({ from, said, notes }: Tried, { words, language }: CliCatalogue): string {
  const does = said.map((fact) => say(fact, language)).join('; ');
  const cannot = notes.map((fact) => say(fact, language)).join(' ');
  return [words.arrange.from({ exercise: from.number }), does, cannot]
    .filter((text) => text !== '')
    .join('  ');
}

function lineOf(lesson: Lesson, made: Made, to: CliCatalogue): string {
  const { points } = gradeExercise(lesson, made.exercise);
  const number = exerciseLabel(made.exercise.number).padStart(3);
  return `${number}  ${exerciseText(lesson, made.exercise)}  ${points.toFixed(2)}  ${told(made, to)}`;
}

function jsonOf(
  lesson: Lesson,
  file: string,
  made: readonly Made[],
  left: readonly Tried[],
  to: CliCatalogue,
) {
  const sentence = <F extends ArrangedTogether['said' | 'notes'][number]>(fact: F) => ({
    ...fact,
    text: say(fact, to.language),
  });
  return {
    file,
    count: made.length,
    exercises: made.map(({ exercise, from, said, notes }) => ({
      number: exercise.number,
      from: from.number,
      text: exerciseText(lesson, exercise),
      sticking: exercise.sticking?.join(' ') ?? null,
      points: gradeExercise(lesson, exercise).points,
      said: said.map(sentence),
      notes: notes.map(sentence),
    })),
    left: left.map(({ from, notes }) => ({ exercise: from.number, notes: notes.map(sentence) })),
  };
}

/**
 * Makes second passes and writes what they give: behind what the lesson has, or alone into another file.
 * @returns the exit status.
 * @throws InputError when the lesson has an error, the request makes no sense, or no pass could be made.
 */
export async function arrangeCommand(request: ArrangeRequest, terminal: Speaker): Promise<number> {
  const file = await readLessonFile(request.lesson);
  const lesson = requireLesson(file, terminal);
  const to = terminal.catalogue;
  const tried = tryAll(lesson, request);
  const { out } = request;
  const made = madeOf(tried, out === undefined ? lesson.exercises.length : 0, to);
  const left = tried.filter(({ exercise }) => exercise === null);
  if (made.length === 0) {
    throw new InputError((where) =>
      where.words.arrange.nothing({
        file: request.lesson,
        why: left.map((each) => told(each, where)).join('\n'),
      }),
    );
  }
  const kept = out === undefined ? lesson.exercises : [];
  const text = setExercises(file.text, [...kept, ...made.map(({ exercise }) => exercise)], lesson.comping);
  const path = out ?? request.lesson;
  await (out === undefined ? writeTextFile(path, text) : replaceTextFile(out, text, terminal));
  if (request.json) {
    terminal.say(JSON.stringify(jsonOf(lesson, path, made, left, to), null, 2));
    return 0;
  }
  if (request.explain) for (const each of made) terminal.say(lineOf(lesson, each, to));
  terminal.say(to.words.compose.written({ count: made.length, file: path }));
  for (const each of left) terminal.say(told(each, to));
  return 0;
}
