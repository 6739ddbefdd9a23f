/** Days as the reader writes them: the year is left out where it is this one. */

/**
 * The day of a moment.
 * @param moment ISO 8601
 * @param tag of the reader's language (BCP 47)
 * @param month how much of its name is written
 * @param now the moment that is now
 */
export function daySaid(
  moment: string,
  tag: string,
  month: 'short' | 'long',
  now: Date = new Date(),
): string {
  const date = new Date(moment);
  const year = date.getFullYear() === now.getFullYear() ? {} : { year: 'numeric' as const };
  return date.toLocaleDateString(tag, { day: 'numeric', month, ...year });
}
