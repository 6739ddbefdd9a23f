/** Reading the text of a feel. */
import type { Feel } from '../feel/feel.ts';

/** Name of a feel in lesson files: every kind but ratios, and the ratio that drummers name. */
export type FeelName = Exclude<Feel['kind'], 'ratio'> | 'triplet';

/** What each name says. */
export const NAMED_FEELS: Readonly<Record<FeelName, Feel>> = {
  even: { kind: 'even' },
  triplet: { kind: 'ratio', ratio: 2, of: 'eighths' },
  'by tempo': { kind: 'by tempo' },
};

/** The names, as they are offered. */
export const FEEL_NAMES = Object.keys(NAMED_FEELS) as readonly FeelName[];

/** Whether the text of a feel is a name, and no ratio. */
export function isFeelName(text: string): text is FeelName {
  return Object.hasOwn(NAMED_FEELS, text);
}

/** The largest swing ratio that is a feel: past it the short note is a grace note. */
export const MAX_SWING_RATIO = 4;

/**
 * Reads a feel.
 * @example readFeel('1.8:1') // { kind: 'ratio', ratio: 1.8, of: 'eighths' }
 * @returns the feel, or null when the text is not one.
 */
export function readFeel(text: string): Feel | null {
  const plain = text.trim().toLowerCase();
  if (isFeelName(plain)) return NAMED_FEELS[plain];
  const match = /^(\d+(?:\.\d+)?)\s*:\s*(\d+(?:\.\d+)?)(?:\s+(eighths|sixteenths))?$/.exec(plain);
  if (!match) return null;
  const ratio = Number(match[1]) / Number(match[2]);
  if (!(ratio >= 1 && ratio <= MAX_SWING_RATIO)) return null;
  return { kind: 'ratio', ratio, of: match[3] === 'sixteenths' ? 'sixteenths' : 'eighths' };
}

/** The text of a feel, as a lesson file has it. */
export function formatFeel(feel: Feel): string {
  if (feel.kind !== 'ratio') return feel.kind;
  if (feel.of === 'eighths' && feel.ratio === 2) return 'triplet';
  const ratio = Number(feel.ratio.toFixed(4));
  return feel.of === 'eighths' ? `${ratio}:1` : `${ratio}:1 sixteenths`;
}
