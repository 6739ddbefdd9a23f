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
  type PlacesOf,
  type Route,
  type SentFile,
} from './route.ts';
export { type CodeOf, ROUTE_NAMES, ROUTES, type RouteName, type RouteNamed } from './routes.ts';
export {
  type BinContent,
  type HistoryStep,
  type LessonFiling,
  type LessonSummary,
  LOG_ROW_CHARACTERS,
  type LogPage,
  type LogRequest,
  type NamesInUse,
  type SaveCause,
  type SaveRequest,
  type SaveStudentRequest,
  type SheetPages,
  type StoredAssignment,
  type StoredLesson,
  type StoredStudent,
  type StudentContent,
} from './stored.ts';
