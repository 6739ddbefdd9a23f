/**
 * The lessons that the student who practises now has opened on this host, and which of them today's list takes from.
 *
 * Conventions: by their lasting names.
 */
import { rememberedOwn, rememberOwn } from './students.ts';

/** Whether today's list takes from a lesson, by its lasting name. */
export type OwnLessons = Readonly<Record<string, boolean>>;

const KEY = 'plan.lessons';

/** What is kept; empty where nothing is, or nothing that can be read. */
export function ownLessons(): OwnLessons {
  try {
    const kept: unknown = JSON.parse(rememberedOwn(KEY) ?? '{}');
    const entries = Object.entries(typeof kept === 'object' && kept !== null ? kept : {});
    return Object.fromEntries(entries.filter(([, isIn]) => typeof isIn === 'boolean'));
  } catch {
    return {};
  }
}

/** Takes a lesson into today's list, or leaves it out. @returns all of them as they are then */
export function keepLesson(lesson: string, isIn: boolean): OwnLessons {
  const all = { ...ownLessons(), [lesson]: isIn };
  rememberOwn(KEY, JSON.stringify(all));
  return all;
}
