/**
 * Saying how long a stroke took to the notation, for whoever measures it.
 *
 * Conventions: milliseconds from a stroke's onset, as it came in, to the frame that shows it.
 */

import { clocksOf, outputLatencyOf } from '@shedbook/stand';
import type { EarState } from '../ear/ear.ts';
import type { HeardStroke } from '../ear/ear-messages.ts';

/** Name of the event on `window` that says that a stroke was drawn. */
export const DRAWN_EVENT = 'shedbook:heard';

/** A stroke that was drawn. */
export interface Drawn {
  readonly stroke: HeardStroke;
  /** From its onset, as it came in, to the frame that shows it, in milliseconds. */
  readonly afterMs: number;
}

/**
 * Says, when the frame is shown, how long it took. A kit's strokes are on the clock of what leaves the loudspeaker; a
 * microphone's blocks are on that of the sound thread, which is ahead by the latency of the output.
 */
export function tellDrawn(context: AudioContext, stroke: HeardStroke, input: EarState['input']): void {
  requestAnimationFrame(() => {
    const { contextSeconds, pageMs } = clocksOf(context, performance.now());
    const ahead = input === 'kit' ? 0 : outputLatencyOf(context);
    const now = contextSeconds + ahead + (performance.now() - pageMs) / 1000;
    const detail: Drawn = { stroke, afterMs: (now - stroke.contextSeconds) * 1000 };
    window.dispatchEvent(new CustomEvent(DRAWN_EVENT, { detail }));
  });
}
