/**
 * Performances that were sent to be filmed: each in a file of its own, as it came, and what was heard of it.
 *
 * Conventions: files arrive in parts, by the byte at which each begins; one that nobody asked after for an hour goes, and
 * all go when the server ends.
 */
import { randomUUID } from 'node:crypto';
import { mkdir, open, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { PERFORMANCE_BYTES } from '@shedbook/routes';
import type { FilmedPerformance } from './film-messages.ts';

/** Performances on their way and those that were heard. */
export interface Performances {
  /** Makes room for one. @returns its name */
  begin(): Promise<string>;
  /** Keeps a part of one. @returns whether there is such a one, with room for it */
  put(id: string, at: number, content: Uint8Array): Promise<boolean>;
  /** Where one lies; null where there is none. */
  pathOf(id: string): string | null;
  /** Keeps what was heard of one. */
  keep(id: string, heard: FilmedPerformance): void;
  /** Those with these names, of each exercise the one with the fewest faults; null where one is gone or was not heard. */
  best(ids: readonly string[]): readonly FilmedPerformance[] | null;
  /** @returns whether there was one */
  drop(id: string): Promise<boolean>;
}

interface One {
  readonly path: string;
  heard: FilmedPerformance | null;
  /** When somebody asked after it last. */
  asked: number;
}

/** Milliseconds that one is kept. */
const KEPT_MS = 3_600_000;

/** Of several takes of an exercise the one with the fewest faults. */
function fewestFaults(all: readonly FilmedPerformance[]): readonly FilmedPerformance[] {
  const exercises = [...new Set(all.map(({ recorded }) => recorded.exercise))];
  return exercises.flatMap((exercise) => {
    const takes = all.filter(({ recorded }) => recorded.exercise === exercise);
    return takes.toSorted((a, b) => a.faults - b.faults).slice(0, 1);
  });
}

/** Performances in a folder. @param now milliseconds that never go back */
export function keepPerformances(folderOf: () => Promise<string>, now: () => number): Performances {
  const all = new Map<string, One>();
  const drop = async (id: string): Promise<boolean> => {
    const one = all.get(id);
    all.delete(id);
    if (one) await rm(one.path, { force: true });
    return one !== undefined;
  };
  const found = (id: string): One | null => {
    const one = all.get(id) ?? null;
    if (one) one.asked = now();
    return one;
  };
  return {
    begin: async () => {
      for (const [id, { asked }] of all) if (now() - asked > KEPT_MS) await drop(id);
      const id = randomUUID();
      const folder = join(await folderOf(), 'performances');
      await mkdir(folder, { recursive: true });
      const path = join(folder, id);
      await (await open(path, 'w')).close();
      all.set(id, { path, heard: null, asked: now() });
      return id;
    },
    put: async (id, at, content) => {
      const one = found(id);
      if (!one || at + content.length > PERFORMANCE_BYTES) return false;
      const file = await open(one.path, 'r+');
      try {
        await file.write(content, 0, content.length, at);
      } finally {
        await file.close();
      }
      return true;
    },
    pathOf: (id) => found(id)?.path ?? null,
    keep: (id, heard) => {
      const one = found(id);
      if (one) one.heard = heard;
    },
    best: (ids) => {
      const heard = ids.map((id) => found(id)?.heard ?? null);
      return heard.includes(null) ? null : fewestFaults(heard.filter((each) => each !== null));
    },
    drop,
  };
}
