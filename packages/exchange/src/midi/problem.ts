/**
 * Problems in a binary file: at which byte, what was found there, what would be right.
 *
 * Conventions: offsets count bytes from 0, the start of the file.
 */
export interface ByteProblem {
  /** Stable name of the kind of problem, e.g. `midi-truncated`. */
  readonly code: string;
  readonly severity: 'error' | 'warning';
  /** Offset of the byte it is about. */
  readonly offset: number;
  readonly found: string;
  readonly expected: string;
  /** A likely repair as a full clause, or null. */
  readonly repair: string | null;
}

/**
 * One line of text for a person.
 * @example formatByteProblem('take.mid', problem) // 'take.mid: byte 14: error: found …, expected … (…)'
 */
export function formatByteProblem(file: string, problem: ByteProblem): string {
  const repair = problem.repair ? ` (${problem.repair})` : '';
  const said = `found ${problem.found}, expected ${problem.expected}`;
  return `${file}: byte ${problem.offset}: ${problem.severity}: ${said}${repair}`;
}
