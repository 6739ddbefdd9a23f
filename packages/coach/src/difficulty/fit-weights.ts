/**
 * Difficulty that learns: weights fitted to what students played clean and what they did not, starting from today's.
 *
 * Conventions: a trial is one exercise at one tempo by one student; difficulty in points; weights keep their unit, since
 * the mean difficulty of what was tried stays what it is. Uncertainty is one standard error.
 * Source: an item response model (Rasch 1960) whose items are sums of parts (the linear logistic test model, Fischer
 * 1973, Acta Psychologica 37(6)): logit P(clean) = ability − slope · difficulty + tempo · ln(goal / tempo). Today's
 * weights are the mean of the prior, so that what nobody has tried stays as it is; errors are Laplace's approximation.
 * The width of the priors and the slope that they start from are ours.
 */
import { PARTS, type PartName } from '@shedbook/composer';
import type { ComposeWeights } from '@shedbook/core';
import { dot, solve } from './solve.ts';

/** What one student made of one exercise at one tempo. */
export interface Trial {
  readonly student: string;
  /** Lasting name of the exercise. */
  readonly exercise: string;
  /** How much of each part the exercise has. */
  readonly counts: Readonly<Record<PartName, number>>;
  /** Tempo as a share of the goal. */
  readonly tempoShare: number;
  /** Number of loops. */
  readonly tries: number;
  /** Number of loops that were clean. */
  readonly clean: number;
}

/** One weight, as it is and as the trials have it. */
export interface FittedWeight {
  readonly part: PartName;
  /** The weight of today, in points. */
  readonly now: number;
  /** The fitted weight, in points. */
  readonly fitted: number;
  /** One standard error of the fitted weight, in points. */
  readonly error: number;
  /** Number of exercises that have any of this part: what the fit rests on. */
  readonly exercises: number;
}

/** What a fit came to. */
export interface WeightFit {
  readonly weights: readonly FittedWeight[];
  readonly tries: number;
  readonly exercises: number;
  /**
   * Mean logarithmic loss a try on exercises that were left out of the fit, one after another: with today's weights and
   * with fitted ones; smaller is better. Null with fewer exercises than a comparison needs.
   */
  readonly heldOut: { readonly now: number; readonly fitted: number } | null;
}

/** Change of log odds for each point of difficulty, before anything was seen. */
const SLOPE = 0.35;

/** Standard deviations of the priors: of a weight as a share of itself, of ability, and of what tempo does. */
const SPREAD = { weight: 0.5, ability: 2, tempo: 1.5 } as const;

/** What tempo does before anything was seen: at nine tenths of the goal the odds of a clean loop are a third better. */
const TEMPO = 3;

/** Log odds of a clean loop of mean difficulty at the goal, before anything was seen: about three in four. */
const ABILITY = 1;

/** Steps of Newton's method; it settles in far fewer. */
const STEPS = 25;

/** Exercises that a comparison on left-out ones needs. */
const LEAST_EXERCISES = 6;

interface Model {
  readonly parts: readonly PartName[];
  readonly students: readonly string[];
  readonly mean: readonly number[];
  readonly precision: readonly number[];
}

/** A trial as a row of the design: parts, students, tempo. */
function rowOf({ parts, students }: Model, trial: Trial, centre: number): readonly number[] {
  return [
    ...parts.map((part) => -trial.counts[part]),
    ...students.map((student) => (student === trial.student ? 1 : 0)),
    -Math.log(trial.tempoShare),
    centre,
  ];
}

function probability(logit: number): number {
  return 1 / (1 + Math.exp(-logit));
}

interface Fitted {
  readonly values: readonly number[];
  /** Variances of the values. */
  readonly variances: readonly number[];
}

/** The most probable values under the priors, by Newton's method. */
function fit(model: Model, rows: readonly (readonly number[])[], trials: readonly Trial[]): Fitted {
  const size = model.mean.length;
  let values = [...model.mean];
  let curvature: number[][] = [];
  for (let step = 0; step < STEPS; step += 1) {
    const gradient = values.map(
      (value, i) => -(model.precision[i] as number) * (value - (model.mean[i] as number)),
    );
    curvature = Array.from({ length: size }, (_, i) =>
      Array.from({ length: size }, (__, j) => (i === j ? (model.precision[i] as number) : 0)),
    );
    rows.forEach((row, t) => {
      const { tries, clean } = trials[t] as Trial;
      const p = probability(dot(row.slice(0, size), values) + (row[size] as number));
      const weight = tries * p * (1 - p);
      for (let i = 0; i < size; i += 1) {
        const own = row[i] as number;
        if (own === 0) continue;
        gradient[i] = (gradient[i] as number) + own * (clean - tries * p);
        const line = curvature[i] as number[];
        for (let j = 0; j < size; j += 1) line[j] = (line[j] as number) + weight * own * (row[j] as number);
      }
    });
    const change = solve(curvature, gradient);
    // a weight is never negative: more of a part never makes an exercise easier
    values = values.map((value, i) => {
      const next = value + (change[i] as number);
      return i < model.parts.length ? Math.max(0, next) : next;
    });
  }
  const variances = values.map((_, i) => {
    const unit = values.map((__, j) => (i === j ? 1 : 0));
    return solve(curvature, unit)[i] as number;
  });
  return { values, variances };
}

function pointsOf(trial: Trial, weights: Readonly<Record<string, number>>): number {
  return PARTS.reduce((sum, part) => sum + trial.counts[part] * (weights[part] ?? 0), 0);
}

function meanPoints(trials: readonly Trial[], weights: Readonly<Record<string, number>>): number {
  const tries = trials.reduce((sum, trial) => sum + trial.tries, 0);
  return trials.reduce((sum, trial) => sum + trial.tries * pointsOf(trial, weights), 0) / Math.max(1, tries);
}

function modelOf(trials: readonly Trial[], now: ComposeWeights, spread: number): Model {
  const parts = PARTS.filter((part) => now[part] > 0);
  const students = [...new Set(trials.map(({ student }) => student))];
  const weights = parts.map((part) => SLOPE * now[part]);
  return {
    parts,
    students,
    mean: [...weights, ...students.map(() => ABILITY), TEMPO],
    precision: [
      ...weights.map((weight) => (weight * spread) ** -2),
      ...students.map(() => SPREAD.ability ** -2),
      SPREAD.tempo ** -2,
    ],
  };
}

function fitTrials(trials: readonly Trial[], now: ComposeWeights, spread: number) {
  const model = modelOf(trials, now, spread);
  const centre = SLOPE * meanPoints(trials, now);
  const rows = trials.map((trial) => rowOf(model, trial, centre));
  return { model, centre, ...fit(model, rows, trials) };
}

/** The loss of trials, summed over tries, under a fit of others. */
function lossOf(trials: readonly Trial[], fitted: ReturnType<typeof fitTrials>): number {
  return trials.reduce((sum, trial) => {
    const row = rowOf(fitted.model, trial, fitted.centre);
    const p = probability(dot(row.slice(0, -1), fitted.values) + fitted.centre);
    const safe = Math.min(1 - 1e-6, Math.max(1e-6, p));
    return sum - trial.clean * Math.log(safe) - (trial.tries - trial.clean) * Math.log(1 - safe);
  }, 0);
}

/** So narrow a prior leaves the weights as they are. */
const FIXED = 1e-3;

function heldOutLoss(trials: readonly Trial[], now: ComposeWeights): WeightFit['heldOut'] {
  const exercises = [...new Set(trials.map(({ exercise }) => exercise))];
  if (exercises.length < LEAST_EXERCISES) return null;
  const tries = trials.reduce((sum, trial) => sum + trial.tries, 0);
  const loss = (spread: number) =>
    exercises.reduce((sum, left) => {
      const rest = trials.filter(({ exercise }) => exercise !== left);
      return (
        sum +
        lossOf(
          trials.filter(({ exercise }) => exercise === left),
          fitTrials(rest, now, spread),
        )
      );
    }, 0) / tries;
  return { now: loss(FIXED), fitted: loss(SPREAD.weight) };
}

/** A weight that rests on fewer exercises than this is not to be taken: it would follow one bar. */
const SURE_EXERCISES = 3;

/** The weights of a fit that rest on exercises enough to be taken. */
export function sureWeights({ weights }: WeightFit): readonly FittedWeight[] {
  return weights.filter(({ exercises }) => exercises >= SURE_EXERCISES);
}

/** Loss a loop, in nats, by which a fit must be better on what was left out of it: less is chance. Ours. */
const BETTER_BY = 0.005;

/** Whether a fit tells better than today's weights who plays what was left out of it clean; null where too little was played. */
export function tellsBetter({ heldOut }: WeightFit): boolean | null {
  return heldOut && heldOut.fitted <= heldOut.now - BETTER_BY;
}

/** Weights fitted to trials; what the trials say nothing of stays as it is, with the error that it had before. */
export function fitWeights(trials: readonly Trial[], now: ComposeWeights): WeightFit {
  const { model, values, variances } = fitTrials(trials, now, SPREAD.weight);
  const raw = Object.fromEntries(model.parts.map((part, i) => [part, values[i] as number]));
  const before = meanPoints(trials, now);
  const after = meanPoints(trials, raw);
  const unit = after > 0 && before > 0 ? before / after : 1 / SLOPE;
  const having = (part: PartName) =>
    new Set(trials.filter(({ counts }) => counts[part] > 0).map(({ exercise }) => exercise)).size;
  return {
    weights: model.parts.map((part, i) => ({
      part,
      now: now[part],
      fitted: having(part) === 0 ? now[part] : (values[i] as number) * unit,
      error: Math.sqrt(Math.max(0, variances[i] as number)) * unit,
      exercises: having(part),
    })),
    tries: trials.reduce((sum, trial) => sum + trial.tries, 0),
    exercises: new Set(trials.map(({ exercise }) => exercise)).size,
    heldOut: heldOutLoss(trials, now),
  };
}
