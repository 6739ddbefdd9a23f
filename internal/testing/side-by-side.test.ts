import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { ROOT } from '../../scripts/run.mjs';
import { evenly, LONG_THOUGH_SMALL } from './side-by-side.mjs';

it('begins with files that there are', () => {
  expect(Object.keys(LONG_THOUGH_SMALL).filter((path) => !existsSync(join(ROOT, path)))).toEqual([]);
});

it('keeps what waits and what computes as far as each other, by the time that they take', () => {
  const seconds = { waits: 30, 'waits too': 30, long: 20, longer: 20, a: 5, b: 5, c: 5, d: 5 };
  const names = Object.keys(seconds) as (keyof typeof seconds)[];
  const joined = evenly([names.slice(0, 2), names.slice(2)], (name) => seconds[name]);
  // definition: both take 60 s; half of the first list's are gone when half of the second's are
  expect(joined).toEqual(['waits', 'long', 'longer', 'waits too', 'a', 'b', 'c', 'd']);
});

it('leaves nothing out where there is one kind alone', () => {
  expect(evenly<string>([[], ['a', 'b']], () => 1)).toEqual(['a', 'b']);
});
