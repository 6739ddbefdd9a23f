/**
 * Examples: exercises that a teacher shows before the student plays them, several times round and then in a phrase form.
 *
 * Conventions: an example is shown as one form, so that everything that plays, draws or films a form follows it; it is
 * nothing that a student is asked to play.
 */
import { defaultForm, formNamed } from './default-form.ts';
import type { Exercise, Form, Lesson } from './lesson.ts';
import { playedBars } from './repeats.ts';

/** How often an example goes round where that is not said, and at most. */
export const EXAMPLE_TIMES = { usual: 4, most: 16 } as const;

/** Name of the form that an example is shown in. */
export const EXAMPLE_FORM = 'example';

type Shown = Pick<Lesson, 'forms' | 'exercises'>;

/** The form that phrases are shown in where none is named: the first that has more than one section. */
function phraseForm(lesson: Pick<Lesson, 'forms'>): Form {
  return lesson.forms.find(({ sections }) => sections.length > 1) ?? defaultForm(lesson);
}

/**
 * The form that an exercise of a section is shown in; null where it is no example.
 * @param number of the exercise, or null for the groove alone
 */
export function exampleForm(section: Shown, number: number | null): Form | null {
  const exercise = section.exercises.find((each) => each.number === number);
  const { example } = exercise ?? {};
  if (!exercise || !example) return null;
  const form = (example.form === null ? null : formNamed(section, example.form)) ?? phraseForm(section);
  const round = playedBars(exercise.parts[0]?.pattern.bars.length ?? 1, exercise).length;
  const phrases = Array.from({ length: form.repeat }, () => form.sections).flat();
  return {
    name: EXAMPLE_FORM,
    sections: [{ play: 'pattern', bars: round * example.times, ending: null }, ...phrases],
    repeat: 1,
    countInBars: form.countInBars,
  };
}

/** The form of a section with a name, that of an example among them; what is played where none is named (null). */
export function formShown(section: Shown, number: number | null, name: string | null): Form {
  const example = exampleForm(section, number);
  if (example && (name === null || name === EXAMPLE_FORM)) return example;
  return (name === null ? null : formNamed(section, name)) ?? defaultForm(section);
}

/** The forms that an exercise of a section can be heard in: as an example first, where it is one. */
export function formsShown(section: Shown, number: number | null): readonly Form[] {
  const example = exampleForm(section, number);
  return example ? [example, ...section.forms] : section.forms;
}

/** The key of it in a lesson file: `true` where it says nothing of its own. */
export function exampleToData({ example }: Pick<Exercise, 'example'>): Readonly<Record<string, unknown>> {
  if (!example) return {};
  const { times, form } = example;
  if (form !== null) return { example: { times, form } };
  return { example: times === EXAMPLE_TIMES.usual ? true : times };
}
