/** Two sides to compare by ear: layers, mutes and balance, one set heard now and the other waiting. */
import type { Layer } from '@shedbook/core';
import { upToLayer } from './heard.ts';
import type { SoundChoice } from './sound-choice.ts';

/** Name of a side. */
export type SideName = 'A' | 'B';

/** What a side has of its own; everything else is the same on both. */
export type Side = Pick<SoundChoice, 'upTo' | 'mute' | 'trimDb'>;

/** The side that a choice is. */
export function sideOf({ upTo, mute, trimDb }: SoundChoice): Side {
  return { upTo, mute, trimDb };
}

/** What side B is before anybody has set it: side A without its last layer. */
export function firstOther(choice: SoundChoice, layers: readonly Layer[]): Side {
  return { ...sideOf(choice), upTo: upToLayer(layers, Math.max(1, layers.length - 1)) };
}

/** What is chosen, what waits, and which of the two is heard. */
export interface Comparison {
  readonly choice: SoundChoice;
  readonly other: Side;
  readonly side: SideName;
}

/** The other side heard, and this one waiting. */
export function swapSides({ choice, other, side }: Comparison): Comparison {
  return { choice: { ...choice, ...other }, other: sideOf(choice), side: side === 'A' ? 'B' : 'A' };
}
