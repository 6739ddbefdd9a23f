export type { CellMove } from './cell-move.ts';
export { type ComposeOptions, compose, keptNumbers, patternTexts } from './compose.ts';
export { answeringLevel, answeringVoices, composeDialogue } from './dialogue.ts';
export * from './difference-fact.ts';
export * from './explain.ts';
export { FIGURES, type Figure, type FigureName } from './figures.data.ts';
export { composeGoal, type GoalPage } from './goal.ts';
export * from './grade.ts';
export { type Company, type Ground, groundOf, readGround } from './ground.ts';
export { withHeadings } from './heading.ts';
export type { IdeaFact, ThemeFact, ThemePartFact } from './idea-fact.ts';
export { barsNear, DIRECTIONS, type Direction, type NearBar } from './like.ts';
export type { MoveFact, NoteFact } from './note-fact.ts';
export { type Composition, withComping } from './page.ts';
export { PARTS, type PartName } from './parts.data.ts';
export { type ArrangedTogether, arrangeAll, type Pass } from './pass/arrange.ts';
export type { PassFact, PassNoteFact, PassPartFact } from './pass/pass-fact.ts';
export * from './pass/rules.data.ts';
export { PHRASE_BARS } from './phrase-grammar.ts';
export type { PreparationFact } from './preparation/preparation-fact.ts';
export { type SayPreparation, withPreparation } from './preparation/preparation-text.ts';
export { type PreparationStep, partsOfBeats, preparationSteps, type StepName } from './preparation/steps.ts';
export * from './reason-fact.ts';
export type {
  ComposeReport,
  CoverageReport,
  DifficultyReport,
  ReportedBar,
  ReportedBlock,
} from './report.ts';
export { exerciseText } from './report.ts';
export { composeReview, REVIEW_COUNT, type ReviewedExercise, type ReviewOptions } from './review.ts';
export { composeTerm, type TermOptions, type TermPage, termFacts } from './term.ts';
export type { CellFact, TermFact } from './term-fact.ts';
export { type SayTerm, type TermPlace, withTerm } from './term-text.ts';
export type { VariationFact } from './variation-fact.ts';
export { type Variation, variationsOf } from './variations.ts';
export { composeWeakMove, NoSuchCellError, type WeakMove } from './weak-move.ts';
