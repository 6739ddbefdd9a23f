export { readAssignments, type StoredAssignment } from './assignment.ts';
export { type BookRequest, MOST_CHAPTERS, type StoredBook, type WrittenBook } from './books.ts';
export type { KeptDemonstration } from './demonstrations.ts';
export {
  FILM_PARTS,
  type FilmPart,
  type FilmPlan,
  type FilmState,
  type FilmWish,
  type HeardPerformance,
  PART_BYTES,
  PERFORMANCE_BYTES,
  type PerformanceWish,
  type SentFilm,
} from './films.ts';
export { folded, wordsSought } from './folded.ts';
export {
  ATTENDANCES,
  type Attendance,
  type HourList,
  type HourRequest,
  type SetListRequest,
  type StoredHour,
} from './hours.ts';
export {
  DEEDS,
  type Deed,
  DOERS,
  type Doer,
  JOURNAL_PAGE,
  type JournalEntry,
  type JournalPage,
  KEEPING_WEEKS,
  type Keeping,
  type KeptTakes,
} from './keeping.ts';
export type { PasskeyAnswer, StoredPasskey } from './passkeys.ts';
export {
  COMMON_REFUSALS,
  REFUSALS,
  type Refusal,
  type RefusalCode,
  type RefusalValues,
  readRefusal,
  refusal,
} from './refusal.ts';
export {
  type Answer,
  type AnswerOf,
  type AskedOf,
  addressOf,
  type BodyOf,
  isOpen,
  type PlacesOf,
  type Route,
  type SentFile,
  type Whose,
} from './route.ts';
export { type CodeOf, ROUTE_NAMES, ROUTES, type RouteName, type RouteNamed } from './routes.ts';
export {
  type BinContent,
  type CoachSetting,
  type DamagedLesson,
  type HistoryStep,
  type Inbox,
  type LessonFiling,
  type LessonSummary,
  LOG_ROW_CHARACTERS,
  type LogPage,
  type LogRequest,
  type LogTakenIn,
  type MadeLink,
  type MinorityRequest,
  mayRecord,
  type NamesInUse,
  type Receipt,
  ROSTER_PAGE,
  type RosterName,
  type RosterPage,
  type SaveCause,
  type SaveRequest,
  type SaveStudentRequest,
  type Session,
  type SheetPages,
  type StoredLesson,
  type StoredLink,
  type StoredStudent,
  type StudentContent,
  type Week,
} from './stored.ts';
export {
  type BarMark,
  type SentTake,
  type SpokenNote,
  TAKE_BYTES,
  type TakeFacts,
  type TakeOpinion,
  takeFacts,
  VOICE_BYTES,
} from './takes.ts';
export {
  FIRST_TEACHER,
  type ListedTeacher,
  LONGEST_NAME,
  LONGEST_PASSPHRASE,
  ROLES,
  type SchoolStudent,
  SHORTEST_PASSPHRASE,
  type Teacher,
  type WrittenTeacher,
} from './teachers.ts';
