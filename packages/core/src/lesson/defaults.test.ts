import { expect, it } from 'vitest';
import { VOICES } from '../kit/voice.ts';
import { defaultBalance } from './defaults.ts';

// common practice: what carries the time is what the others are balanced against, a foot as well as a hand
it('[LE8100] what leads is what the others are measured by, and nothing is written much louder than it', () => {
  const above = VOICES.map(
    (lead) => Math.max(...Object.values(defaultBalance(lead))) - defaultBalance(lead)[lead],
  );
  expect(VOICES.map((lead) => defaultBalance(lead)[lead])).toEqual(VOICES.map(() => 0));
  // definition: a crash and a rim shot are accents, 2 dB above the back beat
  expect(Math.max(...above)).toBe(2);
});
