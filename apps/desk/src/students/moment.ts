/** Moments as practice logs write them: local time with its offset from UTC. */

function two(n: number): string {
  return String(Math.abs(n)).padStart(2, '0');
}

/**
 * A date as a moment, in the time zone of this computer.
 * @example localMoment(new Date(0)).length // 25
 */
export function localMoment(date: Date): string {
  const offset = -date.getTimezoneOffset();
  const local = new Date(date.getTime() + offset * 60_000).toISOString().slice(0, 19);
  const hours = Math.trunc(Math.abs(offset) / 60);
  return `${local}${offset < 0 ? '-' : '+'}${two(hours)}:${two(Math.abs(offset) % 60)}`;
}
