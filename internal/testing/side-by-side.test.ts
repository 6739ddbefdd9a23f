import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { ROOT } from '../../scripts/run.mjs';
import { LONG_THOUGH_SMALL } from './side-by-side.mjs';

it('begins with files that there are', () => {
  expect(LONG_THOUGH_SMALL.filter((path) => !existsSync(join(ROOT, path)))).toEqual([]);
});
