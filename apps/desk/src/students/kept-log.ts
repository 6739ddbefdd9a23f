/**
 * A student's practice as the desk keeps it: rows, each read by itself, so that one that cannot be read costs itself
 * alone and stays as it came.
 */
import { logOfRow, logOfRows } from '@shedbook/coach';
import { type FullReport, jsonIn, PRACTICE_LOG_VERSION, type PracticeLog } from '@shedbook/core';
import type { LogPage } from '@shedbook/routes';

/** A row as it is kept. */
export type LogRow = LogPage['rows'][number];

/** The report of a recording that was heard on the desk, beside the entry of the log that it is of. */
export interface KeptReport {
  /** Id of the entry. */
  readonly of: string;
  readonly report: FullReport;
}

/** What is kept of a student's practice. */
export interface KeptLog {
  readonly log: PracticeLog;
  /** Rows that cannot be read, as they came; they count for nothing. */
  readonly aside: readonly LogRow[];
  readonly reports: readonly KeptReport[];
}

/** What was taken in at one time. */
export interface Taking {
  readonly takenAt: string;
  /** How many rows came. */
  readonly rows: number;
}

/** The report that a row keeps; null where it keeps something else. */
function reportOfRow({ version, text, isSound }: LogRow): KeptReport | null {
  if (!isSound || version !== PRACTICE_LOG_VERSION) return null;
  const { of, report } = (jsonIn(text) ?? {}) as Partial<KeptReport>;
  return typeof of === 'string' && Array.isArray(report?.strokes) && report.asked ? { of, report } : null;
}

/** Rows by when they were taken in, last first. */
export function takingsOf(rows: readonly LogRow[]): readonly Taking[] {
  const counts = new Map<string, number>();
  for (const { takenAt } of rows.filter((row) => !reportOfRow(row)))
    counts.set(takenAt, (counts.get(takenAt) ?? 0) + 1);
  const takings = [...counts].map(([takenAt, count]) => ({ takenAt, rows: count }));
  return takings.toSorted((a, b) => (a.takenAt < b.takenAt ? 1 : -1));
}

/** The log that rows make together, whatever their order, and what of them cannot be read. */
export function joinRows(rows: readonly LogRow[]): KeptLog {
  const reports = rows.flatMap((row) => reportOfRow(row) ?? []);
  const others = rows.filter((row) => !reportOfRow(row));
  const aside = others.filter((row) => !logOfRow(row));
  return { log: logOfRows(others), aside, reports };
}

/** The rows that a log is kept in: one for each entry, each thing that was taken out and each report. */
export function rowsOf(
  { entries, removed }: PracticeLog,
  reports: readonly KeptReport[] = [],
): readonly string[] {
  return [
    ...entries.map((entry) => JSON.stringify(entry)),
    ...removed.map((id) => JSON.stringify({ removed: id })),
    ...reports.map((report) => JSON.stringify(report)),
  ];
}

/** Rows in parts of at most so many characters each, so that none is more than is sent at once. */
export function inParts(rows: readonly string[], mostCharacters: number): readonly (readonly string[])[] {
  const parts: string[][] = [];
  let room = 0;
  for (const row of rows) {
    const last = parts.at(-1);
    room -= row.length;
    if (last && room >= 0) last.push(row);
    else {
      parts.push([row]);
      room = mostCharacters - row.length;
    }
  }
  return parts;
}

/** The text of a file with what cannot be read, row by row. */
export function asideText(aside: readonly LogRow[]): string {
  return `${JSON.stringify(
    aside.map(({ version, text }) => ({ version, row: jsonIn(text) ?? text })),
    null,
    2,
  )}\n`;
}
