/**
 * Places in a bar, as they are told apart from each other when one speaks of them.
 *
 * Conventions: bars, beats and slots from 1 in facts.
 */
import type { Fact } from '../fact.ts';
import { isSubdivision } from './cell.ts';
import { countSyllable, type Syllable } from './counting.ts';

/** On a beat. */
export interface BeatFact extends Fact {
  readonly fact: 'beat';
  readonly beat: number;
}

/** Inside a beat, by the syllable it is counted with. */
export interface SyllableFact extends Fact {
  readonly fact: 'syllable';
  readonly syllable: Syllable;
  readonly beat: number;
}

/** Inside a beat that no syllables are known for. */
export interface SlotFact extends Fact {
  readonly fact: 'slot';
  readonly slot: number;
  readonly beat: number;
}

/** A place of one bar among several. */
export interface InBarFact extends Fact {
  readonly fact: 'in-bar';
  readonly place: BeatFact | SyllableFact | SlotFact;
  readonly bar: number;
}

/** A place in a bar, or in a bar among several. */
export type PlaceFact = BeatFact | SyllableFact | SlotFact | InBarFact;

/**
 * The place of a slot (from 0) among `slots` of a beat (from 0).
 * @example placeInBar(1, 2, 3) // { fact: 'syllable', syllable: 'let', beat: 2 }
 */
export function placeInBar(beat: number, slot: number, slots: number): InBarFact['place'] {
  if (slot === 0) return { fact: 'beat', beat: beat + 1 };
  const syllable = isSubdivision(slots) ? countSyllable(slot, slots) : null;
  if (syllable === null) return { fact: 'slot', slot: slot + 1, beat: beat + 1 };
  return { fact: 'syllable', syllable, beat: beat + 1 };
}
