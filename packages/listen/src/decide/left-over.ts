/**
 * What is left of a loudspeaker's voice once it was taken out of a take: a limb that seems to play throughout, and far
 * softer than it is asked for beside the others.
 *
 * Conventions: decibels.
 */
import { groupBy, type Voice } from '@shedbook/core';
import { median } from '@shedbook/signal';
import type { HeardStroke } from './heard-stroke.ts';
import type { HeardDecision } from './strokes.ts';

/**
 * So much softer than asked beside the others. What is left lies 6 dB under a loudspeaker that is 10 dB under a student; on
 * ten takes of the bench's kit with a limb left out it lay 11 to 32 dB under, and what was played within 3.
 */
const SOFTER_DB = 10;

/**
 * The same of a voice that neither look hears without the score: of 137 voices that were played beside the page (eight exercises,
 * two hands) none was so soft and shy, and both that were believed though they stayed out were.
 */
const SHY_SOFTER_DB = 3;

type Placed = HeardStroke & { readonly place: NonNullable<HeardStroke['place']> };

function apartOf(strokes: readonly Placed[]): number {
  return median(strokes.map(({ levelDb, place }) => levelDb - place.expected.stroke.levelDb));
}

/** The voices that are so much softer than asked beside the others, in dB; none where there are no others. */
export function softVoices(strokes: readonly HeardStroke[], byDb: number): ReadonlySet<Voice> {
  const placed = strokes.filter((stroke): stroke is Placed => stroke.place !== null);
  const soft = [...groupBy(placed, ({ voice }) => voice)].filter(([voice, own]) => {
    const others = placed.filter((stroke) => stroke.voice !== voice);
    return others.length > 0 && apartOf(own) < apartOf(others) - byDb;
  });
  return new Set(soft.map(([voice]) => voice));
}

/**
 * The voices of which only what is left of the loudspeaker was heard; none where nothing else was.
 * @param shy those that neither look hears without the score
 */
export function leftOver(strokes: readonly HeardStroke[], shy: ReadonlySet<Voice>): ReadonlySet<Voice> {
  const soft = [...softVoices(strokes, SHY_SOFTER_DB)].filter((voice) => shy.has(voice));
  return new Set([...softVoices(strokes, SOFTER_DB), ...soft]);
}

/**
 * The voices of which nobody can say whether their limb plays, that were believed for the score alone beside a loudspeaker: of
 * 209 voices that were played beside the page none was one (eight exercises, two hands).
 */
export function untoldBeside({
  strokes,
  shy,
  playing,
}: Pick<HeardDecision, 'strokes' | 'shy' | 'playing'>): ReadonlySet<Voice> {
  const placed = new Set(strokes.flatMap(({ voice, place }) => (place ? [voice] : [])));
  return new Set([...placed].filter((voice) => shy.has(voice) && playing.get(voice) === 'perhaps'));
}
