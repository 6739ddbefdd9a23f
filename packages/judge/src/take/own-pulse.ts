/**
 * The student's own pulse, from every limb that played: what lateness is measured against. An uneven limb speaks less,
 * so that it does not make the others look uneven.
 *
 * Conventions: seconds; beats from the start of the round. Each voice may lie ahead of the pulse or behind it
 * throughout; the pulse goes through the lead voice where that is even through all the rounds, else through the middle of
 * all: in every round through the same, or a limb would be late in one and the others early in the next.
 * Source: local linear regression with tricube weights (W. S. Cleveland, JASA 74(368), 1979); voices are weighted by
 * the inverse of their variance, found anew in each round of the fit.
 */
import { groupBy, type Voice } from '@shedbook/core';
import { fitLine, lowerMedian, median, spread } from '@shedbook/signal';
import type { Pair } from './match.ts';

/** How far on each side the pulse looks, in beats. */
const WINDOW_BEATS = 8;
/** With fewer strokes there is no pulse of one's own: only a lateness. */
const FEWEST = 6;
/** A pulse is laid through strokes on the beat where there are so many, else through all. */
const FEWEST_ON_BEAT = 8;
const ROUNDS = 5;
/** No voice is taken for more even than this; seconds. */
const EVENEST_SECONDS = 0.004;
/** As strokes that a voice has as unevenly as all: of a few strokes chance alone makes one limb even and another uneven. */
const STROKES_OF_ALL = 8;
/** A stroke farther than so many spreads from the pulse is no part of it. */
const OUTLIER = 3;
/** A lead voice that is this many times more uneven than the evenest does not lead. */
const LEADS = 1.8;

/** Strokes of one round against their own pulse. */
export interface OwnPulse {
  /** When a beat falls. */
  readonly secondsAt: (pair: Pair) => number;
  /** The pulse's tempo over the whole round, as a ratio to that of the bar lines; 1 where too little was played. */
  readonly tempoRatio: number;
}

interface Point {
  readonly x: number;
  readonly y: number;
  readonly voice: Voice;
}

function tricube(distance: number): number {
  const share = Math.abs(distance) / WINDOW_BEATS;
  if (share >= 1) return 0;
  const left = 1 - share * share * share;
  return left * left * left;
}

/** Spread of a voice; of a few strokes as a standard deviation, since a median of few says little. */
export function spreadOf(values: readonly number[]): number {
  if (values.length >= 10) return spread(values);
  if (values.length < 2) return 0;
  const middle = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1));
}

interface VoiceSpread {
  readonly voice: Voice;
  readonly strokes: number;
  readonly seconds: number;
}

/** Index of the first of some points, in order of their beats, that is not before a beat. */
function firstFrom(points: readonly { readonly x: number }[], x: number): number {
  let low = 0;
  let high = points.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (points[middle]!.x < x) low = middle + 1;
    else high = middle;
  }
  return low;
}

class PulseFit {
  readonly #points: readonly Point[];
  readonly #byVoice: ReadonlyMap<Voice, readonly Point[]>;
  readonly #lead: Voice;
  #bias = new Map<Voice, number>();
  #spread = new Map<Voice, number>();
  #fit: readonly (Point & { readonly weight: number })[];
  #known = new Map<number, number>();
  /** Whether points are in order of their beats: where bars lie over each other, they may not be. */
  readonly #isOrdered: boolean;
  #isLed: boolean | null = null;

  constructor(points: readonly Point[], lead: Voice) {
    this.#points = points;
    this.#byVoice = groupBy(points, ({ voice }) => voice);
    this.#lead = lead;
    this.#isOrdered = points.every(({ x }, i) => i === 0 || points[i - 1]!.x <= x);
    this.#fit = points.map((point) => ({ ...point, weight: 1 }));
    for (let round = 0; round < ROUNDS; round += 1) this.#improve();
  }

  /** When a beat falls; strokes of several limbs on one beat ask but once. */
  secondsAt(x: number): number {
    const known = this.#known.get(x);
    if (known !== undefined) return known;
    // Asked for every stroke in every round of the fit: a list a point would take most of the time.
    const near: { readonly x: number; readonly y: number; readonly weight: number }[] = [];
    // beyond the window they weigh nothing
    const from = this.#isOrdered ? firstFrom(this.#fit, x - WINDOW_BEATS) : 0;
    for (let i = from; i < this.#fit.length; i += 1) {
      const point = this.#fit[i]!;
      if (this.#isOrdered && point.x >= x + WINDOW_BEATS) break;
      const weight = point.weight * tricube(point.x - x);
      if (weight > 0) near.push({ x: point.x - x, y: point.y, weight });
    }
    const line =
      near.length >= FEWEST ? near : this.#fit.map(({ x: at, y, weight }) => ({ x: at - x, y, weight }));
    const seconds = fitLine(line).at;
    this.#known.set(x, seconds);
    return seconds;
  }

  /** How unevenly each voice was played, with the number of its strokes. */
  get spreads(): readonly VoiceSpread[] {
    return [...this.#byVoice].map(([voice, points]) => ({
      voice,
      strokes: points.length,
      seconds: this.#spread.get(voice) ?? EVENEST_SECONDS,
    }));
  }

  /** Lays the pulse through the lead voice, or through the middle of all. */
  settle(isLed: boolean): void {
    this.#isLed = isLed;
    this.#improve();
  }

  get slope(): number {
    return fitLine(this.#fit).slope;
  }

  #improve(): void {
    const off = new Map<Point, number>();
    for (const point of this.#points) off.set(point, point.y - this.secondsAt(point.x));
    const offsetsOf = (points: readonly Point[]) => points.map((point) => off.get(point) ?? 0);
    for (const [voice, points] of this.#byVoice) {
      const offsets = offsetsOf(points);
      this.#bias.set(voice, median(offsets));
      this.#spread.set(voice, Math.max(EVENEST_SECONDS, spreadOf(offsets)));
    }
    this.#spread = beside(this.spreads);
    const centre = this.#centre();
    this.#known = new Map();
    this.#fit = this.#points.flatMap((point) => {
      const bias = this.#bias.get(point.voice) ?? 0;
      const scatter = this.#spread.get(point.voice) ?? EVENEST_SECONDS;
      if (Math.abs((off.get(point) ?? 0) - bias) > OUTLIER * scatter) return [];
      return [{ ...point, y: point.y - (bias - centre), weight: 1 / scatter ** 2 }];
    });
  }

  /** Where the pulse lies beside the voices: with the lead voice, or in their middle. */
  #centre(): number {
    const lead = this.#bias.get(this.#lead);
    const isLed = this.#isLed ?? leads(this.#lead, this.spreads);
    return lead !== undefined && isLed ? lead : lowerMedian([...this.#bias.values()]);
  }
}

/** The spread of each voice, as far as its strokes tell it from that of all. */
function beside(spreads: readonly VoiceSpread[]): Map<Voice, number> {
  const { seconds: ofAll } = spreadThrough(spreads);
  return new Map(
    spreads.map(({ voice, strokes, seconds }) => [
      voice,
      Math.sqrt((strokes * seconds ** 2 + STROKES_OF_ALL * ofAll ** 2) / (strokes + STROKES_OF_ALL)),
    ]),
  );
}

/** How unevenly a voice was played in all rounds, and how much more it may well be: of few strokes little is known. */
function spreadThrough(rounds: readonly VoiceSpread[]) {
  const strokes = rounds.reduce((sum, one) => sum + one.strokes, 0);
  const squares = rounds.reduce((sum, one) => sum + one.strokes * one.seconds ** 2, 0);
  const seconds = Math.sqrt(squares / strokes);
  // the standard error of a spread, as a share of it: 1 / √(2(n − 1))
  return { seconds, most: seconds * (1 + 1 / Math.sqrt(2 * Math.max(1, strokes - 1))) };
}

/** Whether a voice is even enough to lead, beside the evenest. */
function leads(lead: Voice, spreads: readonly VoiceSpread[]): boolean {
  const byVoice = groupBy(spreads, ({ voice }) => voice);
  const own = byVoice.get(lead);
  if (!own) return false;
  const evenest = Math.min(...[...byVoice.values()].map((one) => spreadThrough(one).most));
  return spreadThrough(own).seconds <= LEADS * evenest;
}

function fitOf(pairs: readonly Pair[], lead: Voice): PulseFit | null {
  if (pairs.length < FEWEST) return null;
  const onBeat = pairs.filter(({ due }) => due.asked.written.slot === 1);
  const used = onBeat.length >= FEWEST_ON_BEAT ? onBeat : pairs;
  return new PulseFit(
    used.map(({ due, stroke }): Point => ({ x: due.beats, y: stroke.seconds, voice: due.voice })),
    lead,
  );
}

function pulseOf(pairs: readonly Pair[], fit: PulseFit | null): OwnPulse {
  if (!fit) {
    const late = pairs.length === 0 ? 0 : median(pairs.map(({ lateSeconds }) => lateSeconds));
    return { secondsAt: ({ due }) => due.seconds + late, tempoRatio: 1 };
  }
  const beatSeconds = median(pairs.map(({ due }) => due.beatSeconds));
  return { secondsAt: ({ due }) => fit.secondsAt(due.beats), tempoRatio: beatSeconds / fit.slope };
}

/** The pulse of each round. */
export function ownPulses(rounds: readonly (readonly Pair[])[], lead: Voice): readonly OwnPulse[] {
  const fits = rounds.map((pairs) => fitOf(pairs, lead));
  const isLed = leads(
    lead,
    fits.flatMap((fit) => fit?.spreads ?? []),
  );
  for (const fit of fits) fit?.settle(isLed);
  return rounds.map((pairs, round) => pulseOf(pairs, fits[round] ?? null));
}
