/**
 * Problems in a binary file: at which byte, what was found there, what would be right.
 *
 * Conventions: offsets count bytes from 0, the start of the file; a problem of the whole file has none.
 */
export interface ByteProblem {
  /** Stable name of the kind of problem, e.g. `midi-truncated`. */
  readonly code: string;
  readonly severity: 'error' | 'warning';
  /** Offset of the byte it is about, or null where it is about the file as a whole. */
  readonly offset: number | null;
  readonly found: string;
  readonly expected: string;
  /** A likely repair as a full clause, or null. */
  readonly repair: string | null;
}

/**
 * One line of text for a person.
 * For example: formatByteProblem('take.mid', problem) // 'take.mid: byte 14: error: found …, expected … (…)'
 */
export function formatByteProblem(file: string, problem: ByteProblem): string {
  const repair = problem.repair ? ` (${problem.repair})` : '';
  const place = problem.offset === null ? file : `${file}: byte ${problem.offset}`;
  const said = `found ${problem.found}, expected ${problem.expected}`;
  return `${place}: ${problem.severity}: ${said}${repair}`;
}
