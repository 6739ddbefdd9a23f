/**
 * The groove that repeats under exercises from elsewhere, found and taken out of them.
 *
 * Conventions: what a voice plays in more than half of the exercises, bar for bar, is its part of the groove. An exercise
 * that plays the voice otherwise keeps it, silent where it leaves it out, so that nothing sounds otherwise than before.
 */
import {
  type Cell,
  cell,
  type Exercise,
  type ExercisePart,
  formatPattern,
  handsOf,
  type Meter,
  type Pattern,
  struckSlots,
  TIME_VOICES,
  VOICES,
  type Voice,
} from '@shedbook/core';

/** A groove, and what is played over it. */
export interface FoundGroove {
  readonly groove: readonly ExercisePart[];
  readonly exercises: readonly Exercise[];
}

/** Fewest exercises that a groove can be told from. */
const FEWEST = 3;

function textOf(bars: Pattern['bars']): string {
  return formatPattern({ bars });
}

/** The shortest pattern that gives the same bars when it is repeated. */
function shortest({ bars }: Pattern): Pattern {
  const period = bars.findIndex(
    (_, i) => i > 0 && bars.every((bar, j) => textOf([bar]) === textOf([bars[j % i] ?? bar])),
  );
  return { bars: period > 0 && bars.length % period === 0 ? bars.slice(0, period) : bars };
}

function partOf({ parts }: Exercise, voice: Voice): ExercisePart | undefined {
  return parts.find((part) => part.voice === voice);
}

function isStruck({ bars }: Pattern): boolean {
  return bars.flat().some((each: Cell) => struckSlots(each).length > 0);
}

/** What a voice plays in more than half of the exercises, or null. */
function commonPattern(exercises: readonly Exercise[], voice: Voice): Pattern | null {
  const patterns = exercises.flatMap((exercise) => {
    const part = partOf(exercise, voice);
    return part && isStruck(part.pattern) ? [shortest(part.pattern)] : [];
  });
  const counts = new Map<string, number>();
  for (const { bars } of patterns) counts.set(textOf(bars), (counts.get(textOf(bars)) ?? 0) + 1);
  const [text, count] = [...counts].toSorted((a, b) => b[1] - a[1])[0] ?? ['', 0];
  return count > exercises.length / 2 ? (patterns.find(({ bars }) => textOf(bars) === text) ?? null) : null;
}

function silence(bars: number, meter: Meter): Pattern {
  return { bars: Array.from({ length: bars }, () => meter.beats.map(() => cell('.'))) };
}

/** The exercise without what the groove plays as well, and silent where it leaves the groove out. */
function overGroove(exercise: Exercise, groove: readonly ExercisePart[], meter: Meter): Exercise {
  const bars = exercise.parts[0]?.pattern.bars.length ?? 1;
  const isOfGroove = ({ voice, pattern }: ExercisePart) => {
    const part = groove.find((each) => each.voice === voice);
    return part !== undefined && textOf(shortest(pattern).bars) === textOf(part.pattern.bars);
  };
  const left = groove
    .filter(({ voice }) => !partOf(exercise, voice))
    .map(({ voice }) => ({ voice, pattern: silence(bars, meter) }));
  const own = [...exercise.parts.filter((part) => !isOfGroove(part)), ...left];
  const parts = own.length > 0 ? own : [{ voice: 'snare' as const, pattern: silence(bars, meter) }];
  const keepsHands = parts[0] === exercise.parts[0];
  return { ...exercise, parts, sticking: keepsHands ? exercise.sticking : null };
}

/** Takes the groove out of exercises; there is none where they are too few or have nothing in common. */
export function findGroove(exercises: readonly Exercise[], meter: Meter): FoundGroove {
  if (exercises.length < FEWEST) return { groove: [], exercises };
  const time: readonly Voice[] = TIME_VOICES;
  const order = [...time, ...VOICES.filter((voice) => !time.includes(voice))];
  const sticked = new Set(
    exercises.flatMap((exercise) =>
      exercise.parts.flatMap(({ voice }, part) => (handsOf(exercise, part) ? [voice] : [])),
    ),
  );
  const groove = order.flatMap((voice) => {
    const pattern = sticked.has(voice) ? null : commonPattern(exercises, voice);
    return pattern ? [{ voice, pattern }] : [];
  });
  return { groove, exercises: exercises.map((exercise) => overGroove(exercise, groove, meter)) };
}
