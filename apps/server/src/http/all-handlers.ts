/** What answers the table of routes, put together. */

import type { MediaStore } from '../store/media-files.ts';
import { type BackupParts, backupHandlers } from './backup-handlers.ts';
import { type BookParts, bookHandlers } from './book-handlers.ts';
import { type ChangeParts, changeHandlers } from './change-handlers.ts';
import { type DemonstrationParts, demonstrationHandlers } from './demonstration-handlers.ts';
import { type FileParts, fileHandlers } from './file-handlers.ts';
import { type FilmParts, filmHandlers } from './film-handlers.ts';
import { type HourParts, hourHandlers } from './hour-handlers.ts';
import { type JournalParts, journalHandlers } from './journal-handlers.ts';
import { lessonHandlers } from './lesson-handlers.ts';
import { type LinkParts, linkHandlers } from './link-handlers.ts';
import { mediaHandlers } from './media-handlers.ts';
import { passkeyHandlers } from './passkey-handlers.ts';
import { type ProgressParts, progressHandlers } from './progress-handlers.ts';
import { type SessionParts, sessionHandlers } from './session-handlers.ts';
import { studentHandlers } from './student-handlers.ts';
import { type TakeParts, takeHandlers } from './take-handlers.ts';
import { type TeacherParts, teacherHandlers } from './teacher-handlers.ts';
import { type WeekParts, weekHandlers } from './week-handlers.ts';

/** What the answers are made with. */
export interface HandlerParts
  extends BackupParts,
    BookParts,
    ChangeParts,
    DemonstrationParts,
    FileParts,
    FilmParts,
    HourParts,
    JournalParts,
    LinkParts,
    ProgressParts,
    SessionParts,
    TakeParts,
    TeacherParts,
    WeekParts {
  readonly media: MediaStore;
}

/** Answers every route. */
export function allHandlers(parts: HandlerParts) {
  const { store, students, sheets } = parts;
  return {
    ...lessonHandlers(store, students, sheets),
    ...studentHandlers(students),
    ...backupHandlers(parts),
    ...bookHandlers(parts),
    ...changeHandlers(parts),
    ...demonstrationHandlers(parts),
    ...fileHandlers(parts),
    ...filmHandlers(parts),
    ...hourHandlers(parts),
    ...journalHandlers(parts),
    ...linkHandlers(parts),
    ...mediaHandlers(parts),
    ...passkeyHandlers(parts),
    ...progressHandlers(parts),
    ...sessionHandlers(parts),
    ...takeHandlers(parts),
    ...teacherHandlers(parts),
    ...weekHandlers(parts),
  };
}
