/**
 * Strokes of a hand that keeps time which fall under a louder drum and cannot be heard: they are taken from its other
 * beats and bars, as anybody does who writes a groove down by ear, and are marked as taken from there.
 *
 * Conventions: bars and beats count from 0. A place is a beat and how far into it, in parts of a beat. A place is covered
 * where a drum or crash of at least the voice's own level is struck. Who leaves the hat out under every back beat and who
 * plays it there often sound alike: what is taken so is said. The bounds are ours, set on the starting grooves.
 */
import { groupBy, type Voice } from '@shedbook/core';
import { median } from '@shedbook/signal';
import { type StruckVoice, TIME_KEEPERS } from './struck.ts';

/** A stroke with its place in the bars. */
export interface InBars {
  readonly bar: number;
  readonly beat: number;
  /** How far into the beat, in {@link PARTS} of it. */
  readonly part: number;
  readonly struck: StruckVoice;
}

/** Parts of a beat that places are told by: every subdivision has whole ones. */
export const PARTS = 840;

/** What is struck over a cymbal so that it cannot be heard. */
const COVERING: readonly Voice[] = [
  ...(['snare', 'rimshot', 'sidestick', 'bass', 'crash', 'tom-high', 'tom-mid', 'tom-low'] as const),
];
/** How many open places of one kind tell, and which share of them must be struck. */
const SAME_PLACE = { fewest: 2, share: 0.75 } as const;
const LIKE_PLACE = { fewest: 4, share: 0.85 } as const;
/** A bar with less of the voice than this share of what it has in the middle is a fill or a rest. */
const GOES_ON = 0.5;
/** Evidence, as a logit, that speaks against a stroke wherever it is asked. */
const AGAINST = -2.5;

/** Evidence for a voice near a moment, as a logit. */
export type EvidenceAt = (voice: Voice, seconds: number) => number;

/** One voice on the places of the bars. */
class Keeper {
  readonly voice: Voice;
  readonly own: readonly InBars[];
  readonly #struck: ReadonlySet<string>;
  readonly #covers: ReadonlyMap<string, InBars>;
  readonly #bars: readonly number[];
  readonly #beats: number;

  constructor(voice: Voice, all: readonly InBars[], beats: number) {
    this.voice = voice;
    this.own = all.filter(({ struck }) => struck.voice === voice);
    this.#beats = beats;
    this.#struck = new Set(this.own.map(keyOf));
    const usualDb = median(this.own.map(({ struck }) => struck.levelDb));
    this.#covers = new Map(
      all.flatMap((one) =>
        COVERING.includes(one.struck.voice) && one.struck.levelDb >= usualDb ? [[keyOf(one), one]] : [],
      ),
    );
    const byBar = groupBy(this.own, ({ bar }) => bar);
    const usual = median([...byBar.values()].map(({ length }) => length));
    this.#bars = [...byBar].flatMap(([bar, { length }]) => (length >= GOES_ON * usual ? [bar] : []));
  }

  /** Louder strokes under which this voice goes on by its other beats and bars. */
  lost(): readonly InBars[] {
    const parts = [...new Set(this.own.map(({ part }) => part))];
    return this.#bars.flatMap((bar) =>
      Array.from({ length: this.#beats }, (_, beat) => beat).flatMap((beat) =>
        parts.flatMap((part) => {
          const key = keyOf({ bar, beat, part });
          const over = this.#covers.get(key);
          return over && !this.#struck.has(key) && this.#goesOn(beat, part) ? [over] : [];
        }),
      ),
    );
  }

  /** Whether it is struck at a place of every bar, or of beats like it where that place is always covered. */
  #goesOn(beat: number, part: number): boolean {
    const others = Array.from({ length: this.#beats }, (_, other) => other).filter((other) => other !== beat);
    const alike = this.#beats % 2 === 0 ? others.filter((other) => (other - beat) % 2 === 0) : [];
    const kinds = [
      { beats: [beat], ...SAME_PLACE },
      { beats: alike, ...LIKE_PLACE },
      { beats: others, ...LIKE_PLACE },
    ];
    for (const { beats, fewest, share } of kinds) {
      const open = beats.flatMap((each) =>
        this.#bars
          .map((bar) => keyOf({ bar, beat: each, part }))
          .filter((key) => this.#struck.has(key) || !this.#covers.has(key)),
      );
      if (open.length < fewest) continue;
      return open.filter((key) => this.#struck.has(key)).length >= share * open.length;
    }
    return false;
  }
}

function keyOf({ bar, beat, part }: Omit<InBars, 'struck'>): string {
  return `${bar} ${beat} ${part}`;
}

/** How loud a voice is at a place like this: where it has the same part of a beat. */
function levelLike({ own }: Keeper, { part }: InBars): number {
  const like = own.filter((one) => one.part === part);
  return median((like.length > 0 ? like : own).map(({ struck }) => struck.levelDb));
}

/**
 * The strokes of hands that keep time which lie under louder ones.
 * @param beats of a bar
 */
export function underOthers(
  all: readonly InBars[],
  beats: number,
  evidenceAt: EvidenceAt,
): readonly StruckVoice[] {
  return TIME_KEEPERS.flatMap((voice) => {
    const keeper = new Keeper(voice, all, beats);
    const lost = keeper.lost();
    const evidence = median(lost.map(({ struck }) => evidenceAt(voice, struck.timeSeconds)));
    if (lost.length === 0 || evidence < AGAINST) return [];
    return lost.map(
      (over): StruckVoice => ({
        timeSeconds: over.struck.timeSeconds,
        voice,
        levelDb: levelLike(keeper, over),
        under: over.struck.voice,
      }),
    );
  });
}
