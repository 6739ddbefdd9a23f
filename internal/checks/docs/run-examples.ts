/** Running the examples in doc comments. */
import { isDeepStrictEqual } from 'node:util';
import { workspaceOf } from '../tree.mjs';
import { examplesOf } from './examples.mjs';

/** An example of a doc comment: an expression and what it gives, as they are written. */
export interface Example {
  readonly path: string;
  readonly line: number;
  readonly expression: string;
  readonly result: string;
}

interface Tree {
  has(path: string): boolean;
  fileOf(path: string): string;
}

/** What an example may name: what its own file exports, its package, and core. */
async function namesFor(tree: Tree, path: string): Promise<Record<string, unknown>> {
  const core = await import('@shedbook/core');
  const entry = `${workspaceOf(path)}/src/index.ts`;
  const room = entry.startsWith('packages/') && tree.has(entry) ? await import(tree.fileOf(entry)) : {};
  return { ...core, ...room, ...(await import(tree.fileOf(path))) };
}

function evaluate(expression: string, names: Record<string, unknown>): unknown {
  return new Function(...Object.keys(names), `return (${expression});`)(...Object.values(names));
}

/** Whether a value is what an example says; a number as exactly as it is written there. */
function isAsWritten(found: unknown, expected: unknown, result: string): boolean {
  if (typeof expected !== 'number' || typeof found !== 'number') return isDeepStrictEqual(found, expected);
  const decimals = result.split('.')[1]?.length ?? 9;
  return Math.abs(found - expected) <= 10 ** -decimals / 2;
}

/** Why an example is wrong, as `path:line: what is wrong`; null where it is right. */
export async function lieOf(tree: Tree, { path, line, expression, result }: Example): Promise<string | null> {
  try {
    const names = await namesFor(tree, path);
    const [found, expected] = [evaluate(expression, names), evaluate(result, names)];
    if (isAsWritten(found, expected, result)) return null;
    return `${path}:${line}: the example gives ${JSON.stringify(found)}, not ${result}`;
  } catch (fault) {
    return `${path}:${line}: the example does not run: ${fault}`;
  }
}

/** The examples of a tree that can be run. */
export function runnable(tree: Tree): readonly Example[] {
  return examplesOf(tree).filter(({ result }: { result: string | null }) => result !== null && result !== '');
}
