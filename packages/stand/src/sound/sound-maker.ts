/** What sounds a program: a thread of its own, or, where that does not come, the page itself. */
import type { Order, Report } from './messages.ts';

/** Takes orders; what it says comes as reports. */
export interface SoundMaker {
  readonly order: (order: Order) => void;
  /** Takes the sounds that come out of a port. */
  readonly takeKit: (port: MessagePort) => void;
}

/** Where a sound maker sounds, and whom it tells. */
export interface MakerOptions {
  readonly context: AudioContext;
  readonly output: AudioNode;
  readonly onReport: (report: Report) => void;
}
