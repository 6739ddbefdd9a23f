/**
 * Which note is which written stroke: nothing to detect, only to match.
 *
 * Conventions: a note is a written stroke of its own voice within reach, the nearest pairs first, each used once.
 */
import type { Voice } from '@shedbook/core';
import type { HeardStroke } from '../decide/heard-stroke.ts';
import type { Place } from '../decide/places.ts';
import type { Decision } from '../decide/strokes.ts';
import type { TimedVoice } from './notes.ts';

interface Pair {
  readonly note: number;
  readonly place: number;
  readonly distance: number;
}

function pairsOf(
  notes: readonly TimedVoice[],
  places: readonly Place[],
  reachSeconds: number,
): readonly Pair[] {
  const byVoice = new Map<Voice, number[]>();
  notes.forEach(({ voice }, index) => {
    const own = byVoice.get(voice);
    if (own) own.push(index);
    else byVoice.set(voice, [index]);
  });
  const from = new Map<Voice, number>();
  const pairs: Pair[] = [];
  places.forEach((place, index) => {
    const own = byVoice.get(place.expected.voice) ?? [];
    let start = from.get(place.expected.voice) ?? 0;
    while (start < own.length && notes[own[start]!]!.timeSeconds < place.likelySeconds - reachSeconds)
      start += 1;
    from.set(place.expected.voice, start);
    for (let i = start; i < own.length; i += 1) {
      const distance = Math.abs(notes[own[i]!]!.timeSeconds - place.likelySeconds);
      if (distance > reachSeconds) break;
      pairs.push({ note: own[i]!, place: index, distance });
    }
  });
  return pairs;
}

/** Every note, with its place or none, and the places that were missed. Both in order of time. */
export function matchNotes(
  notes: readonly TimedVoice[],
  places: readonly Place[],
  reachSeconds: number,
): Decision {
  const placeOf = new Map<number, Place>();
  const taken = new Set<number>();
  const pairs = pairsOf(notes, places, reachSeconds).toSorted((a, b) => a.distance - b.distance);
  for (const { note, place } of pairs) {
    if (placeOf.has(note) || taken.has(place)) continue;
    placeOf.set(note, places[place]!);
    taken.add(place);
  }
  return {
    strokes: notes.map(
      (note, index): HeardStroke => ({ ...note, place: placeOf.get(index) ?? null, confidence: 1 }),
    ),
    missed: places.filter((_, index) => !taken.has(index)),
  };
}
