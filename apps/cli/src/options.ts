/** Options of the command line that are one of some words. */
import { type Form, formNamed, isVoice, type Lesson, nearest, VOICES, type Voice } from '@shedbook/core';
import { InputError } from '@shedbook/host';

/** Refuses an option. @throws InputError always, with what was found, what was expected and the nearest word */
export function refuseOption(
  option: string,
  found: string,
  expected: string,
  near: string | null = null,
): never {
  const repair = near ? ` (did you mean "${near}"?)` : '';
  throw new InputError(`--${option}: found "${found}", expected ${expected}${repair}`);
}

/**
 * An option that is one of some words.
 * @throws InputError when it is none.
 */
export function readChoice<T extends string>(option: string, text: string, choices: readonly T[]): T {
  const found = choices.find((choice) => choice.toLowerCase() === text.toLowerCase());
  return found ?? refuseOption(option, text, `one of ${choices.join(', ')}`, nearest(text, choices));
}

/**
 * The form that a person names.
 * @throws InputError when the lesson has none of that name.
 */
export function requireForm(lesson: Lesson, name: string): Form {
  const names = lesson.forms.map((each) => each.name);
  return (
    formNamed(lesson, name) ?? refuseOption('form', name, `one of ${names.join(', ')}`, nearest(name, names))
  );
}

/**
 * Voices joined by commas.
 * @throws InputError when one of them is none.
 */
export function readVoices(option: string, text: string): readonly Voice[] {
  return text.split(',').map((each) => {
    const name = each.trim();
    return isVoice(name)
      ? name
      : refuseOption(option, name, `voices: ${VOICES.join(', ')}`, nearest(name, VOICES));
  });
}
