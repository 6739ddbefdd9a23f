import { describe, expect, it } from 'vitest';
import { projectTree, ROOT } from '../tree.mjs';
import { lieOf, runnable } from './run-examples.ts';

const HOUSE = projectTree(ROOT);
const EXAMPLES = runnable(HOUSE);

describe('examples in doc comments', () => {
  it('are found', () => {
    expect(EXAMPLES.length).toBeGreaterThan(25);
  });

  it.each(EXAMPLES)('$path:$line: $expression', async (example) => {
    expect(await lieOf(HOUSE, example)).toBeNull();
  });
});
