/** A log on its way from the thread that reads it to the page. */
import { EMPTY_LOG, type LogReading, parsePracticeLog } from '@shedbook/coach';
import type { PracticeLog } from '@shedbook/core';

/** What of a log could be read. */
export interface LogRead {
  /** The entries as JSON, so that the page can take them apart piece by piece; null where nothing can be read. */
  readonly rows: readonly string[] | null;
  readonly removed: PracticeLog['removed'];
  /** How many problems there are, and the first of them. */
  readonly problemCount: number;
  readonly problems: LogReading['problems'];
}

/** Problems that are told: nobody reads more of them. */
const MOST_PROBLEMS = 5;

/** Reads the text of a log; for a thread. @param name of the file, for messages */
export function readLogText(text: string, name: string): LogRead {
  const { soundEntries, problems } = parsePracticeLog(text, name);
  return {
    rows: soundEntries?.entries.map((entry) => JSON.stringify(entry)) ?? null,
    removed: (soundEntries ?? EMPTY_LOG).removed,
    problemCount: problems.length,
    problems: problems.slice(0, MOST_PROBLEMS),
  };
}
