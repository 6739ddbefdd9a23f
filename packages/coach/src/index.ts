export * from './apart/apart.ts';
export * from './care/advice.ts';
export * from './care/exposure.ts';
export * from './care/from-log.ts';
export {
  type FittedWeight,
  fitWeights,
  sureWeights,
  type Trial,
  tellsBetter,
  type WeightFit,
} from './difficulty/fit-weights.ts';
export { trialsIn } from './difficulty/trials.ts';
export type * from './fact.ts';
export * from './ladder/hands-free.ts';
export * from './ladder/ladder.ts';
export * from './log/key.ts';
export type { LogFact } from './log/log-fact.ts';
export * from './log/merge.ts';
export { printPracticeLog } from './log/print-log.ts';
export { type LogReading, parsePracticeLog, readPracticeEntry } from './log/read-log.ts';
export { type LogRowText, logOfRow, logOfRows, TAKE_DEVICE, withoutDoubles } from './log/rows.ts';
export type { Evidence } from './mastery/evidence.ts';
export {
  type ExerciseStanding,
  FIRM_CONFIDENCE,
  type Standing,
  standExercises,
} from './mastery/exercises.ts';
export * from './mastery/identity.ts';
export * from './mastery/shelf.ts';
export { type Skill, type SkillUse, skillsInLoop, skillsOf } from './mastery/skills.ts';
export type { SoreSpot } from './mastery/sore.ts';
export { type SkillStanding, standSkills } from './mastery/standings.ts';
export { aimBpmOf } from './plan/aim.ts';
export { handsFreeItems } from './plan/hands-free-items.ts';
export { resumeBpm } from './plan/lay-out.ts';
export { planPractice } from './plan/plan.ts';
export * from './plan/plan-item.ts';
export * from './plan/progress.ts';
export { type CoachVoice, isCoachSilent } from './plan/silent.ts';
export * from './plan/student-plan.ts';
export * from './spacing/card.ts';
export * from './spacing/grade.ts';
export { type DraftItem, draftNext } from './teacher/draft.ts';
export { type Suggestion, suggestNext } from './teacher/next.ts';
export { type Pass, passEntry } from './teacher/pass.ts';
export * from './teacher/summary.ts';
export { type Passed, type PracticeWeek, passedSince, practiceWeeks } from './teacher/weeks.ts';
export * from './time/moment.ts';
