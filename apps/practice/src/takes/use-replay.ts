/** One round of a take in slow motion against its model, with where it is on the page. */
import { type Slow, useRound } from '@shedbook/stand/takes';
import { useMemo } from 'react';
import { formOf } from '../session/choice.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import type { Take } from './take.ts';

/** The replay of a round. @param number of the take's exercise today */
export function useReplay(
  { take, number, slow }: { readonly take: Take; readonly number: number | null; readonly slow: Slow },
  audioOf: () => Promise<Blob | null>,
) {
  const { pack, player, stop: stopPlayer } = usePracticeSession();
  const { lesson } = pack;
  const form = useMemo(
    () => ({ ...formOf(lesson, take.form), repeat: 1, countInBars: 0 }),
    [lesson, take.form],
  );
  const context = () => {
    stopPlayer();
    return player.context();
  };
  return { ...useRound({ lesson, form, number, take, slow }, { context, audioOf }), form };
}
