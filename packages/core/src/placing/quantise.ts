/**
 * Played times to written slots.
 *
 * Conventions: positions are in whole notes from the first bar line. The player's spread and habits are learnt from
 * the whole take in a few passes. Where a swing ratio is known, slots are looked for where that swing plays them, and
 * triplets are expected rather than eighths.
 */
import { add, type Fraction, fraction, multiply } from '../rhythm/fraction.ts';
import { beatLength, beatStarts } from '../rhythm/meter.ts';
import { type ChosenBeat, chooseBeats, type Grid, mod, type Player } from './choose-beat.ts';
import { playerOf, stranger } from './player.ts';

/** Passes over a take in which its player is learnt: habits sharpen, since misread beats grow fewer. */
const LEARNING_PASSES = 3;

/** A written place: the bar from 0, and whole notes from its bar line. */
export interface QuantisedPlace {
  readonly bar: number;
  readonly inBar: Fraction;
}

function placesOf(count: number, beats: readonly ChosenBeat[], grid: Grid, player: Player) {
  const { meter } = grid;
  const starts = beatStarts(meter);
  const result: (QuantisedPlace | null)[] = Array.from({ length: count }, () => null);
  for (const { index, items, choice } of beats) {
    const beat = mod(index, starts.length);
    const taken = new Set<number>();
    items.forEach((item, i) => {
      const slot = choice.slotOf[i] as number;
      if ((choice.errors[i] as number) > player.toleranceBeats || taken.has(slot)) return;
      taken.add(slot);
      const inBeat = multiply(beatLength(meter, beat), fraction(slot, choice.slots));
      result[item] = { bar: Math.floor(index / starts.length), inBar: add(starts[beat] as Fraction, inBeat) };
    });
  }
  return result;
}

/**
 * The written places of the strokes of several voices, or null for a stroke that lies on no slot, or on one that is
 * taken.
 * @param voices for each voice its positions in whole notes from the first bar line, in any order
 */
export function quantise(
  voices: readonly (readonly number[])[],
  grid: Grid,
): readonly (readonly (QuantisedPlace | null)[])[] {
  const unknown = stranger(grid);
  let player = unknown;
  for (let pass = 0; pass < LEARNING_PASSES; pass += 1) {
    const heard = voices.flatMap((positions) => chooseBeats(positions, grid, player));
    player = playerOf(heard, grid, unknown);
  }
  const last = player;
  return voices.map((positions) =>
    placesOf(positions.length, chooseBeats(positions, grid, last), grid, last),
  );
}
