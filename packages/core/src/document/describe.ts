/** What was found, in words short enough for one line of a message. */

const LONGEST = 40;

function quoted(text: string): string {
  const line = text.replaceAll(/\s+/g, ' ');
  return line.length > LONGEST ? `"${line.slice(0, LONGEST - 1)}…"` : `"${line}"`;
}

/** A value as people would name it: `nothing`, `"abc"`, `12`, `a list`, `a map`. */
export function describeValue(value: unknown): string {
  if (value === undefined || value === null) return 'nothing';
  if (typeof value === 'string') return value.trim() === '' ? 'an empty text' : quoted(value);
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'a list';
  if (typeof value === 'object') return 'a map';
  return String(value);
}
