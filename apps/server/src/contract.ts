/**
 * What the studio and its server say to each other, as JSON over HTTP.
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

/** Codes of refusals; the studio has words for each in its catalogue. */
export type RefusalCode =
  | 'no-such-lesson'
  | 'no-such-step'
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
