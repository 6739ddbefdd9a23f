import { Seconds, type Voice } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { type InBars, PARTS, underOthers } from './kept-time.ts';

const BARS = 4;

/** Strokes of a voice in four bars of four beats, by beat and place in it; levels in dB. */
function played(voice: Voice, levelDb: number, places: readonly number[]): readonly InBars[] {
  return Array.from({ length: BARS }, (_, bar) => bar).flatMap((bar) =>
    places.map((place): InBars => {
      const beat = Math.floor(place);
      const struck = { voice, levelDb, timeSeconds: Seconds(4 * bar + place) };
      return { bar, beat, part: Math.round((place - beat) * PARTS), struck };
    }),
  );
}

const backBeat = played('snare', 6, [1, 3]);
const openTo = () => -1;

describe('strokes under louder ones', () => {
  it('[LI4401] goes on under the back beat with a hand that keeps time in all that is open', () => {
    const hat = played('hihat', 0, [0, 0.5, 1.5, 2, 2.5, 3.5]);
    const lost = underOthers([...hat, ...backBeat], 4, openTo);
    // definition: beats 2 and 4 of four bars, an eighth before those that are there
    expect(lost.map(({ timeSeconds }) => timeSeconds)).toEqual([1, 3, 5, 7, 9, 11, 13, 15]);
    expect(new Set(lost.map(({ voice, under, levelDb }) => `${voice} ${under} ${levelDb}`))).toEqual(
      new Set(['hihat snare 0']),
    );
  });

  it('[LI4401] takes nothing from beats that the hand leaves open, nor where its sound says that it is not there', () => {
    const upbeats = played('hihat', 0, [0.5, 1.5, 2.5, 3.5]);
    expect(underOthers([...upbeats, ...backBeat], 4, openTo)).toEqual([]);
    const hat = played('hihat', 0, [0, 0.5, 1.5, 2, 2.5, 3.5]);
    expect(underOthers([...hat, ...backBeat], 4, () => -4)).toEqual([]);
    // A snare that is softer than the hat covers nothing.
    expect(underOthers([...hat, ...played('snare', -6, [1, 3])], 4, openTo)).toEqual([]);
  });

  it('[LI4401] takes nothing in a bar of which the hand plays next to nothing, as in a fill', () => {
    const hat = played('hihat', 0, [0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5]).filter(({ bar }) => bar < 3);
    const fill = played('tom-high', 6, [0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5]).filter(({ bar }) => bar === 3);
    expect(underOthers([...hat, ...fill], 4, openTo)).toEqual([]);
  });
});
