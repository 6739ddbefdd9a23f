/** Which phrase form is meant: by its name, and where none is named. */
import type { Form, Lesson } from './lesson.ts';

/** Two names are the same when only capitals, spaces, hyphens and underscores differ: `four-and-two`, `Four and two`. */
function plain(name: string): string {
  return name
    .toLowerCase()
    .replaceAll(/[\s_-]+/g, ' ')
    .trim();
}

/** The lesson's form with a name, capitals, spaces and hyphens aside; null where it has none. */
export function formNamed({ forms }: Pick<Lesson, 'forms'>, name: string): Form | null {
  return forms.find((form) => plain(form.name) === plain(name)) ?? null;
}

/** A form as a section has it, by its name: the same, where it has none of that name. */
export function formIn(section: Pick<Lesson, 'forms'>, form: Form): Form {
  return formNamed(section, form.name) ?? form;
}

/**
 * The form that plays, is recorded and is listened for where nobody names one: the lesson's own loop, else the loop
 * that every lesson has.
 */
export function defaultForm(lesson: Pick<Lesson, 'forms'>): Form {
  const loop = formNamed(lesson, 'loop');
  if (!loop) throw new RangeError('Internal error: a lesson without a loop');
  return loop;
}
