/**
 * Whether the last round is told by itself. Feedback thins out as one improves: after every round until three in a row
 * were clean, then after every fourth, and once eight in a row were, only on asking.
 *
 * Source: learners who are told less often as they improve keep more of what they learnt (the guidance hypothesis:
 * A. W. Salmoni, R. A. Schmidt and C. B. Walter, Psychological Bulletin 95(3), 1984; from memory). The figures are our
 * choice.
 */
import type { JudgedLoop } from '../ear/hearing.ts';

/** Clean rounds in a row after which not every one is told, and after which none is by itself. */
const THINS_AFTER = 3;
const FALLS_SILENT_AFTER = 8;
/** Then every so many rounds. */
const EVERY = 4;

/** Whether the last of some judged rounds is told by itself. */
export function isToldNow(
  loops: readonly {
    readonly judgement: { readonly verdict: Pick<JudgedLoop['judgement']['verdict'], 'is'> };
  }[],
): boolean {
  const faulty = loops.findLastIndex(({ judgement }) => judgement.verdict.is !== 'clean');
  const clean = loops.length - 1 - faulty;
  if (clean <= THINS_AFTER) return true;
  return clean < FALLS_SILENT_AFTER && clean % EVERY === 0;
}
