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

/** A take as it is heard as one exercise, and how much of it that explains. */
interface Tried<As extends Heard> {
  readonly exercise: number;
  readonly heard: As;
  readonly weight: number;
}

/** Whether a take is explained by an exercise at all. */
const isThere = ({ weight }: Tried<Heard>) => weight > Number.NEGATIVE_INFINITY;

/** Hears a take as exercises of one section. */
function hearing<As extends Heard>(lesson: Lesson, hearAs: (exercise: number) => As) {
  const hearOne = (exercise: number): Tried<As> => {
    const heard = hearAs(exercise);
    return { exercise, heard, weight: weightOf(heard, exerciseOf(lesson, exercise)) };
  };
  /** The likeliest one, from another on. */
  const follow = (from: Tried<As>): Tried<As> => {
    let one = from;
    for (let step = 0; step < MOST_STEPS; step += 1) {
      const next = one.heard.report?.exercise?.likeliest;
      if (next === undefined) break;
      one = hearOne(next);
    }
    return one;
  };
  return {
    /** The likeliest of some exercises, from the first one on as which the take is heard at all. */
    likeliestOf: (numbers: readonly number[]): Tried<As> => {
      let one = hearOne(numbers[0]!);
      for (const number of numbers.slice(1, MOST_TRIED)) {
        if (one.heard.report) break;
        one = hearOne(number);
      }
      return follow(one);
    },
    /** The likeliest of some exercises, from the first one on that explains the take; null where none does. */
    firstThere: (numbers: readonly number[]): Tried<As> | null => {
      for (const number of numbers.slice(0, MOST_TRIED)) {
        const one = follow(hearOne(number));
        if (isThere(one)) return one;
      }
      return null;
    },
  };
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

/** The one that explains most of a take, told as such; null where none explains it. */
function bestOf<As extends Heard>(tried: readonly Tried<As>[]): AsExercise<As> | null {
  const [best] = tried
    .filter(isThere)
    .toSorted((a, b) => b.weight - a.weight || tempoAway(a.heard) - tempoAway(b.heard));
  return best
    ? { exercise: best.exercise, heard: best.heard, told: factOf(best.exercise, best.heard) }
    : null;
}

/** A take as the groove alone; null where it is not that. */
function asGroove<As extends Heard>(heard: As): AsExercise<As> | null {
  const confidence = heard.report?.alignment.confidence ?? 0;
  // whoever leaves a limb of the groove out may have left an exercise out
  const isSure = confidence >= CONFIDENCE.sure && !Object.values(heard.report?.voices ?? {}).some(isSilent);
  const fact = isSure ? 'time-played' : 'time-most-like';
  return confidence >= CONFIDENCE.time ? { exercise: null, heard, told: { fact } } : null;
}

/**
 * What was played: of each section the likeliest exercise, and of those the one that explains most of the take; the groove
 * alone where no exercise is there. One that is far from what was played may lie so well half a bar off that the ear never
 * comes to the one that was: where nothing is there, those of each section are tried one after the other.
 * @param exercises those that it may be
 * @param hearAs hears the same take as an exercise, or as the groove alone
 * @returns null where it is of nothing in the lesson
 */
export function whichExercise<As extends Heard>(
  lesson: Lesson,
  exercises: Lesson['exercises'],
  hearAs: (exercise: number | null) => As,
): AsExercise<As> | null {
  const { likeliestOf, firstThere } = hearing(lesson, hearAs);
  const tried = bySection(lesson, exercises).map((numbers) => ({ numbers, one: likeliestOf(numbers) }));
  const best = bestOf(tried.map(({ one }) => one));
  if (best) return best;
  const groove = asGroove(hearAs(null));
  if (groove?.told.fact === 'time-played') return groove;
  const others = tried.flatMap(({ numbers, one }) =>
    one.heard.report ? (firstThere(numbers.slice(1)) ?? []) : [],
  );
  return bestOf(others) ?? groove;
}
