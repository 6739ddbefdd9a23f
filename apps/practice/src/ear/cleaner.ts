/**
 * The microphone's sound without what the page plays meanwhile, where blocks say what that is.
 *
 * Conventions: frames and seconds of the audio context; what comes out is up to a block behind what goes in.
 */
import { Hertz } from '@shedbook/core';
import { type BesideStream, LiveLoudspeaker } from '@shedbook/listen';
import { joined } from '@shedbook/signal';
import type { CapturedBlock } from '../device/capture-messages.ts';
import { JoinedStream } from './joined-stream.ts';

interface Room {
  readonly loudspeaker: LiveLoudspeaker;
  /** Both sounds, from the frame on with which they began. */
  readonly microphone: JoinedStream;
  readonly played: JoinedStream;
  readonly rateHz: number;
  readonly firstFrame: number;
  /** Frame of the next sample that comes out. */
  next: number;
}

/** Takes what the page plays out of what its microphone hears. */
export class Cleaner {
  #room: Room | null = null;

  /** A block as it is to be listened to; as it is where nothing is known of what plays. */
  clean(block: CapturedBlock, rateHz: number): CapturedBlock {
    const { frame, samples, played } = block;
    if (!played || rateHz === 0) return block;
    this.#room ??= {
      loudspeaker: new LiveLoudspeaker(Hertz(rateHz)),
      microphone: new JoinedStream(frame, rateHz),
      played: new JoinedStream(frame, rateHz),
      ...{ rateHz, firstFrame: frame, next: frame },
    };
    const room = this.#room;
    const cleaned = room.loudspeaker.push(
      joined(room.microphone.take({ frame, samples })),
      joined(room.played.take({ frame, samples: played })),
    );
    const heard = { frame: room.next, samples: cleaned as Float32Array<ArrayBuffer> };
    room.next += cleaned.length;
    return heard;
  }

  /** What a stream that begins at a moment has to know of the loudspeaker. */
  from(contextSeconds: number): BesideStream {
    const room = () => this.#room;
    const inRoom = (seconds: number) => {
      const now = room();
      return now ? now.loudspeaker.isDoubtful(contextSeconds + seconds - now.firstFrame / now.rateHz) : false;
    };
    return {
      get heard() {
        return room()?.loudspeaker.heard ?? null;
      },
      isDoubtful: inRoom,
    };
  }
}
