/** How even each voice was, stretch by stretch, kept on this device beside the log. */
import type { Voice } from '@shedbook/core';
import { keepMany, readPieces } from '../kept/database.ts';

/** How even the voices of one stretch were, round by round. */
export interface EvenStretch {
  /** Name of the stretch. */
  readonly id: string;
  readonly startedAt: string;
  readonly lesson: string;
  readonly exercise: string | null;
  /** Spread of each voice in each round, in milliseconds. */
  readonly spreadsMs: Readonly<Partial<Record<Voice, readonly number[]>>>;
}

/** How the names of its rows begin. */
const BEGINNING = 'even ';

interface Row {
  readonly name: string;
  readonly even?: unknown;
}

/** Keeps a stretch, in place of an earlier version of itself. */
export function keepEven(even: EvenStretch): Promise<void> {
  return keepMany('notes', [{ name: `${BEGINNING}${even.id}`, even } satisfies Row]);
}

/** Whether something that was kept can be read. */
export function isEven(value: unknown): value is EvenStretch {
  const { id, startedAt, lesson, spreadsMs } = (value ?? {}) as Partial<EvenStretch>;
  if (![id, startedAt, lesson].every((each) => typeof each === 'string' && each !== '')) return false;
  const lists: readonly unknown[] = Object.values(spreadsMs ?? {});
  return lists.every((list) => Array.isArray(list) && list.every((each) => Number.isFinite(each)));
}

/** Every stretch that is kept and can be read. */
export async function readEvens(): Promise<readonly EvenStretch[]> {
  const evens: EvenStretch[] = [];
  try {
    for await (const rows of readPieces<Row>('notes', BEGINNING))
      evens.push(...rows.flatMap(({ even }) => (isEven(even) ? [even] : [])));
  } catch {
    // It is said on the page that nothing is kept.
  }
  return evens;
}
