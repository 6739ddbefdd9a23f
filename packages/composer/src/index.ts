export * from './compose.ts';
export * from './grade.ts';
export { type Company, type Ground, groundOf, readGround } from './ground.ts';
export { PARTS, type PartFacts, type PartName } from './parts.data.ts';
export type { CellMove, ComposeReport, CoverageReport, DifficultyReport, ReportedBar } from './report.ts';
