/** The lessons of the student on this host: the page's own, and those that were opened at other addresses. */
import type { ShelfLesson } from '@shedbook/coach';
import { inSetUp } from '@shedbook/core';
import type { Pack } from '@shedbook/pack';
import { createContext, type ReactNode, useContext, useMemo } from 'react';
import { rememberedOwn } from '../kept/students.ts';
import { goalName, readGoal, withGoal } from './own-goal.ts';
import { ownSetUp } from './own-set-up.ts';
import { usePracticeSession } from './practice-session.tsx';

const ShelfContext = createContext<readonly Pack[]>([]);

/** Gives the packs to what is inside. */
export function ShelfProvider({
  packs,
  children,
}: {
  readonly packs: readonly Pack[];
  readonly children: ReactNode;
}) {
  return <ShelfContext value={packs}>{children}</ShelfContext>;
}

/** The packs, each with the student's own goal in it, by their names. */
export function usePacks(): readonly Pack[] {
  const packs = useContext(ShelfContext);
  const { pack: open } = usePracticeSession();
  return useMemo(
    () =>
      packs
        .map((pack) =>
          pack.id === open.id ? open : withGoal(pack, readGoal(rememberedOwn(goalName(pack.id)))),
        )
        .toSorted((a, b) => (a.id < b.id ? -1 : 1)),
    [packs, open],
  );
}

/** The packs as lessons that a plan is made from. */
export function useShelf(): readonly ShelfLesson[] {
  const packs = usePacks();
  const own = ownSetUp();
  return useMemo(() => packs.map(({ id, lesson }) => ({ id, lesson: inSetUp(lesson, own) })), [packs, own]);
}
