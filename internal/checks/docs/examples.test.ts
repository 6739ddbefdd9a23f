import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectTree, ROOT, workspaceOf } from '../tree.mjs';
import { examplesOf } from './examples.mjs';

/** What an example may name: what its own file exports, and its package besides. */
async function namesFor(path: string): Promise<Record<string, unknown>> {
  const core = await import('@shedbook/core');
  const room = workspaceOf(path)?.startsWith('packages/')
    ? await import(join(ROOT, workspaceOf(path)!, 'src/index.ts'))
    : {};
  return { ...core, ...room, ...(await import(join(ROOT, path))) };
}

function evaluate(expression: string, names: Record<string, unknown>): unknown {
  return new Function(...Object.keys(names), `return (${expression});`)(...Object.values(names));
}

/** How many decimals a number is written with. */
function decimals(result: string): number {
  return (result.split('.')[1] ?? '').length;
}

interface Example {
  readonly path: string;
  readonly line: number;
  readonly expression: string;
  readonly result: string;
}

const EXAMPLES: readonly Example[] = examplesOf(projectTree(ROOT));

describe('examples in doc comments', () => {
  it('are found', () => {
    expect(EXAMPLES.length).toBeGreaterThan(25);
  });

  it.each(EXAMPLES)('$path:$line: $expression', async ({ path, expression, result }) => {
    const names = await namesFor(path);
    const [found, expected] = [evaluate(expression, names), evaluate(result, names)];
    if (typeof expected === 'number') expect(found).toBeCloseTo(expected, decimals(result) || 9);
    else expect(found).toEqual(expected);
  });
});
