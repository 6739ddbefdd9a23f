/** The whole round: a plan is played, the ear hears it, the verdicts make the log, the log makes the next plan. */
import {
  type Bpm,
  type LoopRecord,
  type PracticeEntry,
  type PracticeLog,
  Seconds,
  seededRandom,
} from '@shedbook/core';
import { judge, type LoopTask, loopTask, recordRound } from '@shedbook/judge';
import { expect, it } from 'vitest';
import { formOf, loopReport, swing } from '../../../internal/testing/loops.ts';
import { TODAY } from '../test/students.ts';
import { climb, ladderOf, startLadder } from './ladder/ladder.ts';
import { addEntry, EMPTY_LOG } from './log/merge.ts';
import { planPractice } from './plan/plan.ts';
import type { PlanItem } from './plan/plan-item.ts';
import { summariseStudent } from './teacher/summary.ts';
import { formatDay } from './time/moment.ts';

const LOOPS_A_MINUTE = 3;

/** Spread of a student's strokes in milliseconds, and how much of it is left after each loop played. */
interface Hands {
  readonly spreadMs: number;
  readonly keptPerLoop: number;
  /** Whether the snare is missed on every let of 1. */
  readonly missesLet: boolean;
}

/** Loops of an exercise that were played before, by its lasting name. */
type Played = Map<string, number>;

function hear(task: LoopTask, hands: Hands, loopsBefore: number, random: () => number) {
  const spread = hands.spreadMs * hands.keptPerLoop ** loopsBefore;
  const noise = () => (random() + random() + random() - 1.5) * 2 * spread;
  const isMissed = (stroke: LoopTask['strokes'][number]) =>
    hands.missesLet && stroke.voice === 'snare' && stroke.written.beat === 1 && stroke.written.slot === 3;
  return loopReport(task, (stroke) => (isMissed(stroke) ? null : { offsetMs: noise() }));
}

/** Tasks by exercise and tempo: a student comes back to few of them in three weeks. */
const tasks = new Map<string, LoopTask>();

function taskOf(exercise: PlanItem['number'], bpm: Bpm): LoopTask {
  const key = `${exercise} ${bpm}`;
  const task = tasks.get(key) ?? loopTask(swing.lesson, { exercise, form: formOf(swing.lesson), bpm });
  tasks.set(key, task);
  return task;
}

function playItem(item: PlanItem, hands: Hands, played: Played, random: () => number): readonly LoopRecord[] {
  if (item.exercise === null || item.number === null || !item.tempo) return [];
  const rule = ladderOf(swing.lesson.tempo);
  let ladder = startLadder(rule, item.tempo.fromBpm);
  return Array.from({ length: item.minutes * LOOPS_A_MINUTE }, () => {
    const before = played.get(item.exercise as string) ?? 0;
    played.set(item.exercise as string, before + 1);
    const asked = { exercise: item.number, form: formOf(swing.lesson), bpm: ladder.bpm };
    const task = taskOf(asked.exercise, asked.bpm);
    const report = hear(task, hands, before, random);
    const { verdict } = judge({ lesson: swing.lesson, ...asked }, { report }, 'beginner');
    const record = recordRound({ bpm: ladder.bpm, verdict });
    ladder = climb(ladder, record.verdict, rule).state;
    return record;
  });
}

function practise(hands: Hands, days: number): PracticeLog {
  const { next: random } = seededRandom(1);
  const played: Played = new Map();
  let log = EMPTY_LOG;
  for (let day = TODAY - days + 1; day <= TODAY; day += 1) {
    const now = `${formatDay(day)}T17:00:00+01:00`;
    const plan = planPractice({ shelf: [swing], log, now, minutes: 30, assignments: [], seed: 1 });
    plan.items.forEach((item, index) => {
      const entry: PracticeEntry = {
        id: `${plan.day} ${index}`,
        device: 'phone',
        startedAt: now,
        durationSeconds: Seconds(item.minutes * 60),
        lesson: swing.id,
        exercise: item.exercise,
        form: 'loop',
        heardBy: 'ear',
        loops: playItem(item, hands, played, random),
      };
      if (entry.exercise !== null) log = addEntry(log, entry);
    });
  }
  return log;
}

const NOW = `${formatDay(TODAY + 1)}T17:00:00+01:00`;

/** What the teacher sees after so many days. */
function summary(hands: Hands, days: number) {
  const log = practise(hands, days);
  return { log, ...summariseStudent({ name: 'Bram', shelf: [swing], log, assignments: [] }, NOW) };
}

it('[CH39] a student whose hands get steadier climbs to the goal, and exercises become firm one by one', () => {
  const { log, firm, next } = summary({ spreadMs: 24, keptPerLoop: 0.97, missesLet: false }, 21);
  const fastest = Math.max(...log.entries.flatMap(({ loops }) => loops.map(({ bpm }) => bpm)));
  expect(fastest).toBe(swing.lesson.tempo.goalBpm);
  expect(firm.length).toBeGreaterThanOrEqual(3);
  const begun = new Map<string, string>();
  for (const { exercise, startedAt } of log.entries) {
    if (exercise !== null && !begun.has(exercise)) begun.set(exercise, startedAt);
  }
  // definition: the page goes on while hands get steadier, so all of it is begun, and not on one day
  expect(begun.size).toBe(swing.lesson.exercises.length);
  expect(new Set(begun.values()).size).toBeGreaterThan(1);
  expect(next === null || next.exercise.standing !== 'firm').toBe(true);
});

it('[CH39] a student who misses the same stroke never climbs, and the teacher sees where', () => {
  const { log, firm, shakySkills, shaky, learning, next } = summary(
    { spreadMs: 4, keptPerLoop: 1, missesLet: true },
    8,
  );
  const withLet = log.entries.filter(({ exercise }) => exercise?.startsWith('snare ..x'));
  const tempi = new Set(withLet.flatMap(({ loops }) => loops.map(({ bpm }) => bpm)));
  expect(Math.max(...tempi)).toBe(swing.lesson.tempo.startBpm);
  expect(firm.every(({ key }) => !key.startsWith('snare ..x'))).toBe(true);
  // definition: "..x" and "x.x" are the cells that the sheet has a let of 1 in
  expect(new Set(shakySkills.map(({ skill }) => skill.to))).toEqual(new Set(['..x', 'x.x']));
  const sore = [...shaky, ...learning].map((standing) => standing.sore?.told);
  const place = { fact: 'syllable', syllable: 'let', beat: 1 };
  expect(sore).toContainEqual({ fact: 'sore-spot', limb: 'left hand', voice: 'snare', place });
  expect(next?.why).toMatchObject({ fact: 'seldom-holds', skill: { limb: 'left hand' } });
});
