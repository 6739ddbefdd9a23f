/**
 * Listening to one exercise, from the first block to the last loop: the live listener on the clock of the sound.
 *
 * Conventions: seconds and frames of the audio context; the listener's own stream begins at `originSeconds`.
 */
import { Hertz, Seconds, type Voice } from '@shedbook/core';
import {
  type Asked,
  type BesideStream,
  createLiveListener,
  type KnownKit,
  type Listened,
  type LiveListener,
} from '@shedbook/listen';
import type { CapturedBlock } from '../device/capture-messages.ts';
import type { KitNote } from '../device/midi-clock.ts';
import type { EarRole, HeardStroke, LoopTime } from './ear-messages.ts';
import { JoinedStream } from './joined-stream.ts';
import { Pcm } from './pcm.ts';

/** What is listened for, and from when. */
export interface ListeningOptions {
  readonly asked: Asked;
  readonly sampleRateHz: number | null;
  readonly originSeconds: number;
  readonly latencySeconds: number;
  readonly id: string;
  /** What every stroke is, where one plays on one surface; null or left out on a drum set. */
  readonly onPad?: Voice | null;
  /** What alone is wanted; both where left out. Whoever reports keeps the sound for a take. */
  readonly only?: EarRole;
  /** What a line check told of the kit. */
  readonly kit?: KnownKit;
  /** What plays beside the student and is taken out of what is heard, on the clock of the sound. */
  readonly beside?: (originSeconds: number) => BesideStream;
}

/** A loop that is over, and its report. */
export interface LoopHeard {
  /** Which loop of the exercise, from 0. */
  readonly number: number;
  readonly loop: LoopTime;
  readonly heard: Listened;
}

/** A bar of a loop that goes on is over: what can be said by now of it and of those before it. */
export interface BarHeard {
  /** Which loop of the exercise, from 0. */
  readonly number: number;
  readonly loop: LoopTime;
  /** Which bar of the loop, from 1. */
  readonly bar: number;
  readonly heard: Listened;
}

/** A loop's sound is complete so long after its last bar line, in seconds. */
const SETTLED_SECONDS = 0.16;

/** Bar lines nearer than this are one. */
const SAME_SECONDS = 0.002;

/** So much of a recording is handed out at once while it grows, in seconds. */
const PIECE_SECONDS = 4;

/** Longest recording that is kept, in seconds. */
export const LONGEST_TAKE_SECONDS = 300;

/** One exercise being listened to. */
export class Listening {
  readonly #listener: LiveListener;
  readonly #stream: JoinedStream | null;
  readonly #recorded: JoinedStream | null;
  readonly #pcm: Pcm | null;
  /** Samples of the recording that were handed out. */
  #given = 0;
  readonly #loops: {
    readonly loop: LoopTime;
    readonly number: number;
    reported: boolean;
    /** When its bars are over, in seconds of the stream, and of how many of them something was said. */
    readonly barEnds: readonly Seconds[];
    barsTold: number;
  }[] = [];
  #latency: number;
  readonly originSeconds: number;
  readonly id: string;
  /** Whether the take is to be handed over as soon as its last loop is over. */
  isClosing = false;

  constructor(options: ListeningOptions) {
    const { asked, sampleRateHz, originSeconds, latencySeconds, id, only, onPad, kit } = options;
    const originFrame = sampleRateHz === null ? 0 : Math.round(originSeconds * sampleRateHz);
    this.originSeconds = sampleRateHz === null ? originSeconds : originFrame / sampleRateHz;
    const beside = options.beside?.(this.originSeconds) ?? null;
    this.id = id;
    this.#listener = createLiveListener(asked, {
      ...(sampleRateHz === null ? {} : { sampleRateHz: Hertz(sampleRateHz) }),
      latencySeconds: Seconds(latencySeconds),
      onPad: onPad !== undefined && onPad !== null,
      ...(beside ? { beside } : {}),
      ...(kit ? { kit } : {}),
      ...(only ? { only } : {}),
    });
    this.#latency = latencySeconds;
    const stream = () => (sampleRateHz === null ? null : new JoinedStream(originFrame, sampleRateHz));
    this.#stream = stream();
    this.#recorded = stream();
    this.#pcm = sampleRateHz === null || only === 'strokes' ? null : new Pcm(sampleRateHz);
  }

  /** A moment on the clock of the sound as a moment of the stream. */
  #inStream(contextSeconds: number): Seconds {
    return Seconds(contextSeconds - this.originSeconds);
  }

  #onClock = (stroke: ReturnType<LiveListener['note']>): HeardStroke => ({
    ...stroke,
    contextSeconds: stroke.timeSeconds + this.originSeconds,
  });

  /**
   * Takes a block of sound. @param heard the same or an earlier one, as it is to be listened to
   * @returns the strokes that became known
   */
  block(block: CapturedBlock, heard: CapturedBlock = block): readonly HeardStroke[] {
    const pcm = this.#pcm;
    if (pcm && pcm.length < LONGEST_TAKE_SECONDS * pcm.rateHz)
      for (const piece of this.#recorded?.take(block) ?? []) pcm.push(piece);
    const pieces = this.#stream?.take(heard) ?? [];
    return pieces.flatMap((piece) => this.#listener.push(piece).map(this.#onClock));
  }

  /** Takes a stroke of a kit. */
  note({ seconds, voice, levelDb }: KitNote): HeardStroke {
    return this.#onClock(this.#listener.note(this.#inStream(seconds), voice, levelDb));
  }

  /** One time through the form begins; the same one said again, at another tempo, takes its place. */
  begin(loop: LoopTime): void {
    const again = this.#loops.findIndex((each) => each.loop.startSeconds === loop.startSeconds);
    if (again >= 0) this.#loops.splice(again);
    const number = this.#listener.startLoop(this.#inStream(loop.startSeconds), loop.bpm);
    const barEnds = this.#listener.bars.flatMap((bar) => (bar.loop === number ? [bar.endSeconds] : []));
    this.#loops.push({ loop, number, reported: false, barEnds, barsTold: 0 });
  }

  /** What is played was broken off: loops that are not over are forgotten. */
  breakOff(atSeconds: number): void {
    const first = this.#loops.findIndex(({ loop }) => loop.endSeconds > atSeconds + SAME_SECONDS);
    const [open] = first < 0 ? [] : this.#loops.splice(first);
    if (open) this.#listener.stop(this.#inStream(open.loop.startSeconds));
  }

  setLatency(seconds: number): void {
    this.#latency = seconds;
    this.#listener.setLatency(Seconds(seconds));
  }

  /** The loops that are over when the stream has come to a moment, each once. */
  over(seconds: number): readonly LoopHeard[] {
    const settled = seconds - this.#latency - SETTLED_SECONDS;
    const due = this.#loops.filter(({ loop, reported }) => !reported && loop.endSeconds <= settled);
    return due.map((each) => {
      each.reported = true;
      return { number: each.number, loop: each.loop, heard: this.#listener.loopReport(each.number) };
    });
  }

  /** The bars that are over when the stream has come to a moment, each once, of loops that are not. */
  barsOver(seconds: number): readonly BarHeard[] {
    const settled = this.#inStream(seconds - this.#latency - SETTLED_SECONDS);
    return this.#loops.flatMap((each) => {
      const { number, loop, barEnds } = each;
      const told: BarHeard[] = [];
      while (!each.reported && (barEnds[each.barsTold] ?? Number.POSITIVE_INFINITY) <= settled) {
        each.barsTold += 1;
        const bar = each.barsTold;
        told.push({ number, loop, bar, heard: this.#listener.reportUpTo(number, bar) });
      }
      return told;
    });
  }

  /**
   * The recording since this was asked last, once there is a piece of it.
   * @param isAll whether whatever there is will do
   */
  piece(isAll = false): Int16Array<ArrayBuffer> | null {
    const pcm = this.#pcm;
    const fewest = isAll ? 1 : PIECE_SECONDS * (pcm?.rateHz ?? 0);
    if (!pcm || pcm.length - this.#given < fewest) return null;
    this.#given = pcm.length;
    return pcm.fresh();
  }

  /** Whether a loop is still to be reported on. */
  get isOpen(): boolean {
    return this.#loops.some(({ reported }) => !reported);
  }

  /** Everything that was heard and recorded so far. */
  take(): {
    readonly heard: Listened;
    readonly audio: Blob | null;
    /** Of the recording; 0 where there is none. */
    readonly durationSeconds: number;
    readonly loops: readonly LoopTime[];
  } {
    return {
      heard: this.#listener.finish(),
      durationSeconds: (this.#pcm?.length ?? 0) / (this.#pcm?.rateHz ?? 1),
      audio: this.#pcm?.toWav() ?? null,
      loops: this.#loops.map(({ loop }) => loop),
    };
  }
}
