import { expect, it } from 'vitest';
import { textMark } from './text-mark.ts';

it('[CR360] marks a text by its FNV-1a and its length', () => {
  // published: test vectors of FNV-1a, 32 bits (draft-eastlake-fnv, appendix C): "", "a", "foobar"
  expect(['', 'a', 'foobar'].map(textMark)).toEqual(['811c9dc5-0', 'e40c292c-1', 'bf9cf968-6']);
});
