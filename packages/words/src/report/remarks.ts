/**
 * Sentences for remarks on a take.
 *
 * Conventions: numbers come in as numbers and are written as the language writes them.
 */
import type { RemarkFact } from '@shedbook/judge';

type FactOf<Kind, Fact = RemarkFact> = Fact extends { readonly kind: infer Kinds }
  ? Kind extends Kinds
    ? Fact
    : never
  : never;

/** How each kind of remark is said. */
export type Sayings = {
  readonly [Kind in RemarkFact['kind']]: (fact: FactOf<Kind>) => string;
};
