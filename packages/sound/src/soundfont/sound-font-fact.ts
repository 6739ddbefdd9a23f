/** Why a file cannot serve as a kit, as facts. */
import type { Fact } from '@shedbook/core';

/** What was found in place of a SoundFont with a drum set. */
export type SoundFontFact =
  | (Fact & {
      readonly fact: 'sound-font-no-riff';
      /** Of the file. */
      readonly bytes: number;
    })
  | (Fact & { readonly fact: 'sound-font-damaged' })
  | (Fact & {
      readonly fact: 'sound-font-no-drums';
      /** How many there are, none of them of drums. */
      readonly presets: number;
    })
  | (Fact & {
      readonly fact: 'sound-font-too-many-zones';
      /** How many the drum set has. */
      readonly zones: number;
      /** How many one has at most. */
      readonly most: number;
    });

/** A file cannot serve as a kit. */
export class SoundFontError extends RangeError {
  override readonly name = 'SoundFontError';
  /** Why not. */
  readonly fact: SoundFontFact;

  /** @param fact why not; its code is all that the message of the error says */
  constructor(fact: SoundFontFact) {
    super(`At kit: ${fact.fact}`);
    this.fact = fact;
  }
}
