/**
 * Moments and days of a log, without a clock: every "now" is an argument.
 *
 * Conventions: a moment is ISO 8601 local time with its offset (`2026-11-25T18:30:00+01:00`, `…Z`); a day is the
 * student's own calendar day, counted from 1970-01-01 as 0, or written `2026-11-25`.
 * Source: ISO 8601-1:2019, combined date and time of day with time shift.
 */

const MOMENT = /^(\d{4}-\d{2}-\d{2})T(\d{2}:\d{2}:\d{2}(?:\.\d{1,3})?)(Z|[+-]\d{2}:\d{2})$/;

const SECONDS_A_DAY = 86_400;

/** A moment taken apart. */
export interface Moment {
  /** Seconds since 1970-01-01T00:00Z. */
  readonly instantSeconds: number;
  /** Seconds since 1970-01-01T00:00 by the student's own clock. */
  readonly wallSeconds: number;
  /** Whole days since 1970-01-01 by the student's own calendar. */
  readonly day: number;
}

/** Whether a calendar day and time exist: parsing alone lets 31 February become March. */
function isReal(date: string, time: string): boolean {
  const milliseconds = Date.parse(`${date}T${time}Z`);
  return !Number.isNaN(milliseconds) && new Date(milliseconds).toISOString().startsWith(date);
}

/** Moments of logs that were taken apart before: a log is gone through again with every plan. */
const known = new Map<string, Moment>();

/** So many are remembered: more than a year of practice has. */
const MOST_KNOWN = 20_000;

function takeApart(text: string): Moment | null {
  const [, date, time, offset] = MOMENT.exec(text) ?? [];
  if (date === undefined || time === undefined || !isReal(date, time)) return null;
  const instant = Date.parse(text);
  if (Number.isNaN(instant) || offset === undefined) return null;
  const wallSeconds = Date.parse(`${date}T${time}Z`) / 1000;
  return { instantSeconds: instant / 1000, wallSeconds, day: Math.floor(wallSeconds / SECONDS_A_DAY) };
}

/**
 * The moment that a text names, or null when it is not one.
 * @example readMoment('1970-01-02T01:00:00+01:00')?.instantSeconds // 86400
 */
export function readMoment(text: string): Moment | null {
  const before = known.get(text);
  if (before) return before;
  const moment = takeApart(text);
  if (!moment) return null;
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(text, moment);
  return moment;
}

/**
 * The moment that a text names.
 * @throws RangeError when it is not one: use {@link readMoment} for a person's input.
 */
export function momentOf(text: string): Moment {
  const moment = readMoment(text);
  if (moment) return moment;
  throw new RangeError(`Internal error: "${text}" is not a moment such as 2026-11-25T18:30:00+01:00`);
}

/**
 * A day as people write it.
 * @example formatDay(1) // '1970-01-02'
 */
export function formatDay(day: number): string {
  return new Date(day * SECONDS_A_DAY * 1000).toISOString().slice(0, 10);
}
