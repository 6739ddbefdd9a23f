/**
 * Facts to sentences. A language has one message for each kind of fact; its places are filled with the values of
 * the fact, facts within it being said first.
 */
import type { Fact } from '@shedbook/core';
import type { Tongue } from '../language/tongue.ts';
import { compile, type Fill } from '../message/compiled.ts';
import type { Sentences } from './sentences.ts';

/** A language that has sentences for facts. */
export interface Language<F extends Fact> {
  readonly tongue: Tongue;
  readonly sentences: Sentences<F>;
}

const compiled = new WeakMap<object, Map<string, Fill>>();

function fillOf<F extends Fact>(kind: F['fact'], language: Language<F>): Fill {
  const known = compiled.get(language) ?? new Map<string, Fill>();
  compiled.set(language, known);
  const message: string = language.sentences[kind];
  const fill = known.get(kind) ?? compile(message, language.tongue, (inner) => say(inner as F, language));
  known.set(kind, fill);
  return fill;
}

/** A fact in a language, as a sentence or as the clause that its message is. */
export function say<F extends Fact>(fact: NoInfer<F>, language: Language<F>): string {
  const { fact: kind, ...values } = fact;
  return fillOf<F>(kind, language)(values);
}
