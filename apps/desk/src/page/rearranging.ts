/** What can be done with a beat, a bar or exercises, and where what was copied is kept. */
import type { SlotPlace } from '../edit/strokes.ts';

/** What can be done with what is chosen. */
export type Rearranging = 'copy' | 'cut' | 'paste' | 'backwards' | 'earlier' | 'later';

/** Name under which the browser remembers what was copied, for every lesson and every window. */
export const COPIED_KEY = 'copied';

/** What is written in: an exercise, one of its voices, and a place. */
export interface Chosen {
  /** Number of the exercise, from 0. */
  readonly index: number;
  /** Number of the voice, from 0. */
  readonly part: number;
  readonly place: SlotPlace;
}
