/** What time is measured by. */
import type { Allowance } from '../level/levels.data.ts';
import type { Places } from './places.ts';

/** Limits and places, and the tempo that was asked. */
export interface Timing {
  readonly limits: Allowance;
  readonly places: Places;
  readonly isAlongClick: boolean;
  readonly kind: 'audio' | 'midi';
  /** The tempo asked of each round, by its index. */
  readonly askedBpm: (round: number, playedBpm: number) => number;
}
