/**
 * The events of a take, packed: an hour of playing is some ten megabytes.
 *
 * Conventions: every number of an event is kept in steps of 1/256 (of a logit, a millisecond, a decibel or a
 * description's unit), far finer than anything that is decided from it, and within ±128; times are exact.
 */
import { HEARD_COUNT } from '../network/heard-voices.data.ts';
import { DESCRIPTION } from '../network/network.ts';
import { ENERGY_BANDS } from './energy.ts';
import { type HeardEvent, NO_ENERGY } from './events.ts';

const STEP = 1 / 256;
const MOST = 32_767;
const ENERGY_AT = 3 * HEARD_COUNT + DESCRIPTION;
const ROW = ENERGY_AT + 2 * ENERGY_BANDS;
/** Stands for an energy that was not measured. */
const NONE = -MOST - 1;
/** Events in one piece of memory. */
const PIECE = 1024;

interface Piece {
  readonly times: Float64Array;
  readonly rows: Int16Array;
}

/** Events in order of time. */
export class EventLog {
  readonly #pieces: Piece[] = [];
  #length = 0;

  /** How many there are. */
  get length(): number {
    return this.#length;
  }

  /** Keeps an event. */
  push(event: HeardEvent): void {
    const index = this.#length % PIECE;
    if (index === 0) {
      this.#pieces.push({ times: new Float64Array(PIECE), rows: new Int16Array(PIECE * ROW) });
    }
    const { times, rows } = this.#pieces.at(-1)!;
    times[index] = event.timeSeconds;
    let to = index * ROW;
    for (const part of [event.presence, event.offsetMs, event.levelDb, event.description, event.energyDb]) {
      for (const value of part) {
        rows[to] = Math.max(-MOST, Math.min(MOST, Math.round(value / STEP)));
        to += 1;
      }
    }
    if (event.energyDb.length === 0) rows[to] = NONE;
    this.#length += 1;
  }

  /** The events from a time to another, the end not included; all when left out. */
  between(
    fromSeconds = Number.NEGATIVE_INFINITY,
    toSeconds = Number.POSITIVE_INFINITY,
  ): readonly HeardEvent[] {
    const events: HeardEvent[] = [];
    for (let i = 0; i < this.#length; i += 1) {
      const { times, rows } = this.#pieces[Math.floor(i / PIECE)]!;
      const timeSeconds = times[i % PIECE]!;
      if (timeSeconds < fromSeconds || timeSeconds >= toSeconds) continue;
      events.push(unpack(timeSeconds, rows, (i % PIECE) * ROW));
    }
    return events;
  }
}

function unpack(timeSeconds: number, rows: Int16Array, from: number): HeardEvent {
  const row = new Float32Array(ROW);
  for (let i = 0; i < ROW; i += 1) row[i] = rows[from + i]! * STEP;
  const part = (start: number, length: number) => row.subarray(start, start + length);
  return {
    timeSeconds,
    presence: part(0, HEARD_COUNT),
    offsetMs: part(HEARD_COUNT, HEARD_COUNT),
    levelDb: part(2 * HEARD_COUNT, HEARD_COUNT),
    description: part(3 * HEARD_COUNT, DESCRIPTION),
    energyDb: rows[from + ENERGY_AT] === NONE ? NO_ENERGY : part(ENERGY_AT, 2 * ENERGY_BANDS),
  };
}
