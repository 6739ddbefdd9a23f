/**
 * The spot of an exercise that went wrong most often.
 *
 * Conventions: spots of the same beat and slot are one, whatever bar of the loop they were in.
 */
import type { Exercise, Lesson, LoopRecord, Voice } from '@shedbook/core';
import { loopTask, placeOf, whoPlays } from '@shedbook/judge';
import type { SoreSpotFact } from '../fact.ts';
import { patternForm } from './skills.ts';

/** What went wrong most often. */
export interface SoreSpot {
  readonly voice: Voice;
  readonly beat: number;
  readonly slot: number;
  /** How many faults. */
  readonly times: number;
  /** The same as it is said. */
  readonly told: SoreSpotFact;
}

type Spot = Pick<SoreSpot, 'voice' | 'beat' | 'slot'>;

/** Spots that were told before, by the exercise that they are in: telling one performs a bar. */
const toldSpots = new WeakMap<Lesson, Map<string, SoreSpotFact>>();

function tellOnce(lesson: Lesson, exercise: Exercise, spot: Spot): SoreSpotFact {
  const known = toldSpots.get(lesson) ?? new Map<string, SoreSpotFact>();
  toldSpots.set(lesson, known);
  const key = `${exercise.number} ${spot.voice} ${spot.beat} ${spot.slot}`;
  const told = known.get(key) ?? tellSpot(lesson, exercise, spot);
  known.set(key, told);
  return told;
}

function tellSpot(lesson: Lesson, exercise: Exercise, { voice, beat, slot }: Spot): SoreSpotFact {
  const asked = { exercise: exercise.number, form: patternForm(exercise), bpm: lesson.tempo.startBpm };
  const task = { ...loopTask(lesson, asked), bars: 1 };
  const written = task.strokes.find(
    (stroke) => stroke.voice === voice && stroke.written.beat === beat && stroke.written.slot === slot,
  )?.written;
  const place = written ?? { bar: 1, beat, slot };
  return { fact: 'sore-spot', ...whoPlays(task, voice, place), place: placeOf(task, place) };
}

/** The spot that went wrong most often in some loops of an exercise, or null when none did. */
export function soreSpotOf(
  lesson: Lesson,
  exercise: Exercise,
  loops: readonly LoopRecord[],
): SoreSpot | null {
  const spots = new Map<string, Spot & { readonly times: number }>();
  for (const { voice, place } of loops.flatMap((loop) => loop.faults)) {
    if (voice === null || place === null) continue;
    const { beat, slot } = place;
    const key = `${voice} ${beat} ${slot}`;
    spots.set(key, { voice, beat, slot, times: (spots.get(key)?.times ?? 0) + 1 });
  }
  const worst = [...spots.values()].toSorted((a, b) => b.times - a.times)[0];
  return worst ? { ...worst, told: tellOnce(lesson, exercise, worst) } : null;
}
