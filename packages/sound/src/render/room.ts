/**
 * A small room: a few early reflections and a short, dark tail.
 *
 * Conventions: hears both channels together, adds to each; state runs on from block to block, sample by sample, so the
 * size of blocks changes nothing. About 0.35 s of reverberation, a little under 20 dB below the dry sound.
 * Source: J.-M. Jot, "Digital delay networks for designing artificial reverberators", AES 1991: four delay lines
 * mixed by a Hadamard matrix, gains from delay and reverberation time.
 */
import { leftAfter } from '@shedbook/signal';

type Taps = readonly (readonly [seconds: number, gain: number])[];

/** Reflections in each channel: delay in seconds, gain. */
const EARLY: Readonly<Record<'left' | 'right', Taps>> = {
  left: [
    [0.0071, 0.092],
    [0.0123, 0.07],
    [0.0197, 0.053],
  ],
  right: [
    [0.0083, 0.088],
    [0.0139, 0.067],
    [0.0181, 0.057],
  ],
};
const LINE_SECONDS = [0.0231, 0.0297, 0.0379, 0.0413] as const;
const REVERBERATION_SECONDS = 0.35;
const TAIL_GAIN = 0.07;
const DULL_HZ = 5200;
const DAMPING_HZ = 4200;
const LOW_CUT_HZ = 140;
/** Keeps numbers from becoming too small for the processor's fast path. */
const FLOOR = 1e-15;

/** How long a room sounds on after its last input, in seconds. */
export const ROOM_RING_SECONDS = 0.5;

/** The walls around the set. */
export interface Room {
  /** Adds the room's answer to the first `frames` samples of both channels. */
  process(left: Float32Array, right: Float32Array, frames: number): void;
}

function onePole(hz: number, rate: number): number {
  return 1 - Math.exp((-2 * Math.PI * hz) / rate);
}

/** The early part: the last fifth of a second of what was sent, darkened. */
interface Reflections {
  readonly history: Float32Array;
  readonly dull: number;
  readonly cut: number;
  low: number;
  rumble: number;
  at: number;
}

function createReflections(rate: number): Reflections {
  const history = new Float32Array(2 ** Math.ceil(Math.log2(rate * 0.2)));
  return { history, dull: onePole(DULL_HZ, rate), cut: onePole(LOW_CUT_HZ, rate), low: 0, rumble: 0, at: 0 };
}

/** Takes in samples, both channels together; returns where in the history they begin. */
function take(room: Reflections, left: Float32Array, right: Float32Array, frames: number): number {
  const { history, dull, cut, at } = room;
  const mask = history.length - 1;
  let { low, rumble } = room;
  for (let i = 0; i < frames; i += 1) {
    const x = (left[i] as number) + (right[i] as number);
    rumble += cut * (x - rumble);
    low += dull * (x - rumble - low) + FLOOR;
    history[(at + i) & mask] = low;
  }
  room.low = low;
  room.rumble = rumble;
  room.at = (at + frames) & mask;
  return at;
}

/** The tail: four delay lines that feed each other. */
interface Tail {
  readonly lines: readonly [Float32Array, Float32Array, Float32Array, Float32Array];
  readonly gains: readonly [number, number, number, number];
  readonly damp: number;
  /** Where each line is read and written next. */
  readonly at: Int32Array;
  readonly lows: Float64Array;
}

function createTail(rate: number): Tail {
  const damp = onePole(DAMPING_HZ, rate);
  const line = (seconds: number) => new Float32Array(Math.round(seconds * rate));
  const gain = (seconds: number) => 0.5 * leftAfter(seconds, REVERBERATION_SECONDS) * damp;
  const [a, b, c, d] = LINE_SECONDS;
  return {
    lines: [line(a), line(b), line(c), line(d)],
    gains: [gain(a), gain(b), gain(c), gain(d)],
    damp,
    at: new Int32Array(4),
    lows: new Float64Array(4),
  };
}

/** Where the sends of one block lie in the history. */
interface Block {
  readonly history: Float32Array;
  readonly begin: number;
  readonly frames: number;
}

function addTaps(taps: Taps, { history, begin, frames }: Block, rate: number, out: Float32Array): void {
  const mask = history.length - 1;
  const [a, b, c] = taps.map(([seconds]) => begin - Math.round(seconds * rate) + history.length) as [
    number,
    number,
    number,
  ];
  const [ga, gb, gc] = taps.map(([, gain]) => gain) as [number, number, number];
  for (let i = 0; i < frames; i += 1) {
    const near = ga * (history[(a + i) & mask] as number) + gb * (history[(b + i) & mask] as number);
    out[i] = (out[i] as number) + near + gc * (history[(c + i) & mask] as number);
  }
}

function runTail(tail: Tail, block: Block, left: Float32Array, right: Float32Array): void {
  const { history, begin, frames } = block;
  const mask = history.length - 1;
  const [la, lb, lc, ld] = tail.lines;
  const [ga, gb, gc, gd] = tail.gains;
  const [na, nb, nc, nd] = [la.length, lb.length, lc.length, ld.length];
  const keep = 1 - tail.damp;
  let [a, b, c, d] = tail.lows as unknown as [number, number, number, number];
  let [ia, ib, ic, id] = tail.at as unknown as [number, number, number, number];
  for (let i = 0; i < frames; i += 1) {
    a = keep * a + ga * (la[ia] as number);
    b = keep * b + gb * (lb[ib] as number);
    c = keep * c + gc * (lc[ic] as number);
    d = keep * d + gd * (ld[id] as number);
    left[i] = (left[i] as number) + TAIL_GAIN * (a + c);
    right[i] = (right[i] as number) + TAIL_GAIN * (b + d);
    const x = history[(begin + i) & mask] as number;
    const [both, apart, first, second] = [a + c, a - c, b + d, b - d];
    la[ia] = x + both + first;
    lb[ib] = x + both - first;
    lc[ic] = x + apart + second;
    ld[id] = x + apart - second;
    ia = ia + 1 === na ? 0 : ia + 1;
    ib = ib + 1 === nb ? 0 : ib + 1;
    ic = ic + 1 === nc ? 0 : ic + 1;
    id = id + 1 === nd ? 0 : id + 1;
  }
  tail.lows.set([a, b, c, d]);
  tail.at.set([ia, ib, ic, id]);
}

/** Delays are looked up a block at a time, so a block may not be longer than this, in samples. */
const LONGEST_BLOCK = 1024;

/** A room at a sample rate, silent at first. */
export function createRoom(sampleRateHz: number): Room {
  const reflections = createReflections(sampleRateHz);
  const tail = createTail(sampleRateHz);
  const { history } = reflections;
  const part = (left: Float32Array, right: Float32Array, frames: number) => {
    const block = { history, begin: take(reflections, left, right, frames), frames };
    addTaps(EARLY.left, block, sampleRateHz, left);
    addTaps(EARLY.right, block, sampleRateHz, right);
    runTail(tail, block, left, right);
  };
  return {
    process(left, right, frames) {
      for (let from = 0; from < frames; from += LONGEST_BLOCK) {
        const to = Math.min(frames, from + LONGEST_BLOCK);
        part(left.subarray(from, to), right.subarray(from, to), to - from);
      }
    },
  };
}
