/**
 * Laying visits into the minutes that there are: warm-up first, breaks between, nothing beyond the end.
 *
 * Conventions: whole minutes. Lengths are common practice and our choice.
 */
import { type Lesson, sectionOf } from '@shedbook/core';
import type { GrooveTitleFact, PlanKindFact } from '../fact.ts';
import { ladderOf, SETTLED_SHARE } from '../ladder/ladder.ts';
import type { ExerciseStanding } from '../mastery/exercises.ts';
import { bpmForShare } from '../mastery/held.ts';
import type { ShelfLesson } from '../mastery/identity.ts';
import { nameOf } from '../mastery/shelf.ts';
import type { Candidate } from './candidates.ts';
import type { PlanItem } from './plan-item.ts';
import type { Visit } from './turns.ts';

const BREAK_AFTER_MINUTES = 20;
const BREAK_MINUTES = 5;
const SHORTEST_VISIT_MINUTES = 2;

/** Minutes of a session for one of warm-up: every visit begins under what was held, too. */
const SESSION_TO_WARM_UP = 15;
const LONGEST_WARM_UP_MINUTES = 5;
/** Longest that the groove alone is planned for at a stretch. */
const TIME_MINUTES = 5;

/** Minutes of warm-up: a fifteenth of the session, from 1 to 5; all of a session too short for more. */
export function warmUpMinutes(minutes: number): number {
  if (minutes < 1 + SHORTEST_VISIT_MINUTES) return minutes;
  return Math.max(1, Math.min(LONGEST_WARM_UP_MINUTES, Math.round(minutes / SESSION_TO_WARM_UP)));
}

/** Minutes that are left for exercises in a session, warm-up and breaks taken off. */
export function playingMinutes(minutes: number): number {
  const warm = warmUpMinutes(minutes);
  const breaks = Math.floor(
    Math.max(0, minutes - SHORTEST_VISIT_MINUTES) / (BREAK_AFTER_MINUTES + BREAK_MINUTES),
  );
  return Math.max(0, minutes - warm - breaks * BREAK_MINUTES);
}

/** Below this retrievability an exercise begins a step lower. */
const FADED = 0.9;

/**
 * Where to begin, in quarter notes a minute: where the ladder would settle by what was clean lately, so that no visit
 * goes by in climbing there, and half a step lower since a night has passed; a step lower where it is a while ago; the start where nothing was played.
 */
export function resumeBpm({ heldBpm, evidence, lesson }: ExerciseStanding): number {
  const { startBpm, goalBpm, stepBpm } = lesson.tempo;
  const { lowestBpm } = ladderOf(lesson.tempo);
  if (heldBpm === null) return Math.min(startBpm, goalBpm);
  const isFaded = (evidence?.retrievability ?? 1) < FADED;
  const back = isFaded ? stepBpm : stepBpm / 2;
  const bpm = Math.round(bpmForShare(heldBpm, SETTLED_SHARE) - back);
  return Math.max(lowestBpm, Math.min(goalBpm, bpm));
}

/** How much of the tempo is left for what is played slower, or sung. */
const SLOWER = 0.8;

function visitTempo({ standing, part, aimBpm }: Candidate): PlanItem['tempo'] {
  const { tempo } = standing.lesson;
  const goalBpm = aimBpm ?? tempo.goalBpm;
  const from = Math.min(goalBpm, resumeBpm(standing));
  const { lowestBpm } = ladderOf(tempo);
  const isSlower = part?.kind === 'slower' || part?.kind === 'sung';
  const fromBpm = isSlower ? Math.max(lowestBpm, Math.round(from * SLOWER)) : from;
  return { fromBpm, goalBpm };
}

function visitItem(candidate: Candidate, minutes: number): PlanItem {
  const { kind, standing, part, reason } = candidate;
  return {
    ...{ kind, part, minutes, reason },
    lesson: standing.id,
    exercise: standing.key,
    number: standing.exercise.number,
    title: { fact: 'exercise-title', name: nameOf(standing) },
    tempo: visitTempo(candidate),
  };
}

function grooveTempo(lesson: Lesson) {
  const { startBpm, goalBpm } = sectionOf(lesson, null).tempo;
  return { fromBpm: Math.min(startBpm, goalBpm), goalBpm };
}

const GROOVE_REASONS = { 'warm-up': 'warm-up', time: 'time-alone', free: 'play-freely' } as const;

function grooveItem(kind: keyof typeof GROOVE_REASONS, shelf: ShelfLesson, minutes: number): PlanItem {
  const title: GrooveTitleFact = { fact: 'groove-title', lesson: shelf.lesson.title };
  const reason: PlanKindFact = { fact: GROOVE_REASONS[kind] };
  const tempo = grooveTempo(shelf.lesson);
  return { kind, lesson: shelf.id, exercise: null, part: null, number: null, title, minutes, tempo, reason };
}

const BREAK: PlanItem = {
  kind: 'break',
  lesson: null,
  exercise: null,
  part: null,
  number: null,
  title: { fact: 'break-title' },
  minutes: BREAK_MINUTES,
  tempo: null,
  reason: { fact: 'rest-now' },
};

/**
 * The items of a session of `minutes`, which they fill; `groove` is warmed up with, and what is left at the end is
 * time alone, then free.
 */
export function layOut(visits: readonly Visit[], minutes: number, groove: ShelfLesson): readonly PlanItem[] {
  const warmUp = warmUpMinutes(minutes);
  const items: PlanItem[] = [grooveItem('warm-up', groove, warmUp)];
  let left = minutes - warmUp;
  let sinceBreak = warmUp;
  const add = (item: PlanItem) => {
    items.push(item);
    left -= item.minutes;
    sinceBreak = item.kind === 'break' ? 0 : sinceBreak + item.minutes;
  };
  const rest = () => {
    if (sinceBreak >= BREAK_AFTER_MINUTES && left >= BREAK_MINUTES + SHORTEST_VISIT_MINUTES) add(BREAK);
  };
  for (const { candidate, minutes: wanted } of visits) {
    rest();
    // A minute that is too short for anything else goes to the visit before it.
    const box = left - wanted < SHORTEST_VISIT_MINUTES ? Math.min(left, wanted + 1) : wanted;
    if (box < wanted) break;
    add(visitItem(candidate, box));
  }
  rest();
  if (left > 0) add(grooveItem('time', groove, Math.min(TIME_MINUTES, left)));
  while (left > 0) {
    rest();
    const untilBreak = BREAK_AFTER_MINUTES - sinceBreak;
    add(grooveItem('free', groove, untilBreak > 0 ? Math.min(untilBreak, left) : left));
  }
  return items;
}
