/**
 * The part of the roster that is in view, and who is chosen of it.
 *
 * Conventions: a roster of one part is in view whole; who is chosen stays so while others are looked for.
 */
import type { StoredStudent } from '@shedbook/routes';
import { useCallback, useEffect, useRef, useState } from 'react';
import { useChanges } from '../document/changes.ts';
import { RefusedError } from '../document/client.ts';
import { listStudents, readStudent } from './api.ts';

/** What is in view. */
interface View {
  readonly students: readonly StoredStudent[];
  /** How many were asked for, in view or not. */
  readonly of: number;
  /** Place after which there are more. */
  readonly next: string | null;
}

/** The part in view, and what can be done with it. */
export interface RosterPart {
  /** Null while it is on its way. */
  readonly view: View | null;
  /** Words that names are looked for by. */
  readonly find: string;
  /** Whose sheet is open; undefined where there is nobody. */
  readonly chosen: StoredStudent | undefined;
  readonly seek: (find: string) => Promise<void>;
  readonly more: () => Promise<void>;
  readonly choose: (id: string) => Promise<void>;
  /** Reads again what is in view. */
  readonly refresh: () => Promise<void>;
  /** Shows a student as they are kept now. */
  readonly put: (kept: StoredStudent) => void;
}

/** Reads from a place on until so many are there. */
async function readFrom(find: string, from: string | null, atLeast: number): Promise<View> {
  const students: StoredStudent[] = [];
  let next = from;
  for (;;) {
    const part = await listStudents(find, next);
    students.push(...part.students);
    next = part.next;
    if (next === null || students.length >= atLeast) return { students, of: part.of, next };
  }
}

/** A student as they are now; null where they are gone. */
async function readNow({ id }: Pick<StoredStudent, 'id'>): Promise<StoredStudent | null> {
  try {
    return await readStudent(id);
  } catch (error) {
    if (error instanceof RefusedError && error.code === 'no-such-student') return null;
    throw error;
  }
}

function replaced(all: readonly StoredStudent[], kept: StoredStudent): readonly StoredStudent[] {
  return all.map((each) => (each.id === kept.id ? kept : each));
}

/** Reads the roster. @param onFail says what went wrong */
export function useRosterPart(onFail: (error: unknown) => void): RosterPart {
  const [view, setView] = useState<View | null>(null);
  const [find, setFind] = useState('');
  const [id, setId] = useState<string | null>(null);
  /** Who was chosen and may not be in view. */
  const [apart, setApart] = useState<StoredStudent | null>(null);
  const turn = useRef(0);
  const students = view?.students ?? [];
  const chosen =
    students.find((each) => each.id === id) ?? (apart && apart.id === id ? apart : undefined) ?? students[0];
  const latest = useRef({ view, find, apart });
  latest.current = { view, find, apart };

  /** Shows what was read, unless something else was asked for meanwhile. */
  const show = useCallback(async (reading: Promise<View>) => {
    turn.current += 1;
    const mine = turn.current;
    const read = await reading;
    if (turn.current === mine) setView(read);
  }, []);
  const refresh = useCallback(async () => {
    const { view: before, find: sought, apart: other } = latest.current;
    await show(readFrom(sought, null, before?.students.length ?? 0));
    if (other) setApart(await readNow(other));
  }, [show]);
  useEffect(() => {
    refresh().catch(onFail);
    const look = () => void refresh().catch(() => undefined);
    window.addEventListener('focus', look);
    return () => window.removeEventListener('focus', look);
  }, [refresh, onFail]);
  useChanges(useCallback(() => refresh().catch(() => undefined), [refresh]));
  return {
    ...{ view, find, chosen, refresh },
    seek: async (next) => {
      setFind(next);
      setId(chosen?.id ?? null);
      setApart(chosen ?? null);
      await show(readFrom(next, null, 0)).catch(onFail);
    },
    more: async () => {
      if (!view?.next) return;
      const added = readFrom(find, view.next, 0);
      const joined = added.then((more) => ({ ...more, students: [...view.students, ...more.students] }));
      await show(joined).catch(onFail);
    },
    choose: async (next) => {
      try {
        if (!students.some((each) => each.id === next)) setApart(await readStudent(next));
        setId(next);
      } catch (error) {
        onFail(error);
      }
    },
    put: (kept) => {
      setView((before) => before && { ...before, students: replaced(before.students, kept) });
      setApart((before) => (before?.id === kept.id ? kept : before));
    },
  };
}
