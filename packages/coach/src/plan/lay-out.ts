/**
 * Laying visits into the minutes that there are: warm-up first, breaks between, nothing beyond the end.
 *
 * Conventions: whole minutes. Lengths are common practice and our choice.
 */
import type { Lesson } from '@shedbook/core';
import type { GrooveTitleFact, PlanKindFact } from '../fact.ts';
import type { ExerciseStanding } from '../mastery/exercises.ts';
import { nameOf, type ShelfLesson } from '../mastery/shelf.ts';
import type { Candidate } from './candidates.ts';
import type { PlanItem } from './plan-item.ts';
import type { Visit } from './turns.ts';

const BREAK_AFTER_MINUTES = 20;
const BREAK_MINUTES = 5;
const SHORTEST_VISIT_MINUTES = 2;
const LONGEST_WARM_UP_MINUTES = 5;
const TIME_MINUTES = 5;

/** Minutes of warm-up: a tenth of the session, from 1 to 5; all of a session too short for more. */
export function warmUpMinutes(minutes: number): number {
  if (minutes < 1 + SHORTEST_VISIT_MINUTES) return minutes;
  return Math.max(1, Math.min(LONGEST_WARM_UP_MINUTES, Math.round(minutes / 10)));
}

/** Below this retrievability an exercise begins a step lower. */
const FADED = 0.9;

/**
 * Where to begin, in quarter notes a minute, on a rung of the ladder: a step below what was clean, two where it was
 * not steady or is a while ago; the start where nothing was clean.
 */
export function resumeBpm({ cleanBpm, standing, evidence, lesson }: ExerciseStanding): number {
  const { startBpm, goalBpm, stepBpm } = lesson.tempo;
  if (cleanBpm === null) return Math.min(startBpm, goalBpm);
  const isFaded = (evidence?.retrievability ?? 1) < FADED;
  const back = standing === 'shaky' || isFaded ? 2 * stepBpm : stepBpm;
  const rungs = Math.floor((Math.min(cleanBpm, goalBpm) - back - startBpm) / stepBpm);
  return Math.min(goalBpm, startBpm + Math.max(0, rungs) * stepBpm);
}

function visitItem(candidate: Candidate, minutes: number): PlanItem {
  const { kind, standing, reason } = candidate;
  return {
    kind,
    lesson: standing.id,
    exercise: standing.key,
    number: standing.exercise.number,
    title: { fact: 'exercise-title', name: nameOf(standing) },
    minutes,
    tempo: { fromBpm: resumeBpm(standing), goalBpm: standing.lesson.tempo.goalBpm },
    reason,
  };
}

function grooveTempo(lesson: Lesson) {
  return { fromBpm: Math.min(lesson.tempo.startBpm, lesson.tempo.goalBpm), goalBpm: lesson.tempo.goalBpm };
}

function grooveItem(kind: 'warm-up' | 'time', shelf: ShelfLesson, minutes: number): PlanItem {
  const title: GrooveTitleFact = { fact: 'groove-title', lesson: shelf.lesson.title };
  const reason: PlanKindFact = { fact: kind === 'time' ? 'time-alone' : kind };
  const tempo = grooveTempo(shelf.lesson);
  return { kind, lesson: shelf.id, exercise: null, number: null, title, minutes, tempo, reason };
}

const BREAK: PlanItem = {
  kind: 'break',
  lesson: null,
  exercise: null,
  number: null,
  title: { fact: 'break-title' },
  minutes: BREAK_MINUTES,
  tempo: null,
  reason: { fact: 'rest-now' },
};

/** The items of a session of `minutes`; `groove` is warmed up with. */
export function layOut(visits: readonly Visit[], minutes: number, groove: ShelfLesson): readonly PlanItem[] {
  const warmUp = warmUpMinutes(minutes);
  const items: PlanItem[] = [grooveItem('warm-up', groove, warmUp)];
  let left = minutes - warmUp;
  let sinceBreak = warmUp;
  const rest = () => {
    if (sinceBreak < BREAK_AFTER_MINUTES || left < BREAK_MINUTES + SHORTEST_VISIT_MINUTES) return;
    items.push(BREAK);
    left -= BREAK_MINUTES;
    sinceBreak = 0;
  };
  for (const visit of visits) {
    rest();
    const box = Math.min(visit.minutes, left);
    if (box < SHORTEST_VISIT_MINUTES) return items;
    const { candidate } = visit;
    items.push(candidate ? visitItem(candidate, box) : grooveItem('time', groove, box));
    left -= box;
    sinceBreak += box;
  }
  rest();
  const time = Math.min(TIME_MINUTES, left);
  return time < SHORTEST_VISIT_MINUTES ? items : [...items, grooveItem('time', groove, time)];
}
