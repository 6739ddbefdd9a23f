/** Options of the command line that are one of some words. */
import {
  type Form,
  formNamed,
  isVoice,
  type Lesson,
  nearest,
  readExerciseLabel,
  sectionsOf,
  VOICES,
  type Voice,
} from '@shedbook/core';
import { InputError } from '@shedbook/host';
import type { CliWords } from '@shedbook/words';

/** Says what was expected. */
export type Expected = (expected: CliWords['expected']) => string;

/** The error for something that a person gave: where, what was found, what was expected and the nearest word. */
export function refused(where: string, found: string, expected: Expected, near: string | null = null) {
  return new InputError(({ words }) => {
    const told = { where, found, expected: expected(words.expected) };
    return near ? words.foundNear({ ...told, near }) : words.found(told);
  });
}

/** Refuses an option. @throws InputError always, with what was found, what was expected and the nearest word */
export function refuseOption(
  option: string,
  found: string,
  expected: Expected,
  near: string | null = null,
): never {
  throw refused(`--${option}`, `"${found}"`, expected, near);
}

/** Expects one of some words. */
export function oneOf(choices: readonly string[]): Expected {
  return (expected) => expected.oneOf({ words: choices.join(', ') });
}

/**
 * An option that is one of some words.
 * @throws InputError when it is none.
 */
export function readChoice<T extends string>(option: string, text: string, choices: readonly T[]): T {
  const found = choices.find((choice) => choice.toLowerCase() === text.toLowerCase());
  return found ?? refuseOption(option, text, oneOf(choices), nearest(text, choices));
}

/**
 * The form that a person names, of the first section that has it.
 * @throws InputError when the lesson has none of that name.
 */
export function requireForm(lesson: Lesson, name: string): Form {
  const forms = sectionsOf(lesson).flatMap((section) => section.forms);
  const names = [...new Set(forms.map((each) => each.name))];
  return formNamed({ forms }, name) ?? refuseOption('form', name, oneOf(names), nearest(name, names));
}

/**
 * Voices joined by commas.
 * @throws InputError when one of them is none.
 */
export function readVoices(option: string, text: string): readonly Voice[] {
  return text.split(',').map((each) => {
    const name = each.trim();
    if (isVoice(name)) return name;
    const voices = VOICES.join(', ');
    return refuseOption(option, name, (expected) => expected.voices({ voices }), nearest(name, VOICES));
  });
}

/**
 * Numbers of exercises such as `3`, `1,4`, `2-5` or `B1-B4`; all of them when left out.
 * @throws InputError when the text is no such list, or names an exercise that the lesson has not.
 */
export function readExerciseList(
  option: string,
  text: string | undefined,
  { exercises }: Lesson,
): readonly number[] {
  const all = exercises.map((exercise) => exercise.number);
  if (text === undefined) return all;
  const expected: Expected = ({ exerciseList }) =>
    exerciseList({ first: all[0] ?? 1, last: all.at(-1) ?? 1 });
  const numbers = text.split(',').flatMap((each) => {
    const [from = null, to = from] = each.split('-').map(readExerciseLabel);
    if (
      each.split('-').length > 2 ||
      from === null ||
      to === null ||
      !all.includes(from) ||
      !all.includes(to)
    )
      return refuseOption(option, text, expected);
    return from === to ? [from] : all.filter((number) => number >= from && number <= to);
  });
  if (numbers.length === 0 || numbers.some((number) => !all.includes(number)))
    refuseOption(option, text, expected);
  return [...new Set(numbers)];
}
