/**
 * How strongly a rhythm speaks for or against a pulse.
 *
 * Conventions: 0 and 1 on an even grid, looped. More evidence against the pulse is harder.
 * Sources: Povel & Okkerman 1981, Perception & Psychophysics 30(6), for the accents of equal tones; Povel & Essens
 * 1985, Music Perception 2(4), for counter-evidence and the weight of silence; Essens 1995, Perception &
 * Psychophysics 57(4), for the weight 4.
 */

/** A silent pulse speaks as strongly against it as this many unaccented ones. */
export const SILENT_PULSE_WEIGHT = 4;

/**
 * Which strokes are heard as accented though all are equally loud: a stroke alone, the second of two, the first
 * and last of three or more. Strokes are neighbours when they are one place apart.
 */
export function heardAccents(bits: readonly number[]): readonly boolean[] {
  const n = bits.length;
  const struck = (place: number) => bits[(place + n) % n] === 1;
  return bits.map((_, place) => {
    if (!struck(place)) return false;
    const before = struck(place - 1);
    const after = struck(place + 1);
    if (before !== after) return before || struck(place + 2);
    return !before;
  });
}

/** What speaks against a pulse. */
export interface CounterEvidence {
  /** Number of pulses on which nothing is struck. */
  readonly silent: number;
  /** Number of pulses on which an unaccented stroke falls. */
  readonly unaccented: number;
  /** The C-score, a weighted count: 4 · silent + unaccented. */
  readonly score: number;
}

/** Evidence against a pulse every `period` places from place `phase`. */
export function counterEvidence(bits: readonly number[], period: number, phase = 0): CounterEvidence {
  const accents = heardAccents(bits);
  const pulses = bits.flatMap((_, place) => (place % period === phase ? [place] : []));
  const silent = pulses.filter((place) => bits[place] === 0).length;
  const unaccented = pulses.filter((place) => bits[place] === 1 && accents[place] === false).length;
  return { silent, unaccented, score: SILENT_PULSE_WEIGHT * silent + unaccented };
}

/** The least C-score over every pulse of 2 to `longest` places that fits the cycle. */
export function bestPulseScore(bits: readonly number[], longest = 4): number {
  const periods = Array.from({ length: longest - 1 }, (_, i) => i + 2).filter((p) => bits.length % p === 0);
  const scores = periods.flatMap((period) =>
    Array.from({ length: period }, (_, phase) => counterEvidence(bits, period, phase).score),
  );
  return Math.min(...scores);
}
