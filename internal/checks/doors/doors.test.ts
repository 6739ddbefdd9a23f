import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { ROOT } from '../tree.mjs';
import { makePage, PAGE } from './page.mjs';

it('the compiler leads from every door through the places that docs/CHANGES.md lists', () => {
  const { text, strays } = makePage();
  expect(strays).toEqual([]);
  // definition: the page is what the compiler names; node internal/checks/doors/page.mjs --write renews it
  expect(readFileSync(join(ROOT, PAGE), 'utf8')).toBe(text);
});
