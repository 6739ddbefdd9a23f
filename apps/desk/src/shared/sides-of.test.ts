import { expect, it } from 'vitest';
import { sideOfLimb, sidesOf } from './sides-of.ts';

it('[ST103] shows the limbs from left to right as they are before the drummer', () => {
  // common practice: a right-handed drummer rides and plays the bass drum on the right
  expect(sidesOf('right-handed')).toEqual([
    ['other hand', 'left'],
    ['lead hand', 'right'],
    ['other foot', 'left'],
    ['lead foot', 'right'],
  ]);
  expect(sidesOf('left-handed').map(([limb]) => limb)).toEqual([
    'lead hand',
    'other hand',
    'lead foot',
    'other foot',
  ]);
  expect(sideOfLimb('lead foot', 'left-handed')).toBe('left');
});
