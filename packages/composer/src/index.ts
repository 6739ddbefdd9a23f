export { type ComposeOptions, compose, patternTexts } from './compose.ts';
export * from './explain.ts';
export { FIGURES, type Figure, type FigureName } from './figures.data.ts';
export * from './grade.ts';
export { type Company, type Ground, groundOf, readGround } from './ground.ts';
export { withHeadings } from './heading.ts';
export type { IdeaFact, ThemeFact } from './idea-fact.ts';
export type { MoveFact, NoteFact } from './note-fact.ts';
export { orchestrate, SHARING_RULES, type SharingRule } from './orchestrate.ts';
export type { Composition } from './page.ts';
export { PARTS, type PartName } from './parts.data.ts';
export { composeQuestions } from './question-answer.ts';
export * from './reason-fact.ts';
export type {
  CellMove,
  ComposeReport,
  CoverageReport,
  DifficultyReport,
  ReportedBar,
  ReportedBlock,
} from './report.ts';
export { composeReview, type ReviewedExercise, type ReviewOptions } from './review.ts';
export { type Variation, type VariationKind, variationsOf } from './variations.ts';
export { composeWeakMove, type WeakMove } from './weak-move.ts';
