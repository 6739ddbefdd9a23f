import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { problemsOf } from './problems.mjs';
import { laidOver, PLANTED, ROOT } from './tree.mjs';

/**
 * Each folder of `planted` but `clean` holds what makes one fault when it is laid over `clean`, and in expected.txt the
 * problems, all of them, that the checks must report.
 */
const FOLDER = join(ROOT, PLANTED);
const CLEAN = join(FOLDER, 'clean');
const FAULTS = readdirSync(FOLDER).filter((name) => name !== 'clean');

describe('planted faults', () => {
  it('finds nothing wrong in the clean tree', () => {
    expect(problemsOf(laidOver(CLEAN))).toEqual([]);
  });

  it('has faults to look for', () => {
    expect(FAULTS.length).toBeGreaterThan(60);
  });

  it.each(FAULTS)('refuses %s', (name) => {
    const expected = readFileSync(join(FOLDER, name, 'expected.txt'), 'utf8')
      .trimEnd()
      .split('\n');
    expect(problemsOf(laidOver(CLEAN, join(FOLDER, name))).toSorted()).toEqual(expected.toSorted());
  });
});
