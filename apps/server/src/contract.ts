/**
 * What the desk and its server say to each other, as JSON over HTTP.
 *
 * Conventions: times are ISO 8601 in UTC; a revision counts every change of a lesson from 1; a step is a place in
 * the lesson's history of texts from 0, so undo goes to `step - 1` and redo to `step + 1`.
 */

/** A lesson as it is kept: its text is the only truth about it. */
export interface StoredLesson {
  readonly id: string;
  readonly text: string;
  readonly revision: number;
  readonly step: number;
  /** Last step that redo can reach. */
  readonly lastStep: number;
  readonly createdAt: string;
  readonly updatedAt: string;
}

/** How a text came about: a new step, or a move along the history. */
export type SaveCause = 'edit' | 'undo' | 'redo';

/** Asks to keep a text. Refused with {@link Conflict} when `revision` is not the one kept. */
export interface SaveRequest {
  readonly text: string;
  /** The revision that this text was made from. */
  readonly revision: number;
  readonly cause: SaveCause;
}

/** The lesson was changed by someone else since: nothing was written. */
export interface Conflict {
  readonly code: 'conflict';
  readonly message: string;
  readonly kept: StoredLesson;
}

/** Asks for a new lesson with this text. */
export interface CreateRequest {
  readonly text: string;
}

/** One text of a lesson's history. */
export interface HistoryStep {
  readonly step: number;
  readonly text: string;
}

/** What a teacher set a student to practise. The exercise is named by what it plays, so that it outlives its number. */
export interface StoredAssignment {
  /** Id of the lesson. */
  readonly lesson: string;
  readonly exercise: string;
  /** Stands in every plan until it is taken out. */
  readonly pinned: boolean;
  readonly note: string | null;
}

/** A student as they are kept. */
export interface StoredStudent {
  readonly id: string;
  readonly name: string;
  /** Text of the practice log, letter for letter; empty before anything was taken in. */
  readonly log: string;
  readonly assignments: readonly StoredAssignment[];
  readonly revision: number;
  readonly createdAt: string;
  readonly updatedAt: string;
}

/** What can be changed about a student. */
export type StudentContent = Pick<StoredStudent, 'name' | 'log' | 'assignments'>;

/** Asks to keep a student. Refused with {@link StudentConflict} when `revision` is not the one kept. */
export interface SaveStudentRequest extends StudentContent {
  readonly revision: number;
}

/** The student was changed elsewhere since: nothing was written. */
export interface StudentConflict {
  readonly code: 'conflict';
  readonly message: string;
  readonly kept: StoredStudent;
}

/** Codes of refusals; the desk has words for each in its catalogue. */
export type RefusalCode =
  | 'no-such-lesson'
  | 'no-such-step'
  | 'no-such-student'
  | 'bad-request'
  | 'too-large'
  | 'foreign-origin'
  | 'unreadable-file'
  | 'lesson-has-errors'
  | 'internal';

/** Any refusal but a conflict. */
export interface Refusal {
  readonly code: RefusalCode;
  readonly message: string;
}

/** The pages of a lesson as it is kept at a revision. */
export interface SheetPages {
  readonly revision: number;
  /** An SVG document for each page. */
  readonly pages: readonly string[];
}
