import { describe, expect, it } from 'vitest';
import { areRotations } from './necklace.ts';
import { euclideanRhythm } from './necklace-euclidean.ts';

// published: Toussaint 2005, BRIDGES, 47–56; E(5,16) as its interval word 33334 says (the printed string has a
// symbol too many)
const PUBLISHED: Readonly<Record<string, string>> = {
  '2,3': 'x.x',
  '2,5': 'x.x..',
  '3,4': 'x.xx',
  '3,5': 'x.x.x',
  '3,7': 'x.x.x..',
  '3,8': 'x..x..x.',
  '4,7': 'x.x.x.x',
  '4,9': 'x.x.x.x..',
  '4,11': 'x..x..x..x.',
  '5,6': 'x.xxxx',
  '5,7': 'x.xx.xx',
  '5,8': 'x.xx.xx.',
  '5,9': 'x.x.x.x.x',
  '5,11': 'x.x.x.x.x..',
  '5,12': 'x..x.x..x.x.',
  '5,13': 'x..x.x..x.x..',
  '5,16': 'x..x..x..x..x...',
  '7,8': 'x.xxxxxx',
  '7,10': 'x.xx.xx.xx',
  '7,12': 'x.xx.x.xx.x.',
  '7,16': 'x..x.x.x..x.x.x.',
  '9,16': 'x.xx.x.x.xx.x.x.',
  '11,24': 'x..x.x.x.x.x..x.x.x.x.x.',
  '13,24': 'x.xx.x.x.x.x.xx.x.x.x.x.',
};

describe('Euclidean rhythms', () => {
  it.each(Object.entries(PUBLISHED))('[RH6] E(%s) is %s, up to where it starts', (key, text) => {
    const [onsets = 0, length = 0] = key.split(',').map(Number);
    const published = [...text].map((c) => (c === 'x' ? 1 : 0));
    const rhythm = euclideanRhythm(onsets, length);
    expect(rhythm).toHaveLength(length);
    expect(areRotations(rhythm, published)).toBe(true);
  });

  it('[RH6] has none, all, and refuses more strokes than places', () => {
    // definition: no strokes is silence, as many strokes as places leaves none
    expect(euclideanRhythm(0, 3)).toEqual([0, 0, 0]);
    expect(euclideanRhythm(4, 4)).toEqual([1, 1, 1, 1]);
    expect(() => euclideanRhythm(5, 4)).toThrow('5 strokes do not fit in 4 places');
    expect(() => euclideanRhythm(1.5, 4)).toThrow(RangeError);
  });
});
