import { type Lesson, parseLesson, perform, type Voice } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { type FormGrid, formGrid } from '../align/form-grid.ts';
import { coveredPlaces, levelledUnderOthers } from './covered.ts';
import type { Place } from './places.ts';

const FORM = {
  name: 'loop',
  sections: [{ play: 'pattern', bars: 2, ending: null } as const],
  repeat: 1,
  countInBars: 0,
};

/** The places of two bars of a slow twelve-eight with a pattern. */
function placesOf(pattern: string, snareDb = -4, comping = 'snare', lead = 'ride'): readonly Place[] {
  const text = `title: Slow
meter: 12/8
tempo: 52
feel: even
groove: {${lead}: x.. x.. x.. x.., hihat-foot: {pattern: . x . x, level: -8}, bass: {pattern: x . x ., level: 0}}
comping: ${comping}
balance: {${comping}: ${snareDb}}
exercises: [${pattern}]
`;
  const lesson = parseLesson(text, 'slow').lesson as Lesson;
  const grid: FormGrid = formGrid(perform(lesson, { exercise: 1, form: FORM }), lesson.meter);
  return grid.bars.flatMap(({ strokes }, takeBar) =>
    strokes.map((expected) => {
      const seconds = (takeBar + expected.position) * grid.barSeconds;
      return { expected, takeBar, idealSeconds: seconds, likelySeconds: seconds };
    }),
  );
}

const beatsOf = (covered: ReadonlySet<Place>) =>
  [...covered].map(({ expected: { stroke } }) => `${stroke.written.bar}.${stroke.written.beat}`);

describe('what lies under louder strokes', () => {
  it('[LI3301] is a soft foot where the snare never sounds without it', () => {
    // definition: the snare is struck on 4 alone, with the foot, which sounds on 2 in the open
    const places = placesOf('... ... ... x..');
    expect(beatsOf(coveredPlaces(places, 'hihat-foot'))).toEqual(['1.4', '2.4']);
    for (const voice of ['ride', 'bass', 'snare'] as const) expect(coveredPlaces(places, voice).size).toBe(0);
  });

  it('[LI3301] is none where the louder drum sounds alone too, is no louder, or is a low one', () => {
    expect(coveredPlaces(placesOf('x.. ... ... x..'), 'hihat-foot').size).toBe(0);
    expect(coveredPlaces(placesOf('... ... ... x..', -7), 'hihat-foot').size).toBe(0);
    expect(coveredPlaces(placesOf('... ... ... x..', -4, 'tom-low'), 'hihat-foot').size).toBe(0);
  });

  it('[LI6900] is a foot on a hi-hat that the hand strikes closed, and none on one that is open or on a ride', () => {
    // common practice: plates that are held together close no further; the foot that holds them is not heard
    const hidden = (lead: string) =>
      beatsOf(coveredPlaces(placesOf('... ... ... ...', -4, 'snare', lead), 'hihat-foot'));
    expect(hidden('hihat')).toEqual(['1.2', '1.4', '2.2', '2.4']);
    expect(hidden('hihat-open')).toEqual([]);
    expect(hidden('ride')).toEqual([]);
  });

  it('[LI3301] is as loud as the voice is elsewhere', () => {
    const places = placesOf('... ... ... x..');
    const strokes = places.map((place) => {
      const isUnder = place.expected.voice === 'hihat-foot' && place.expected.stroke.written.beat === 4;
      const { voice } = place.expected;
      return {
        voice: voice as Voice,
        timeSeconds: place.idealSeconds,
        levelDb: isUnder ? -20 : -8,
        place,
        confidence: 1,
      };
    });
    // definition: in the open every stroke is at -8 dB
    expect(levelledUnderOthers(strokes, places).every(({ levelDb }) => levelDb === -8)).toBe(true);
  });
});
