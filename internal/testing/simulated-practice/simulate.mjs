/**
 * Weeks of practice of one simulated student under one plan, on the stand that all plans share.
 *
 * Conventions: days from 0; tempi in quarter notes a minute. A coach here is anything with `planDay`.
 */
import { climb, ladderOf, startLadder } from '@shedbook/coach';
import { seededRandom } from '@shedbook/core';
import { createStudent, endVisit, heldBpm, leaves, playLoop, sheetOf, sleep } from './model.mjs';
import { POLICIES } from './policies.mjs';

const DAYS = 56;
const DAYS_OFF = 7;
const LOOP_BARS = 4;
const SECONDS_BETWEEN = 6;

/** Plays one visit. @returns its loops, and the tempo it ended at. */
export function playVisit(student, { exercise, minutes, fromBpm, isKnown = false, ids = null }, rule, beats) {
  let ladder = startLadder(rule, fromBpm, isKnown);
  const loops = [];
  let left = minutes * 60 - SECONDS_BETWEEN;
  for (;;) {
    const seconds = (LOOP_BARS * beats * 60) / ladder.bpm;
    if (seconds > left) break;
    left -= seconds;
    const played = playLoop(student, exercise, ladder.bpm, ids);
    loops.push({ bpm: ladder.bpm, ...played });
    ladder = climb(ladder, played.verdict, rule).state;
  }
  if (loops.length > 0) endVisit(student, loops.filter(({ isClean }) => isClean).length / loops.length);
  return { loops, bpm: ladder.bpm };
}

/** The days on which a student practises. */
function daysOf({ attendance, holidays }, random) {
  return Array.from({ length: DAYS }, (_, day) => random.next() < attendance && !holidays.includes(day));
}

/** A plan that is one of the policies: it begins where the student left an exercise, less a step. */
function simplePlan(policy, lesson, random) {
  const { startBpm, goalBpm, stepBpm } = lesson.tempo;
  const left = new Map();
  const state = {};
  const bpmOf = (exercise) => left.get(exercise) ?? startBpm;
  return {
    planDay: ({ minutes }) =>
      policy({
        ...{ minutes, state, random, bpmOf },
        count: lesson.exercises.length,
        atGoal: (exercise) => bpmOf(exercise) >= goalBpm,
      }),
    fromBpm: ({ exercise }) => (left.has(exercise) ? left.get(exercise) - stepBpm : startBpm),
    visited: (visit, { bpm }) => left.set(visit.exercise, bpm),
  };
}

/** Practises for eight weeks and rests for one. @returns the tempo held over the page, and what was met. */
export function practise({ lesson, traits, seed, makePlan }) {
  const random = seededRandom(`student ${seed}`);
  const sheet = sheetOf(lesson, traits.carriesOver);
  const student = createStudent(sheet, traits, random);
  const days = daysOf(traits, random);
  const plan = makePlan(lesson, seededRandom(`plan ${seed}`));
  const rule = ladderOf(lesson.tempo);
  const beats = lesson.meter.beats.length;
  const met = new Set();
  days.forEach((isThere, day) => {
    if (isThere) {
      for (const visit of plan.planDay({ day, minutes: traits.minutes, student })) {
        if (leaves(student)) break;
        if (visit.exercise === null || visit.ids?.size === 0) continue;
        const played = playVisit(student, { ...visit, fromBpm: plan.fromBpm(visit) }, rule, beats);
        met.add(visit.exercise);
        plan.visited(visit, played, day);
      }
    }
    sleep(student);
  });
  for (let day = 0; day < DAYS_OFF; day += 1) sleep(student);
  const held = lesson.exercises.map((_, i) => Math.min(lesson.tempo.goalBpm, heldBpm(student, i)));
  return { bpm: held.reduce((a, b) => a + b, 0) / held.length, met: met.size };
}

/** Makers of the plans that stand beside the coach. */
export const OTHERS = Object.fromEntries(
  Object.entries(POLICIES).map(([name, policy]) => [
    name,
    (lesson, random) => simplePlan(policy, lesson, random),
  ]),
);

/** Mean and standard deviation. */
export function summarise(values) {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  const variance = values.reduce((sum, each) => sum + (each - mean) ** 2, 0) / Math.max(1, values.length - 1);
  return { mean, sd: Math.sqrt(variance) };
}
