import { expect, it } from 'vitest';
import { layOut, textsOf } from '../../test/sheets.ts';

it('[EN7010] the key says of a hi-hat foot on the page that nothing of it is heard', () => {
  const key = (groove: string, pattern = 'x . x .') =>
    textsOf(layOut(`title: Feet\ngroove: {${groove}}\nexercises: [${pattern}]\n`)).filter((text) =>
      text.startsWith('hi-hat foot'),
    );
  expect(key('hihat: xx xx xx xx, hihat-foot: . x . x')).toContain('hi-hat foot (not heard)');
  // heard on 4, where the hats are open
  expect(key('hihat: xx xx xx ox, hihat-foot: . x . x')).toEqual(['hi-hat foot']);
  expect(key('ride: xx xx xx xx, hihat-foot: . x . x')).toEqual(['hi-hat foot']);
  // heard while the exercise takes the hand away
  expect(key('hihat: xx xx xx xx, hihat-foot: . x . x', '{pattern: {hihat: x . x .}}')).toContain(
    'hi-hat foot',
  );
});
