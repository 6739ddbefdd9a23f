/**
 * The clock of a live listener: which bar of the form sounds when, and what is written there.
 *
 * Conventions: seconds of the stream, latency not yet added; bars of the form from index 0.
 */
import type { Bpm, Voice } from '@shedbook/core';
import { askedGrid } from '../align/asked-grid.ts';
import type { ExpectedStroke, FormGrid } from '../align/form-grid.ts';
import { toleranceSeconds } from '../align/match-bar.ts';
import type { Place } from '../decide/places.ts';
import type { Asked } from '../listened.ts';

/** One bar that was announced. */
export interface ClockBar {
  readonly loop: number;
  /** Bar of the form, from 0. */
  readonly formBar: number;
  readonly startSeconds: number;
  readonly barSeconds: number;
  readonly bpm: Bpm;
}

/** A written stroke of one of the bars. */
export interface ClockPlace {
  readonly bar: ClockBar;
  readonly expected: ExpectedStroke;
  readonly seconds: number;
}

/** Bars that begin nearer than this to an announced start are that bar. */
const SAME_SECONDS = 0.001;

/** Bars in order, and the form at each tempo. */
export class LiveClock {
  readonly #asked: Asked;
  readonly #grids = new Map<number, FormGrid>();
  readonly #bars: ClockBar[] = [];
  /** What is written in each of the bars, in the same order. */
  readonly #places: (readonly ClockPlace[])[] = [];
  #loops = 0;

  constructor(asked: Asked) {
    this.#asked = asked;
  }

  /** Bars announced so far, in order. */
  get bars(): readonly ClockBar[] {
    return this.#bars;
  }

  /** Loops begun so far. */
  get loops(): number {
    return this.#loops;
  }

  /** The form at a tempo. */
  gridAt(bpm: Bpm): FormGrid {
    const known = this.#grids.get(bpm);
    if (known) return known;
    const grid = askedGrid({ ...this.#asked, bpm });
    this.#grids.set(bpm, grid);
    return grid;
  }

  /** One time through the form from here. @returns the loop's number. */
  startLoop(startSeconds: number, bpm: Bpm): number {
    this.stop(startSeconds);
    const grid = this.gridAt(bpm);
    for (let formBar = 0; formBar < grid.bars.length; formBar += 1) {
      this.#add(startSeconds + formBar * grid.barSeconds, bpm, formBar);
    }
    return this.#loops - 1;
  }

  /** The next bar of the form begins here. */
  bar(startSeconds: number, bpm: Bpm): void {
    this.stop(startSeconds);
    const last = this.#bars.at(-1);
    const next = last ? last.formBar + 1 : 0;
    this.#add(startSeconds, bpm, next % this.gridAt(bpm).bars.length);
  }

  /** Forgets what was announced from here on. */
  stop(atSeconds: number): void {
    while ((this.#bars.at(-1)?.startSeconds ?? Number.NEGATIVE_INFINITY) > atSeconds - SAME_SECONDS) {
      const gone = this.#bars.pop();
      this.#places.pop();
      if (gone?.formBar === 0) this.#loops -= 1;
    }
  }

  #add(startSeconds: number, bpm: Bpm, formBar: number): void {
    if (formBar === 0) this.#loops += 1;
    const { barSeconds, bars } = this.gridAt(bpm);
    const bar = { loop: this.#loops - 1, formBar, startSeconds, barSeconds, bpm };
    this.#bars.push(bar);
    this.#places.push(
      bars[formBar]!.strokes.map((expected) => {
        return { bar, expected, seconds: startSeconds + expected.position * barSeconds };
      }),
    );
  }

  /** What is written in the bars that lie between two moments, in order of time. @param lateSeconds added to all */
  placesBetween(fromSeconds: number, toSeconds: number, lateSeconds: number): readonly Place[] {
    const isIn = ({ startSeconds, barSeconds }: ClockBar) =>
      startSeconds >= fromSeconds && startSeconds + barSeconds <= toSeconds;
    return this.#bars
      .flatMap((bar, takeBar) =>
        isIn(bar)
          ? this.#places[takeBar]!.map(({ expected, seconds }): Place => {
              const at = seconds + lateSeconds;
              return { expected, takeBar, idealSeconds: at, likelySeconds: at };
            })
          : [],
      )
      .toSorted((a, b) => a.likelySeconds - b.likelySeconds);
  }

  /** How many bars are over at a moment. */
  over(seconds: number): number {
    const open = this.#bars.findIndex(({ startSeconds, barSeconds }) => startSeconds + barSeconds > seconds);
    return open < 0 ? this.#bars.length : open;
  }

  /**
   * The place nearest to a moment at which a voice is written, or null where none is within reach; always the same
   * object for the same place.
   */
  nearest(voice: Voice, seconds: number): ClockPlace | null {
    let best: ClockPlace | null = null;
    let bestDistance = Number.POSITIVE_INFINITY;
    for (let i = this.#bars.length - 1; i >= 0; i -= 1) {
      const bar = this.#bars[i]!;
      const reach = toleranceSeconds(this.gridAt(bar.bpm), bar.barSeconds);
      if (bar.startSeconds - reach > seconds) continue;
      if (bar.startSeconds + bar.barSeconds + reach < seconds) break;
      for (const place of this.#places[i]!) {
        const distance = Math.abs(seconds - place.seconds);
        if (place.expected.voice !== voice || distance > reach || distance >= bestDistance) continue;
        best = place;
        bestDistance = distance;
      }
    }
    return best;
  }

  /** Whether a roll or a sweep is held at a moment: what a hand does there may be part of it. */
  isHeld(seconds: number): boolean {
    return this.#bars.some(({ startSeconds, barSeconds, formBar, bpm }) =>
      this.gridAt(bpm).bars[formBar]?.held.some(
        ({ from, to }) =>
          seconds > startSeconds + from * barSeconds && seconds < startSeconds + to * barSeconds,
      ),
    );
  }
}
