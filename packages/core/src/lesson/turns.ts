/** Forms that leave bars to the student: who plays in which. */
import type { Form } from './lesson.ts';

/** Whether a form leaves bars to the student. */
export function leavesBars(form: Form): boolean {
  return form.sections.some((section) => section.play === 'rest');
}

const TURNED = { rest: 'pattern', pattern: 'rest', time: 'time' } as const;

/** The form as the student plays it: in the bars that are left to them, listening in the others. */
export function turnedForm(form: Form): Form {
  if (!leavesBars(form)) return form;
  return { ...form, sections: form.sections.map((each) => ({ ...each, play: TURNED[each.play] })) };
}
