import { PARTS, type PartName } from '@shedbook/composer';
import {
  type ComposeWeights,
  DEFAULT_COMPOSE_SETTINGS,
  exerciseKey,
  parseLesson,
  seededRandom,
} from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { parsePracticeLog } from '../log/read-log.ts';
import { fitWeights, sureWeights, type Trial, tellsBetter } from './fit-weights.ts';
import { trialsIn } from './trials.ts';

const NOW = DEFAULT_COMPOSE_SETTINGS.weights;

const LESSON = `title: Fitted
feel: triplet
tempo: { start: 80, goal: 120 }
groove: { ride: x x.x x x.x, hihat-foot: . x . x, bass: x x x x }
vocabulary: [..., x.., ..x, x.x, .x.]
exercises:
  - x.. x.. x.. x..
  - x.. ..x ... ...
  - ... ..x ... ..x
  - ..x ..x ... ...
  - ..x ... ..x ...
  - ..x ..x ..x ..x
  - .x. ... .x. ...
  - .x. .x. ... x..
  - x.x x.. x.x x..
  - x.x ..x x.. ..x
  - ... x.x ... x.x
  - .x. ..x .x. ..x
`;

const { lesson } = parseLesson(LESSON, 'fitted');

/** Loops of simulated students, whose difficulty is the sum of parts by known weights. */
function simulate(weights: ComposeWeights, students: number, loops: number): readonly Trial[] {
  if (!lesson) throw new Error('the lesson has problems');
  const random = seededRandom(11);
  const shelf = [{ id: 'fitted', lesson }];
  const blank = { device: 'a', startedAt: '2026-03-02T10:00:00+01:00', durationSeconds: 60 };
  const entries = lesson.exercises.map((exercise, i) => ({
    ...blank,
    id: String(i),
    lesson: 'fitted',
    exercise: exerciseKey(exercise),
    form: 'pattern',
    heardBy: 'ear',
    loops: [{ bpm: 120, verdict: 'clean', faults: [] }],
  }));
  const { log, problems } = parsePracticeLog(JSON.stringify({ version: 1, entries, removed: [] }), 'log');
  expect(problems).toEqual([]);
  const rows = log ? trialsIn(shelf, [log]) : [];
  const points = (counts: Trial['counts']) =>
    PARTS.reduce((sum, part) => sum + counts[part] * weights[part], 0);
  const mean = rows.reduce((sum, row) => sum + points(row.counts), 0) / rows.length;
  return Array.from({ length: students }, (_, student) => student).flatMap((student) =>
    rows.map((row) => {
      const logit = 1 + (student % 3) / 2 - 0.35 * (points(row.counts) - mean);
      const p = 1 / (1 + Math.exp(-logit));
      const clean = Array.from({ length: loops }, () => random.next() < p).filter(Boolean).length;
      return { ...row, student: String(student), tries: loops, clean };
    }),
  );
}

const weightOf = (fit: ReturnType<typeof fitWeights>, part: PartName) =>
  fit.weights.find((each) => each.part === part);

describe('weights that learn', () => {
  it('[CH50] reads every exercise of a log, with its parts and its tempo', () => {
    const trials = simulate(NOW, 1, 4);
    // definition: twelve exercises at the goal
    expect(trials).toHaveLength(12);
    expect(trials.every(({ tempoShare }) => tempoShare === 1)).toBe(true);
    // definition: "x.. x.. x.. x.." has four strokes, all with the ride
    expect(trials[0]?.counts).toMatchObject({ density: 4, lead: 4, alone: 0 });
  });

  it('[CH50] stays at the weights of today where nothing was tried, and says that it rests on nothing', () => {
    const fit = fitWeights([], NOW);
    for (const each of fit.weights) {
      expect(each.fitted).toBeCloseTo(each.now, 9);
      expect(each.exercises).toBe(0);
    }
    expect(fit.heldOut).toBeNull();
  });

  it('[CH51] finds a weight that is twice what it was held to be, within its error, and surer with more takes', () => {
    const truth = { ...NOW, alone: 2 * NOW.alone };
    const few = weightOf(fitWeights(simulate(truth, 2, 4), NOW), 'alone');
    const fit = fitWeights(simulate(truth, 12, 40), NOW);
    const many = weightOf(fit, 'alone');
    // definition: a prior of half the weight; with many takes the truth outweighs it
    expect(many?.fitted).toBeGreaterThan(1.3 * NOW.alone);
    expect(many?.error).toBeLessThan(few?.error ?? 0);
    // definition: on exercises left out of the fit, the fitted weights lose less
    expect(fit.heldOut?.fitted).toBeLessThan(fit.heldOut?.now ?? 0);
  });

  it('[CH2300] offers for taking what rests on three exercises or more', () => {
    const fit = fitWeights(simulate(NOW, 4, 10).slice(0, 20), NOW);
    const sure = sureWeights(fit);
    expect(sure.length).toBeGreaterThan(0);
    expect(sure.every(({ exercises }) => exercises >= 3)).toBe(true);
    // definition: of one exercise nothing rests on three
    const [one] = simulate(NOW, 1, 10);
    expect(sureWeights(fitWeights(one ? [one] : [], NOW))).toEqual([]);
  });

  it('[CH2301] says that it tells better only where it does by more than chance', () => {
    const strange = { ...NOW, alone: 0, density: 8 * NOW.density };
    expect(tellsBetter(fitWeights(simulate(strange, 12, 40), NOW))).toBe(true);
    expect(tellsBetter(fitWeights(simulate(NOW, 8, 30), NOW))).toBe(false);
    // definition: where everything is clean there is nothing to learn
    const clean = simulate(NOW, 2, 10).map((trial) => ({ ...trial, clean: trial.tries }));
    expect(tellsBetter(fitWeights(clean, NOW))).toBe(false);
    expect(tellsBetter(fitWeights([], NOW))).toBeNull();
  });

  it('[CH51] changes little, and never below nothing, where takes agree with today', () => {
    const fit = fitWeights(simulate(NOW, 8, 30), NOW);
    for (const each of fit.weights) {
      expect(each.fitted).toBeGreaterThanOrEqual(0);
      expect(Math.abs(each.fitted - each.now)).toBeLessThanOrEqual(2.5 * each.error + 0.02);
    }
  });
});
