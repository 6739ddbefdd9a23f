/** What every catalogue of a language rests on: how it joins and counts, and what the parts of a drum set are called. */
import type { Limb, SidedLimb, SoundingVoice } from '@shedbook/core';

/** A language. */
export interface Tongue {
  /** The tag that readers choose by, e.g. `de`. */
  readonly tag: string;
  /** The tag by which numbers and lists are formatted: English lists have no comma before "and". */
  readonly locale: string;
  readonly voices: Readonly<Record<SoundingVoice, string>>;
  readonly limbs: Readonly<Record<Limb, string>>;
  readonly sides: Readonly<Record<SidedLimb, string>>;
}
