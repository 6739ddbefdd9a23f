/** Making the kit ahead. */

import type { Program } from '@shedbook/playing';
import { useEffect } from 'react';
import type { Player } from './player.ts';

/**
 * Makes the kit for what would play once the page has come to rest, so that it sounds at once when it is asked to.
 * @param quietMs milliseconds without another program after which the page is taken to be at rest
 */
export function usePreparation(player: Player, program: Program | null, quietMs: number): void {
  useEffect(() => {
    if (!program) return;
    const timer = setTimeout(() => player.prepare(program), quietMs);
    return () => clearTimeout(timer);
  }, [player, program, quietMs]);
}
