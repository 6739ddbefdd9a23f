/** The clock of this device, as logs write it. */

function two(n: number): string {
  return String(n).padStart(2, '0');
}

/**
 * A date as a moment of the log: local time with its offset from UTC.
 * Source: ISO 8601-1:2019, as in the coach's `readMoment`.
 * @param offsetMinutes what is added to UTC to give local time
 */
export function momentFrom(date: Date, offsetMinutes = -date.getTimezoneOffset()): string {
  const local = new Date(date.getTime() + offsetMinutes * 60_000).toISOString().slice(0, 19);
  const away = Math.abs(offsetMinutes);
  return `${local}${offsetMinutes < 0 ? '-' : '+'}${two(Math.floor(away / 60))}:${two(away % 60)}`;
}

/** Now, as a moment of the log. */
export function momentNow(): string {
  return momentFrom(new Date());
}
