/** JSON that came from outside, or was kept: anything may stand there. */

/**
 * The value of a JSON text, whatever it is; null where the text is no JSON.
 * @example jsonIn('[1]') // [1]
 */
export function jsonIn(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return null;
  }
}
