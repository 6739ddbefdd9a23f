/** What this room states. */
import type { VerdictFact } from './verdict/fact.ts';

/** Every fact of judging. */
export type JudgeFact = VerdictFact;
