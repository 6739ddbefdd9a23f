/** Tempi of a lesson or of an item of a plan. */

/** Words for one tempo, and for a way from one to another, in quarter notes a minute. */
export interface TempoWords {
  readonly tempo: (values: { readonly bpm: number }) => string;
  readonly tempi: (values: {
    /** Quarter notes a minute. */
    readonly from: number;
    /** Quarter notes a minute. */
    readonly to: number;
  }) => string;
}

/** From one tempo to another, in quarter notes a minute; one where both are the same. */
export function tempoWords(words: TempoWords, from: number, to: number): string {
  return from === to ? words.tempo({ bpm: from }) : words.tempi({ from, to });
}
