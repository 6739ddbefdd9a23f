/**
 * Which exercise of the lesson was played: the likeliest, where one clearly is.
 *
 * Conventions: all exercises share the groove, so the take's bars are where the asked one found them, or some beats
 * later: where the groove is the same twice a bar, only the exercise tells which beat is the first.
 */
import { type ExerciseAgreement, hasOnset, type Voice } from '@shedbook/core';
import { trim } from '../align/align.ts';
import { askedGrid, performed } from '../align/asked-grid.ts';
import { type PlacedBar, placeBars } from '../align/bars.ts';
import { brushedVoices, withoutTaps } from '../align/brushed.ts';
import type { FormGrid } from '../align/form-grid.ts';
import type { TrackedBar } from '../align/match-bar.ts';
import { toleranceSeconds } from '../align/match-bar.ts';
import type { Observations } from '../align/observations.ts';
import type { Asked } from '../listened.ts';
import { ownVoices } from './agreement.ts';
import { placeAgain } from './bars-again.ts';
import { type ChancesByVoice, logLikelihood, softAgreement } from './likelihood.ts';
import { type Place, placesOf } from './places.ts';

/** An exercise as it fits a take best. */
export interface FittedExercise {
  readonly exercise: number | null;
  readonly grid: FormGrid;
  readonly bars: readonly PlacedBar[];
  readonly places: readonly Place[];
  /** Natural logarithm of its likelihood. */
  readonly likelihood: number;
  /** How well its own strokes agree, 0 to 1. */
  readonly agreement: number;
}

/** What is looked at. */
export interface Sounding {
  readonly seen: Observations;
  readonly chances: ChancesByVoice;
}

/** A student mostly plays what is asked: so much likelier is that beforehand, as a logarithm. */
const ASKED = 4.5;
/** What is so much likelier than something else is told from it, as a logarithm: moments are not independent. */
const TOLD_APART = 10.5;
/** The least agreement of another exercise before it is named. */
const LEAST_AGREEMENT = 0.5;
/** Bars begun on another beat must be so much likelier, as a logarithm, to be taken for those of the exercise. */
const OTHER_BEAT = 6;

/** The voices of any exercise of a lesson in a form. */
export function voicesOf(asked: Asked): readonly Voice[] {
  const voices = [null, ...asked.lesson.exercises.map(({ number }) => number)].flatMap((exercise) =>
    performed(asked, exercise)
      .strokes.filter(hasOnset)
      .map(({ voice }) => voice),
  );
  return [...new Set(voices)].filter((voice): voice is Voice => voice !== 'click');
}

/** The same bars begun some beats later, one more before them. */
function shifted(bars: readonly TrackedBar[], share: number): readonly TrackedBar[] {
  if (share === 0) return bars;
  const first = bars[0]!;
  const before = { startSeconds: first.startSeconds - first.barSeconds, barSeconds: first.barSeconds };
  const starts = [before, ...bars].map((bar) => bar.startSeconds + share * bar.barSeconds);
  return starts.map((startSeconds, i) => {
    const next = starts[i + 1] ?? startSeconds + bars.at(-1)!.barSeconds;
    return { startSeconds, barSeconds: next - startSeconds };
  });
}

function fitFrom(
  fitted: { readonly exercise: number | null; readonly grid: FormGrid },
  bars: readonly PlacedBar[],
  { seen, chances }: Sounding,
): FittedExercise {
  return weighed({ ...fitted, bars, places: placesOf(seen, fitted.grid, bars) }, chances);
}

function weighed(
  fitted: Omit<FittedExercise, 'likelihood' | 'agreement'>,
  chances: ChancesByVoice,
): FittedExercise {
  const { grid, bars, places } = fitted;
  const reach = toleranceSeconds(grid, bars[bars.length >> 1]?.barSeconds ?? grid.barSeconds);
  return {
    ...fitted,
    likelihood: logLikelihood(chances, places, reach),
    agreement: softAgreement(chances, places, ownVoices(grid), reach),
  };
}

/** The exercise of a grid as it fits best in some bars, begun on whichever beat. */
export function fitExercise(
  exercise: number | null,
  grid: FormGrid,
  bars: readonly TrackedBar[],
  sounding: Sounding,
): FittedExercise {
  const ways = grid.beats.map((share) => {
    const placed = placeBars(sounding.seen, grid, shifted(bars, share)).bars;
    return fitFrom({ exercise, grid }, trim(grid, placed), sounding);
  });
  return ways.reduce((best, way) => (way.likelihood > best.likelihood ? way : best));
}

/** The asked exercise in the bars that it was found in, or in bars begun on another beat where that is likelier. */
export function fitAsked(
  exercise: number | null,
  grid: FormGrid,
  bars: readonly PlacedBar[],
  sounding: Sounding,
): FittedExercise {
  const here = fitFrom({ exercise, grid }, bars, sounding);
  const best = fitExercise(exercise, grid, bars, sounding);
  return best.bars.length > 0 && best.likelihood > here.likelihood + OTHER_BEAT ? best : here;
}

/** The other exercises of the lesson, as each fits the take best. @param barsFor the take's bars for a grid */
export function fitOthers(
  asked: Asked,
  barsFor: (grid: FormGrid) => readonly TrackedBar[],
  sounding: Sounding,
): readonly FittedExercise[] {
  return asked.lesson.exercises
    .filter(({ number }) => number !== asked.exercise)
    .map(({ number }) => {
      const grid = askedGrid(asked, number);
      const bars = barsFor(grid);
      const fitted = fitExercise(number, grid, bars, sounding);
      if (fitted.bars.length > 0) return fitted;
      // a take without the limb that has most of the strokes is less than a third of any exercise
      return fitFrom({ exercise: number, grid }, placeBars(sounding.seen, grid, bars).bars, sounding);
    });
}

/**
 * The exercises as each fits a take of notes that begins with the first of its bars: where hardly anything but an even
 * pulse is written, the asked exercise finds bars in almost any take, half a beat or a whole one beside those played.
 */
export function fitFromTop(
  exercises: readonly FittedExercise[],
  bars: readonly TrackedBar[],
  sounding: Sounding,
): readonly FittedExercise[] {
  const [first] = bars;
  const from = sounding.seen.times[0];
  if (!first || from === undefined) return [];
  return exercises.map(({ exercise, grid }) => {
    const lead = Math.min(...(grid.bars[0]?.strokes ?? []).map(({ position }) => position), 1);
    const share = (from - first.startSeconds) / first.barSeconds - lead;
    const placed = placeBars(sounding.seen, grid, shifted(bars, share - Math.floor(share))).bars;
    return fitFrom({ exercise, grid }, trim(grid, placed), sounding);
  });
}

/** The likeliest of some exercises, where it explains a take better than the asked one does even though that was asked. */
export function likelierThan(
  asked: FittedExercise,
  others: readonly FittedExercise[],
): FittedExercise | null {
  const [best] = others.filter(({ bars }) => bars.length > 0).toSorted((a, b) => b.likelihood - a.likelihood);
  return best && best.likelihood > asked.likelihood + ASKED ? best : null;
}

/** The asked exercise with each bar as that of the form which it is likeliest of, now that the kit is known. */
export function goneThrough(asked: FittedExercise, { seen, chances }: Sounding): FittedExercise {
  const { exercise, grid } = asked;
  const brushed = brushedVoices(grid);
  const telling = new Map([...chances].filter(([voice]) => !brushed.has(voice)));
  const bars = placeAgain(seen, withoutTaps(grid), asked.bars, telling);
  return fitFrom({ exercise, grid }, bars, { seen, chances });
}

/** The same exercises where they are, weighed by other chances. */
export function weighAgain(
  fitted: readonly FittedExercise[],
  chances: ChancesByVoice,
): readonly FittedExercise[] {
  return fitted.map((one) => weighed(one, chances));
}

/** What a report says of the other exercises of the lesson. */
export type OtherExercises = Omit<ExerciseAgreement, 'agreement'>;

/** What can be said of the other exercises of the lesson: that one was rather played, or that some cannot be told apart. */
export function tellExercise(asked: FittedExercise, others: readonly FittedExercise[]): OtherExercises {
  // what lies in no bars explains nothing, and what it leaves unexplained is not to be compared
  const leads = others.flatMap(({ exercise, likelihood, agreement, bars }) =>
    exercise === null || bars.length === 0
      ? []
      : [{ exercise, lead: likelihood - asked.likelihood - ASKED, agreement }],
  );
  const [best] = leads.toSorted((a, b) => b.lead - a.lead);
  const likeliest = best && best.lead > -ASKED ? { likeliest: best.exercise } : {};
  const isTold = brushedVoices(asked.grid).size === 0;
  if (isTold && best && best.lead > TOLD_APART && best.agreement >= LEAST_AGREEMENT)
    return { rather: best.exercise, ...likeliest };
  const alike = leads.filter(({ lead }) => lead > -TOLD_APART).map(({ exercise }) => exercise);
  return alike.length === 0 ? likeliest : { cannotTellFrom: alike, ...likeliest };
}

/** The bars of a take for the asked exercise: where another one was rather played, as that one has them. */
export function barsFor(
  asked: FittedExercise,
  others: readonly FittedExercise[],
  { rather }: OtherExercises,
  seen: Observations,
): readonly PlacedBar[] {
  const other = others.find(({ exercise }) => exercise === rather);
  return barsAs(asked, other ?? null, seen);
}

/**
 * The bars of a take for the asked exercise, as another one has them where there is one. In a form as long as that one's
 * each is the same bar of it, else bars of time alone, which anybody's playing fits, would be all that was played.
 */
export function barsAs(
  asked: FittedExercise,
  other: FittedExercise | null,
  seen: Observations,
): readonly PlacedBar[] {
  if (!other) return asked.bars;
  const isAsLong = other.grid.bars.length === asked.grid.bars.length;
  const bars = trim(asked.grid, isAsLong ? other.bars : placeBars(seen, asked.grid, other.bars).bars);
  return bars.length > 0 ? bars : asked.bars;
}
