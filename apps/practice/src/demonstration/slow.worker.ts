/** Slows a recording down beside everything else: seconds of work on a telephone. */
import { type SlowDown, slowDown } from '@shedbook/sound';

/** What is slowed down. */
export interface SlowRequest extends SlowDown {
  readonly samples: Float32Array<ArrayBuffer>;
}

self.onmessage = ({ data: { samples, ...how } }: MessageEvent<SlowRequest>) => {
  const [slow = samples] = slowDown([samples], how);
  self.postMessage(slow, { transfer: [slow.buffer] });
  self.close();
};
