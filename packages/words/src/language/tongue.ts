/** What every catalogue of a language rests on: how it joins and counts, and what the parts of a drum set are called. */
import type { HowWord, Limb, SidedLimb, SoundingVoice, Syllable } from '@shedbook/core';

/** Grammatical cases: who does something, and after German `vor`, `nach`, `neben`. */
export type Case = 'nominative' | 'dative';

/** A language. */
export interface Tongue {
  /** The tag that readers choose by, e.g. `de`. */
  readonly tag: string;
  /** The tag by which numbers and lists are formatted: English lists have no comma before "and". */
  readonly locale: string;
  readonly voices: Readonly<Record<SoundingVoice, string>>;
  /** Voices with the definite article, in each case that the messages of the language ask for. */
  readonly theVoices: Readonly<Record<Case, Readonly<Record<SoundingVoice, string>>>>;
  readonly limbs: Readonly<Record<Limb, string>>;
  readonly sides: Readonly<Record<SidedLimb, string>>;
  /** How a limb plays. */
  readonly how: Readonly<Record<HowWord, string>>;
  /** What is counted inside a beat. */
  readonly syllables: Readonly<Record<Syllable, string>>;
}
