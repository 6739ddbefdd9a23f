/** The tables of the store. Times are ISO 8601 texts in UTC. */
import type { StoredStudent } from '@shedbook/routes';
import type { ColumnType } from 'kysely';

interface LessonsTable {
  readonly id: ColumnType<string, string, never>;
  readonly revision: number;
  readonly step: number;
  readonly last_step: number;
  readonly created_at: ColumnType<string, string, never>;
  readonly updated_at: string;
  /** When it was thrown away, or null. */
  readonly deleted_at: string | null;
}

interface StepsTable {
  readonly lesson_id: string;
  readonly step: number;
  readonly text: string;
}

interface StudentsTable {
  readonly id: ColumnType<string, string, never>;
  readonly name: string;
  readonly log: string;
  /** JSON: a list of assignments. */
  readonly assignments: string;
  readonly level: StoredStudent['level'];
  readonly revision: number;
  readonly created_at: ColumnType<string, string, never>;
  readonly updated_at: string;
  /** When they were taken off the roster, or null. */
  readonly deleted_at: string | null;
}

interface NotesTable {
  readonly key: string;
  readonly value: string;
}

/** Every table by name. */
export interface Tables {
  readonly lessons: LessonsTable;
  readonly steps: StepsTable;
  /** Small facts about the store itself, such as which demo lessons it has been given. */
  readonly notes: NotesTable;
  readonly students: StudentsTable;
}
