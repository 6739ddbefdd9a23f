/** Which exercise of a lesson a take is of, where nobody says. */
import {
  type Exercise,
  exerciseOf,
  type FullReport,
  groupBy,
  type Lesson,
  sectionOf,
  type Voice,
  type VoiceReport,
} from '@shedbook/core';
import type { ExerciseFact } from './verdict/fact.ts';

/** A take as it was heard, with whatever the ear says where there is no report. */
interface Heard {
  readonly report: FullReport | null;
}

/** A take as it is heard as an exercise. */
export interface AsExercise<As extends Heard> {
  /** Number of the exercise, from 1; null for the groove alone. */
  readonly exercise: number | null;
  readonly heard: As;
  /** What can be said of it: played, where nothing else is as likely and next to nothing speaks against it. */
  readonly told: ExerciseFact;
}

/** An exercise of which less of its own strokes is there, as a share, was not played. */
const LEAST_AGREEMENT = 0.5;

/**
 * How sure the ear is of the whole take, 0 to 1, where it is of the lesson at all, or of its groove, and where that may be
 * called the one that was played. Of nine takes heard as exercises of eight other grooves 0.84 was the most, of their own all
 * had 1; a samba heard as the groove of a waltz has 0.52.
 */
const CONFIDENCE = { least: 0.5, time: 0.6, sure: 0.9 } as const;

/** So often the ear is followed from one exercise to the likelier one. */
const MOST_STEPS = 3;

/** As so many exercises of a section a take is heard until there is a report: where the time was left out, as one of few. */
const MOST_TRIED = 8;

/** Strokes that are there, less those that are not and those that are nobody's. */
function explained({ voices }: FullReport): number {
  return Object.values(voices).reduce((sum, { hits, missed, extra }) => sum + hits - missed - extra, 0);
}

/** Whether not one stroke of a voice was played, of those that can be told. */
function isSilent({ hits, missed, extra }: VoiceReport): boolean {
  return hits + extra === 0 && missed > 0;
}

/**
 * How well what was played agrees with an exercise by itself, 0 to 1 as an F-measure: a limb that stayed out altogether,
 * be it the one with most of the strokes, says nothing of which exercise the others played.
 */
function agreementOfPlayed({ voices }: FullReport): number {
  const played = Object.values(voices).filter((voice) => !isSilent(voice));
  const sum = (of: (voice: VoiceReport) => number) => played.reduce((all, one) => all + of(one), 0);
  const hits = sum((voice) => voice.hits);
  const all = 2 * hits + sum(({ missed, extra }) => missed + extra);
  return all === 0 ? 0 : (2 * hits) / all;
}

/** Whether a take is of a lesson at all, heard as one of its exercises. */
function isOfLesson(report: FullReport): boolean {
  return report.alignment.confidence >= CONFIDENCE.least || agreementOfPlayed(report) >= CONFIDENCE.sure;
}

/** Whether all that was heard of an exercise's own strokes may be a loudspeaker's: the student played the groove alone. */
function isByLoudspeaker({ voices, unheard = [] }: FullReport, { parts }: Exercise): boolean {
  const isOwn = (voice: Voice) => parts.some((part) => part.voice === voice);
  const isDoubted = unheard.some((one) => one.reason === 'from-loudspeaker' && isOwn(one.voice));
  return isDoubted && parts.every(({ voice }) => (voices[voice]?.hits ?? 0) === 0);
}

/** How much of a take an exercise explains, in strokes; none where it was not played. */
function weightOf({ report }: Heard, exercise: Exercise): number {
  const told = report?.exercise;
  const isThere = told && told.rather === undefined && told.agreement >= LEAST_AGREEMENT;
  return isThere && isOfLesson(report) && !isByLoudspeaker(report, exercise)
    ? explained(report)
    : Number.NEGATIVE_INFINITY;
}

/** The likeliest exercise of a section, from the first one on as which the take is heard at all. */
function likeliestOf<As extends Heard>(
  lesson: Lesson,
  numbers: readonly number[],
  hearAs: (exercise: number) => As,
) {
  let [exercise, heard] = [numbers[0]!, hearAs(numbers[0]!)];
  for (const number of numbers.slice(1, MOST_TRIED)) {
    if (heard.report) break;
    [exercise, heard] = [number, hearAs(number)];
  }
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const next = heard.report?.exercise?.likeliest;
    if (next === undefined) break;
    [exercise, heard] = [next, hearAs(next)];
  }
  return { exercise, heard, weight: weightOf(heard, exerciseOf(lesson, exercise)) };
}

/** How far the tempo is from the one that was asked, as a ratio's logarithm: of the same strokes in two sections that tells. */
function tempoAway({ report }: Heard): number {
  return report?.asked ? Math.abs(Math.log(report.alignment.bpm / report.asked.bpm)) : 0;
}

/** The exercises of each section, in order: heard as one of them, the ear weighs the others. */
function bySection(lesson: Lesson, exercises: Lesson['exercises']): readonly (readonly number[])[] {
  const numbers = exercises.map(({ number }) => number);
  return [...groupBy(numbers, (number) => sectionOf(lesson, number)).values()];
}

function factOf(exercise: number, { report }: Heard): ExerciseFact {
  const isAlone = report?.exercise?.cannotTellFrom === undefined;
  const isSure = isAlone && (report?.alignment.confidence ?? 0) >= CONFIDENCE.sure;
  return { fact: isSure ? 'exercise-played' : 'exercise-most-like', exercise };
}

/**
 * What was played: of each section the likeliest exercise, and of those the one that explains most of the take; the groove
 * alone where no exercise is there.
 * @param exercises those that it may be
 * @param hearAs hears the same take as an exercise, or as the groove alone
 * @returns null where it is of nothing in the lesson
 */
export function whichExercise<As extends Heard>(
  lesson: Lesson,
  exercises: Lesson['exercises'],
  hearAs: (exercise: number | null) => As,
): AsExercise<As> | null {
  const all = bySection(lesson, exercises).map((numbers) => likeliestOf(lesson, numbers, hearAs));
  const [best] = all.toSorted((a, b) => b.weight - a.weight || tempoAway(a.heard) - tempoAway(b.heard));
  if (best && best.weight > Number.NEGATIVE_INFINITY)
    return { exercise: best.exercise, heard: best.heard, told: factOf(best.exercise, best.heard) };
  const heard = hearAs(null);
  const confidence = heard.report?.alignment.confidence ?? 0;
  // whoever leaves a limb of the groove out may have left an exercise out
  const isSure = confidence >= CONFIDENCE.sure && !Object.values(heard.report?.voices ?? {}).some(isSilent);
  const fact = isSure ? 'time-played' : 'time-most-like';
  return confidence >= CONFIDENCE.time ? { exercise: null, heard, told: { fact } } : null;
}
