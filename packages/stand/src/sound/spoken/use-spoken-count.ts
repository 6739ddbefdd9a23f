/** Counting aloud, for components. */
import { useEffect, useState } from 'react';
import type { Player } from '../player.ts';
import { type Counting, SpokenCount } from './spoken-count.ts';

/** Counts aloud over what a player plays; null: nothing is said. */
export function useSpokenCount(player: Player, counting: Counting | null): void {
  const [spoken] = useState(() => new SpokenCount(player));
  useEffect(() => spoken.count(counting), [spoken, counting]);
  useEffect(() => () => spoken.count(null), [spoken]);
}
