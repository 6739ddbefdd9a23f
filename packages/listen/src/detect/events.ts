/**
 * Events of a take: every moment where something may have been struck, with what the network makes of it.
 *
 * Conventions: seconds from the start of the stream; presence as logits, offsets in ms from the event's time,
 * levels K-weighted (ITU-R BS.1770-4), in dB re full scale over a stroke's first 100 ms; three rows of HEARD_COUNT numbers.
 */
import { HEARD_COUNT } from '../network/heard-voices.data.ts';
import { DESCRIPTION } from '../network/network.ts';

/** One event. */
export interface HeardEvent {
  readonly timeSeconds: number;
  readonly presence: Float32Array;
  readonly offsetMs: Float32Array;
  readonly levelDb: Float32Array;
  /** How it sounds, in numbers that the second look compares. */
  readonly description: Float32Array;
  /**
   * K-weighted level in dB re full scale of ENERGY_BANDS bands, over the first 100 ms and then just before; empty where
   * it was not measured.
   */
  readonly energyDb: Float32Array;
}

/** What an event without measured energy has. */
export const NO_ENERGY = new Float32Array();

/** The scale of the network's outputs: ms and dB a unit. */
export const OFFSET_UNIT_MS = 10;
/** The scale of the network's levels, in dB a unit. */
export const LEVEL_UNIT_DB = 20;

/** Reads one event out of a batch's output. */
export function readEvent(
  timeSeconds: number,
  referenceDb: number,
  result: { readonly out: Float64Array; readonly description: Float64Array },
  index: number,
  energyDb: Float32Array,
): HeardEvent {
  const from = index * 3 * HEARD_COUNT;
  const row = (which: number, unit: number, base: number) =>
    Float32Array.from(
      { length: HEARD_COUNT },
      (_, voice) => base + unit * result.out[from + which * HEARD_COUNT + voice]!,
    );
  return {
    timeSeconds,
    presence: row(0, 1, 0),
    offsetMs: row(1, OFFSET_UNIT_MS, 0),
    levelDb: row(2, LEVEL_UNIT_DB, referenceDb),
    description: Float32Array.from(
      result.description.subarray(index * DESCRIPTION, (index + 1) * DESCRIPTION),
    ),
    energyDb,
  };
}
