/**
 * Whether what was played is another phrase form of the same exercise: who loops a bar where four bars and two of time
 * were asked has played nothing wrong, and is told so before anything is called missing.
 */
import type { Form } from '@shedbook/core';
import { type Judgement, type JudgeTask, judge, type ToJudge } from './judge.ts';
import type { Level } from './level/levels.data.ts';

/** A take as it is heard in a form, and what comes of it there. */
export interface InForm<Heard extends ToJudge> {
  readonly form: Form;
  readonly heard: Heard;
  readonly judgement: Judgement;
}

/** Whether a form plays the exercise: the groove alone explains whatever is left out. */
function playsExercise({ sections }: Form): boolean {
  return sections.some(({ play }) => play === 'pattern');
}

/**
 * The first other form of the lesson that what was played is clean in; null where there is none, or where it is clean as
 * asked or nobody can tell.
 * @param forms all forms of the exercise's section
 * @param hearIn hears the same take in a form
 */
export function otherForm<Heard extends ToJudge>(
  task: JudgeTask,
  { verdict, level }: { readonly verdict: Judgement['verdict']; readonly level: Level },
  forms: readonly Form[],
  hearIn: (form: Form) => Heard,
): InForm<Heard> | null {
  if (verdict.is === 'clean' || verdict.is === 'not judged') return null;
  for (const form of forms.filter((each) => each.name !== task.form.name && playsExercise(each))) {
    const heard = hearIn(form);
    const judgement = judge({ ...task, form }, heard, level);
    if (judgement.verdict.is === 'clean') return { form, heard, judgement };
  }
  return null;
}
