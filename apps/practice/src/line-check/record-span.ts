/**
 * A stretch of what a microphone hears, without holes, as soon as its last block has come.
 *
 * Conventions: seconds of the audio context that plays.
 */
import type { CapturedBlock } from '../device/capture-messages.ts';
import type { Microphone } from '../device/microphone.ts';

/** What of a microphone is used. */
export type SpanSource = Pick<Microphone, 'listen' | 'rateHz'>;

/** Records from a moment that has not come yet to another. @returns null where it was broken off */
export function recordSpan(
  microphone: SpanSource,
  { fromSeconds, toSeconds }: { readonly fromSeconds: number; readonly toSeconds: number },
  signal: AbortSignal,
): Promise<Float32Array | null> {
  const { rateHz } = microphone;
  const first = Math.round(fromSeconds * rateHz);
  const samples = new Float32Array(Math.round((toSeconds - fromSeconds) * rateHz));
  return new Promise((resolve) => {
    const end = (recorded: Float32Array | null) => {
      stop();
      resolve(recorded);
    };
    const take = ({ frame, samples: block }: CapturedBlock) => {
      const at = frame - first;
      const own = block.subarray(Math.max(0, -at), Math.max(0, samples.length - at));
      if (at < samples.length && own.length > 0) samples.set(own, Math.max(0, at));
      if (at + block.length >= samples.length) end(samples);
    };
    const stop = microphone.listen(take);
    signal.addEventListener('abort', () => end(null), { once: true });
  });
}
