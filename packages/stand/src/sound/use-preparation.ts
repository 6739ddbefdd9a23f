/** Making ready what sounds, ahead. */

import type { Program } from '@shedbook/playing';
import { useEffect } from 'react';
import type { Player } from './player.ts';

/** What a browser may let a page sound after. */
const PRESSES = ['pointerdown', 'keydown'] as const;

/**
 * Makes the kit for what would play once the page has come to rest, and opens what sounds, so that it sounds at once
 * when it is asked to. A press on the page opens it, too, where that comes before.
 * @param quietMs milliseconds without another program after which the page is taken to be at rest
 */
export function usePreparation(player: Player, program: Program | null, quietMs: number): void {
  useEffect(() => {
    if (!program) return;
    const timer = setTimeout(() => {
      player.prepare(program);
      player.warm();
    }, quietMs);
    return () => clearTimeout(timer);
  }, [player, program, quietMs]);
  useEffect(() => {
    const warm = () => player.warm();
    const early = { capture: true, passive: true } as const;
    for (const press of PRESSES) window.addEventListener(press, warm, early);
    return () => {
      for (const press of PRESSES) window.removeEventListener(press, warm, early);
    };
  }, [player]);
}
