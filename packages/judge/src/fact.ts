/** What this room states. */
import type { LoopFact } from './loop/fact.ts';

/** Every fact of judging. */
export type JudgeFact = LoopFact;
