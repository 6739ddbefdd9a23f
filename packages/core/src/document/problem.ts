/**
 * Problems in what a person wrote: where, what was found, what would be right.
 *
 * Conventions: lines and columns from 1; a column counts UTF-16 code units.
 */
export interface InputProblem {
  /** Stable name of the kind of problem, e.g. `unknown-key`. */
  readonly code: string;
  readonly severity: 'error' | 'warning';
  readonly file: string;
  readonly line: number;
  readonly column: number;
  /** Path of the field, e.g. `groove.ride`, or '' for the whole file. */
  readonly path: string;
  readonly found: string;
  readonly expected: string;
  /** A likely repair as a full clause, or null. */
  readonly repair: string | null;
}

/** One line of text: `file:line:column: error: at PATH: found …, expected …; did you mean …?` */
export function formatProblem(problem: InputProblem): string {
  const place = `${problem.file}:${problem.line}:${problem.column}`;
  const field = problem.path === '' ? '' : `${problem.path}: `;
  const repair = problem.repair ? ` (${problem.repair})` : '';
  return `${place}: ${problem.severity}: ${field}found ${problem.found}, expected ${problem.expected}${repair}`;
}
