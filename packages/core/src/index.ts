export { joinBytes } from './bytes.ts';
export {
  type Book,
  type BookReading,
  bookSchema,
  type Chapter,
  chapterLesson,
  isBookFile,
  parseBook,
} from './document/book.ts';
export type { ChangeFact } from './document/change-fact.ts';
export { type ChangedLesson, changeLesson, type LessonChange } from './document/change-lesson.ts';
export { divideOpening } from './document/divide.ts';
export { editLesson, sectionPath, setExercises } from './document/edit.ts';
export { setExerciseLevel } from './document/exercise-level.ts';
export { type FieldPath, formatPath } from './document/field-path.ts';
export { type LessonData, type Migration, migrate } from './document/migrate.ts';
export { nearest } from './document/nearest.ts';
export {
  type LessonProblem,
  type LessonReading,
  LONGEST_LESSON,
  parseLesson,
} from './document/parse.ts';
export { exerciseToData, formToData, lessonToData, printLesson } from './document/print.ts';
export * from './document/problem.ts';
export {
  FEEL_NAMES,
  type FeelName,
  formatFeel,
  isFeelName,
  NAMED_FEELS,
  readFeel,
} from './document/read-feel.ts';
export { LESSON_VERSION, lessonSchema, type RawLesson } from './document/schema.ts';
export type { Fact } from './fact.ts';
export * from './feel/feel.ts';
export * from './feel/swing.ts';
export * from './feel/timeline.ts';
export { loudnessOf } from './groove/loudness.ts';
export * from './groove/perform.ts';
export * from './groove/performance.ts';
export { barsOf, exerciseOf, isLooped, orderOf } from './groove/place.ts';
export { isFootShut } from './groove/shut-foot.ts';
export { grooveUnder, isSilenced } from './groove/silence.ts';
export * from './groove/stroke.ts';
export { groupBy } from './group-by.ts';
export { jsonIn } from './json.ts';
export * from './kit/drawn-sign.data.ts';
export * from './kit/dynamics.ts';
export * from './kit/example-sign.data.ts';
export * from './kit/how.data.ts';
export * from './kit/how-signs.data.ts';
export * from './kit/marked.data.ts';
export * from './kit/ornaments.data.ts';
export * from './kit/strike.ts';
export * from './kit/voice.ts';
export { canBePrepared, isClapped, playedOn } from './lesson/clapped.ts';
export * from './lesson/compose-settings.ts';
export { defaultForm, formIn, formNamed } from './lesson/default-form.ts';
export * from './lesson/defaults.ts';
export * from './lesson/example.ts';
export type * from './lesson/expression.ts';
export { feelSaid, isTriplet } from './lesson/feel-said.ts';
export { fileNameOf } from './lesson/file-name.ts';
export type * from './lesson/hand.ts';
export * from './lesson/handed.ts';
export * from './lesson/hands.ts';
export * from './lesson/how.ts';
export { exerciseKey, lessonKey, patternsName, surroundingsOf } from './lesson/identity.ts';
export { handsMirrored, inSetUp } from './lesson/in-set-up.ts';
export * from './lesson/lesson.ts';
export type { ExpectedFact, LessonFact } from './lesson/lesson-fact.ts';
export * from './lesson/media.data.ts';
export * from './lesson/media.ts';
export {
  exerciseLabel,
  firstNumbers,
  isFirstNumber,
  NUMBERINGS,
  type Numbering,
  readExerciseLabel,
} from './lesson/numbering.ts';
export { ontoPad, padLimbs, padVoice, SURFACES, type Surface } from './lesson/onto-pad.ts';
export * from './lesson/prose.ts';
export * from './lesson/repeats.ts';
export { saidAt, withinItsBars } from './lesson/said-at.ts';
export {
  exerciseBeside,
  inSection,
  sectionBefore,
  sectionNamed,
  sectionOf,
  sectionsOf,
} from './lesson/section.ts';
export * from './lesson/standard-formats.data.ts';
export { STARTER_NAMES, type StarterName } from './lesson/starter-names.data.ts';
export { starterText } from './lesson/starters.data.ts';
export { LESSON_STYLES, type LessonStyle, styleOf } from './lesson/style.ts';
export * from './lesson/tempo-range.ts';
export { leavesBars, turnedForm } from './lesson/turns.ts';
export * from './lesson/value-fact.ts';
export * from './lesson/written-out.ts';
export * from './notation/heads.data.ts';
export type { BarPart } from './notation/layers.ts';
export * from './notation/notate.ts';
export * from './notation/notation.ts';
export * from './notation/spell.ts';
export * from './notation/staff.data.ts';
export { type Assembled, assembleParts } from './placing/assemble.ts';
export type { Grid } from './placing/choose-beat.ts';
export type { PlacedStroke } from './placing/placed.ts';
export { type QuantisedPlace, quantise } from './placing/quantise.ts';
export * from './random.ts';
export * from './rhythm/cell.ts';
export * from './rhythm/cell-names.data.ts';
export { cellInThree, cellInTwo } from './rhythm/change-meter.ts';
export * from './rhythm/counting.ts';
export * from './rhythm/enumerate.ts';
export * from './rhythm/fraction.ts';
export * from './rhythm/grid.ts';
export { released } from './rhythm/held.ts';
export * from './rhythm/meter.ts';
export * from './rhythm/necklace.ts';
export * from './rhythm/necklace-euclidean.ts';
export * from './rhythm/pattern.ts';
export type { PatternFact } from './rhythm/pattern-fact.ts';
export * from './rhythm/place-fact.ts';
export { writableSlots } from './rhythm/slot-value.ts';
export * from './rhythm/syncopation.ts';
export * from './rhythm/syncopation-pulse.ts';
export * from './take/full-report.ts';
export * from './take/log.ts';
export * from './take/report.ts';
export * from './text-mark.ts';
export * from './units.ts';
export { escapeXml } from './xml/escape-xml.ts';
export * from './xml/read-xml.ts';
export { type TextPlace, textPlaces } from './xml/text-place.ts';
export type { XmlFaultFact } from './xml/xml-fault.ts';
