/**
 * The rim of a kit's snare: one pad has several keys, and which one it sends is a matter of where the stick lands.
 *
 * Conventions: seconds. Where an exercise writes snare and no side stick, every key of the pad is the snare; a rim shot
 * that is written stays one at its place.
 */
import type { Voice } from '@shedbook/core';
import type { Place } from '../decide/places.ts';

/**
 * What a stroke on the rim may be, likeliest first: never empty, and the voice itself for every other pad.
 * @param written the voices that the exercise has
 */
export function onRim(voice: Voice, written: ReadonlySet<Voice>): readonly Voice[] {
  if (voice !== 'rimshot' && voice !== 'sidestick') return [voice];
  if (written.has('sidestick')) {
    // A kit without a zone for the side stick sends the rim for it.
    return voice === 'sidestick' || written.has('snare') || written.has('rimshot') ? [voice] : ['sidestick'];
  }
  const own = (['rimshot', 'snare'] as const).filter((each) => written.has(each));
  return own.length > 0 ? own : [voice];
}

/** A stroke of some voice. */
interface Voiced {
  readonly timeSeconds: number;
  readonly voice: Voice;
}

/** Strokes of a kit as the exercise has them where no place is known yet: the rim is the snare. */
export function rimAsWritten<N extends Voiced>(
  notes: readonly N[],
  written: ReadonlySet<Voice>,
): readonly N[] {
  return notes.map((note) => ({ ...note, voice: onRim(note.voice, written).at(-1)! }));
}

/** The same where the places are known: a rim shot is one where it is written within reach and nearest. */
export function rimAtPlaces<N extends Voiced>(
  notes: readonly N[],
  places: readonly Place[],
  written: ReadonlySet<Voice>,
  reachSeconds: number,
): readonly N[] {
  return notes.map((note) => {
    const [first, other] = onRim(note.voice, written);
    if (!first || !other) return first ? { ...note, voice: first } : note;
    const distance = (voice: Voice) =>
      places.reduce(
        (least, { expected, likelySeconds }) =>
          expected.voice === voice ? Math.min(least, Math.abs(likelySeconds - note.timeSeconds)) : least,
        Number.POSITIVE_INFINITY,
      );
    const atFirst = distance(first);
    return { ...note, voice: atFirst <= reachSeconds && atFirst < distance(other) ? first : other };
  });
}
