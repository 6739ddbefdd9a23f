/** Writing a practice log as text; apart from reading, so that a page that only writes has no reader to fetch. */
import type { PracticeLog } from '@shedbook/core';

/** The text of an exported practice log: JSON with two spaces of indentation, keys in the order of the types. */
export function printPracticeLog(log: PracticeLog): string {
  return `${JSON.stringify(log, null, 2)}\n`;
}
