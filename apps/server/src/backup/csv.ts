/**
 * Tables for spreadsheets.
 *
 * Source: RFC 4180; the mark before the first line tells spreadsheets that it is UTF-8; OWASP, "CSV Injection": a cell
 * that begins like a formula is given an apostrophe, so that no name that a stranger chose is computed.
 */

/** A cell. */
export type Cell = string | number | null;

/** What stands before the first line. */
export const CSV_START = '\uFEFF';

function cellText(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return `${cell}`;
  const text = /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** A line with its end. */
export function csvLine(cells: readonly Cell[]): string {
  return `${cells.map(cellText).join(',')}\r\n`;
}
