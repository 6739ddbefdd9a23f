/** What is known of a loudspeaker beside a stream that goes on. */
import type { LoudspeakerHeard } from '@shedbook/core';

/** A loudspeaker that was taken out of a stream. */
export interface BesideStream {
  /** The loudspeaker, where it is heard. */
  readonly heard: LoudspeakerHeard | null;
  /** Whether what sounds at a moment of the stream may be the loudspeaker's. */
  readonly isDoubtful: (seconds: number) => boolean;
}
