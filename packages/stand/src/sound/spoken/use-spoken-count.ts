/** Counting aloud, for components; what counts is loaded when it is first wanted. */
import { useEffect, useRef, useState } from 'react';
import type { Player } from '../player.ts';
import type { Counting, SpokenCount } from './spoken-count.ts';

/** Counts aloud over what a player plays; null: nothing is said. */
export function useSpokenCount(player: Player, counting: Counting | null): void {
  const [spoken, setSpoken] = useState<SpokenCount | null>(null);
  const isGone = useRef(false);
  const isWanted = counting !== null;
  useEffect(() => {
    if (!isWanted) return;
    void import('./spoken-count.ts').then(
      (module) => {
        if (!isGone.current) setSpoken((before) => before ?? new module.SpokenCount(player));
      },
      () => undefined,
    );
  }, [isWanted, player]);
  useEffect(() => spoken?.count(counting), [spoken, counting]);
  useEffect(() => {
    isGone.current = false;
    return () => {
      isGone.current = true;
    };
  }, []);
  useEffect(() => () => spoken?.count(null), [spoken]);
}
