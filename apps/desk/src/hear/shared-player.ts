/** The player of the desk. */
import { Player } from '@shedbook/stand';

let shared: Player | null = null;

/** One player for all lessons and takes, so that the kit is made once and there is one sound thread. */
export function sharedPlayer(): Player {
  shared ??= new Player();
  return shared;
}
