import { expect, it } from 'vitest';
import { VOICES } from '../kit/voice.ts';
import { HEAD_KINDS } from './heads.data.ts';
import { STAFF_POSITIONS } from './staff.data.ts';

it('[NO7] gives cymbals crosses, drums normal heads, and tells voices in one place apart', () => {
  // published: N. Weinberg, Percussive Notes, June 1994: x for cymbals, normal heads for drums
  expect(VOICES.filter((voice) => HEAD_KINDS[voice] === 'normal').toSorted()).toEqual(
    ['bass', 'snare', 'tom-floor', 'tom-high', 'tom-low', 'tom-mid'].toSorted(),
  );
  expect(HEAD_KINDS).toMatchObject({
    ride: 'x',
    'hihat-foot': 'x',
    sidestick: 'x',
    rimshot: 'slashed',
    cowbell: 'plus',
  });
  const places = VOICES.map((voice) => `${STAFF_POSITIONS[voice]} ${HEAD_KINDS[voice]}`);
  const shared = VOICES.filter((_, index) => places.indexOf(places[index] as string) !== index);
  // The open hi-hat stands where the closed one does, with a ring.
  expect(shared).toEqual(['hihat-open']);
});
