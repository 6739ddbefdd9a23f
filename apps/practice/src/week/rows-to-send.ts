/** What of a log has not gone to the teacher yet. */
import { type PracticeEntry, type PracticeLog, textMark } from '@shedbook/core';

/** Marks of what was sent, by the id of an entry. */
export type Marks = Readonly<Record<string, string>>;

/** A row for the teacher's desk, and by what it is known. */
export interface RowToSend {
  readonly id: string;
  readonly text: string;
  readonly mark: string;
}

/** Characters that go at once, and rows. */
const MOST_CHARACTERS = 1_000_000;
const MOST_ROWS = 500;

function rowOf(id: string, value: unknown): RowToSend {
  const text = JSON.stringify(value);
  return { id, text, mark: textMark(text) };
}

/** Marks of entries that were looked at before: an entry never changes, and a year of them is five million characters. */
const marks = new WeakMap<PracticeEntry, string>();

function markOf(entry: PracticeEntry): string {
  const known = marks.get(entry) ?? rowOf(entry.id, entry).mark;
  marks.set(entry, known);
  return known;
}

/** Rows that were not sent yet, or are another than when they were; the eldest first. */
export function rowsToSend({ entries, removed }: PracticeLog, sent: Marks): readonly RowToSend[] {
  const own = entries.filter(({ heardBy }) => heardBy !== 'teacher');
  const gone = removed.map((id) => rowOf(id, { removed: id }));
  return [
    ...own.filter((entry) => sent[entry.id] !== markOf(entry)).map((entry) => rowOf(entry.id, entry)),
    ...gone.filter(({ id, mark }) => sent[id] !== mark),
  ];
}

/** The first rows, as many as go at once: at least one. */
export function firstPart(rows: readonly RowToSend[]): readonly RowToSend[] {
  let characters = 0;
  const past = rows.findIndex(({ text }, index) => {
    characters += text.length;
    return index > 0 && (index >= MOST_ROWS || characters > MOST_CHARACTERS);
  });
  return past < 0 ? rows : rows.slice(0, past);
}
