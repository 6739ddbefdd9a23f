/** What is written and was not heard, to be said. */
import type { AssumedFact } from '../fact.ts';
import type { AssumedStroke } from './struck.ts';

/** How many strokes of each voice are written though they lie under another one, the most first. */
export function assumedFacts(assumed: readonly AssumedStroke[]): readonly AssumedFact[] {
  const facts = new Map<string, AssumedFact>();
  for (const { voice, under } of assumed) {
    const key = `${voice} ${under}`;
    const count = (facts.get(key)?.count ?? 0) + 1;
    facts.set(key, { fact: 'written-as-elsewhere', voice, under, count });
  }
  return [...facts.values()].toSorted((a, b) => b.count - a.count);
}
