/** Tempi of a lesson or of an item of a plan. */
import { countedTempo, type Meter } from '@shedbook/core';

/** Words for one tempo, and for a way from one to another, in beats a minute. */
export interface TempoWords {
  readonly tempo: (values: { readonly bpm: number }) => string;
  readonly tempi: (values: {
    /** Beats a minute. */
    readonly from: number;
    /** Beats a minute. */
    readonly to: number;
  }) => string;
}

/** From one tempo to another, in the beats of a meter; one where both are the same. */
export function tempoWords(
  words: TempoWords,
  meter: Meter,
  {
    fromBpm,
    toBpm,
  }: {
    /** Quarter notes a minute. */
    readonly fromBpm: number;
    /** Quarter notes a minute. */
    readonly toBpm: number;
  },
): string {
  const from = countedTempo(meter, fromBpm);
  const to = countedTempo(meter, toBpm);
  return from === to ? words.tempo({ bpm: from }) : words.tempi({ from, to });
}
