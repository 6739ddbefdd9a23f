/** Paths to the fields of a document. */

/** Keys and indices (from 0) from the root to a field. */
export type FieldPath = readonly (string | number)[];

/**
 * A path as people read it, indices from 1.
 * @example formatPath(['exercises', 2, 'sticking']) // 'exercises[3].sticking'
 */
export function formatPath(path: FieldPath): string {
  return path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step + 1}]`;
    return text === '' ? step : `${text}.${step}`;
  }, '');
}
