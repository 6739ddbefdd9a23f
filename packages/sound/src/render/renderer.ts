/**
 * The renderer: strokes in, blocks of stereo sound out.
 *
 * It is what an audio worklet hosts and what whole files are made with: strokes are scheduled ahead at exact
 * sample positions, blocks of any size come out, and the samples do not depend on how they are cut into blocks.
 *
 * Conventions: seconds and samples from the start of the rendering. Strokes are scheduled in order of time.
 */

import {
  type Hertz,
  type Random,
  Samples,
  type Seconds,
  type SetUp,
  secondsToSamples,
  seededRandom,
  type Voice,
} from '@shedbook/core';
import { dbToGain } from '@shedbook/signal';
import type { Kit } from '../kit/kit.ts';
import { blendStroke, TAIL_FROM_SECONDS } from '../kit/measured-sound.ts';
import type { SoundName } from '../kit/sound.ts';
import { addHit, CHOKE_T60_SECONDS, chokeHit, endOf, type Hit, oneBuffer, twoBuffers } from './hit.ts';
import { INSTRUMENT_OF, INSTRUMENTS, type Instrument, placing } from './picture.ts';
import { createRinging, type Ringing } from './ringing.ts';
import { createRoom, ROOM_RING_SECONDS } from './room.ts';
import type { SoundingStroke } from './sound-of.ts';
import { type Blow, blowsOf } from './strokes-to-hits.ts';

/** On what, from where and in what room strokes are played. */
export interface RendererOptions {
  readonly kit: Kit;
  /** Mirrors the stereo picture; right-handed unless told. */
  readonly setUp?: SetUp;
  /** Instruments stand where a drummer hears them; otherwise all in the middle. On unless told. */
  readonly picture?: boolean;
  /** A small room around the set. On unless told. */
  readonly room?: boolean;
  /** Another seed plays the same strokes with other small differences. */
  readonly seed?: number | string;
}

/** Strokes in, blocks of sound out. */
export interface Renderer {
  readonly sampleRateHz: Hertz;
  /** Samples rendered so far. */
  position(): Samples;
  /** Strokes to come, in order of time. One that is late sounds at once. */
  schedule(strokes: readonly SoundingStroke[]): void;
  /** A hand on a ringing cymbal, or the end of any voice's ringing. */
  choke(voice: Voice, timeSeconds: Seconds): void;
  /** Writes the next `frames` samples over the start of both buffers. */
  render(left: Float32Array, right: Float32Array, frames: number): void;
  /** Whether nothing sounds or is waiting any more. */
  isSilent(): boolean;
}

/** What falls silent when the foot closes the hi-hats, and what closes them. */
const OPEN_HATS: ReadonlySet<SoundName> = new Set(['hihat-open', 'hihat-splash']);
const CLOSERS: ReadonlySet<SoundName> = new Set(['hihat', 'hihat-foot']);

/** Strokes of one instrument that ring at once; what is older than them and than this is covered and dies away. */
const MOST_STROKES_RINGING = 6;
const COVERED_AFTER_SECONDS = 1.6;
const COVERED_T60_SECONDS = 0.5;

interface Waiting {
  readonly hit: Hit;
  readonly sound: SoundName;
}

interface Channel {
  readonly left: number;
  readonly right: number;
  sounding: Waiting[];
}

/** Adds an instrument to both channels. */
function spread(
  channel: Channel,
  mono: Float32Array,
  left: Float32Array,
  right: Float32Array,
  frames: number,
): void {
  const [gl, gr] = [channel.left, channel.right];
  for (let i = 0; i < frames; i += 1) {
    const sample = mono[i] as number;
    left[i] = (left[i] as number) + gl * sample;
    right[i] = (right[i] as number) + gr * sample;
  }
}

function drawChoice(random: Random) {
  return { softTake: random.next(), hardTake: random.next(), timbre: random.next() };
}

/** A wash of less than this part of its full gain is left out. */
const LEAST_WASH = 0.05;

/** Turns blows into hits; remembers how every instrument rings. */
function createStriker(kit: Kit, seed: string) {
  const random = seededRandom(`${seed} strokes`);
  const tailFrom = Math.round(TAIL_FROM_SECONDS * kit.sampleRateHz);
  const ringing = new Map(INSTRUMENTS.map((name) => [name, createRinging()]));
  return {
    choke: (instrument: Instrument) => ringing.get(instrument)?.choke(),
    strike(blow: Blow, start: number): readonly Hit[] {
      const sound = kit.sound(blow.sound);
      const state = ringing.get(INSTRUMENT_OF[blow.sound]) as Ringing;
      const { ownGain, washGain } = state.strike(sound, blow.timeSeconds, blow.levelDb);
      const blend = blendStroke(sound, blow.levelDb, drawChoice(random));
      const { softGain, hardGain } = blend;
      const hits = [
        twoBuffers(start, { ...blend, softGain: softGain * ownGain, hardGain: hardGain * ownGain }),
      ];
      if (blend.tail) hits.push(oneBuffer(start + tailFrom, blend.tail, blend.tailGain * ownGain));
      const wash = sound.wash[random.below(Math.max(1, sound.wash.length))];
      const gain = washGain * ownGain * dbToGain(blow.levelDb);
      if (wash && washGain > LEAST_WASH) hits.push(oneBuffer(start, wash, gain));
      return hits;
    },
  };
}

/** @returns a renderer at the kit's sample rate, at rest. */
export function createRenderer(options: RendererOptions): Renderer {
  const { kit, setUp = 'right-handed', picture = true } = options;
  const rate = kit.sampleRateHz;
  const striker = createStriker(kit, String(options.seed ?? 'take'));
  const room = (options.room ?? true) ? createRoom(rate) : null;
  const channels = new Map<Instrument, Channel>(
    INSTRUMENTS.map((name) => [name, { ...placing(name, setUp, picture), sounding: [] }]),
  );
  const latest = new Map<Instrument, (readonly Hit[])[]>();
  let waiting: Waiting[] = [];
  let position = 0;
  let quietFrom = 0;
  let mono = new Float32Array(0);

  const each = (which: (sound: SoundName) => boolean, then: (hit: Hit) => void) => {
    for (const { sound, hit } of waiting) if (which(sound)) then(hit);
    for (const { sounding } of channels.values())
      for (const { sound, hit } of sounding) if (which(sound)) then(hit);
  };
  const chokeWhere = (which: (sound: SoundName) => boolean, at: number) =>
    each(which, (hit) => chokeHit(hit, Math.max(at, position), CHOKE_T60_SECONDS, rate));

  const scheduleBlow = (blow: Blow) => {
    const start = Math.max(position, Math.round(blow.timeSeconds * rate));
    if (CLOSERS.has(blow.sound)) chokeWhere((sound) => OPEN_HATS.has(sound), start);
    const hits = striker.strike(blow, start);
    coverOldest(INSTRUMENT_OF[blow.sound], hits, start);
    for (const hit of hits) waiting.push({ hit, sound: blow.sound });
  };

  const isCovered = (hits: readonly Hit[] | undefined, at: number) =>
    at - (hits?.[0]?.start ?? at) > COVERED_AFTER_SECONDS * rate;

  const coverOldest = (instrument: Instrument, hits: readonly Hit[], at: number) => {
    const strokes = latest.get(instrument) ?? [];
    latest.set(instrument, strokes);
    strokes.push(hits);
    while (strokes.length > MOST_STROKES_RINGING && isCovered(strokes[0], at)) {
      for (const hit of strokes.shift() ?? []) chokeHit(hit, at, COVERED_T60_SECONDS, rate);
    }
  };

  const start = (until: number) => {
    let count = 0;
    for (const next of waiting) {
      if (next.hit.start >= until) break;
      channels.get(INSTRUMENT_OF[next.sound])?.sounding.push(next);
      quietFrom = Math.max(quietFrom, next.hit.start + next.hit.length);
      count += 1;
    }
    if (count > 0) waiting = waiting.slice(count);
  };

  const mixChannel = (channel: Channel, left: Float32Array, right: Float32Array, frames: number) => {
    mono.fill(0, 0, frames);
    for (const { hit } of channel.sounding) addHit(mono, hit, position, frames, rate);
    spread(channel, mono, left, right, frames);
    const after = position + frames;
    channel.sounding = channel.sounding.filter(({ hit }) => endOf(hit, rate) > after);
  };

  return {
    sampleRateHz: rate,
    position: () => Samples(position),
    schedule(strokes) {
      for (const stroke of strokes) for (const blow of blowsOf(stroke)) scheduleBlow(blow);
      waiting.sort((a, b) => a.hit.start - b.hit.start);
    },
    choke(voice, timeSeconds) {
      const instrument = INSTRUMENT_OF[voice];
      chokeWhere((sound) => INSTRUMENT_OF[sound] === instrument, secondsToSamples(timeSeconds, rate));
      striker.choke(instrument);
    },
    render(left, right, frames) {
      if (mono.length < frames) mono = new Float32Array(frames);
      start(position + frames);
      left.fill(0, 0, frames);
      right.fill(0, 0, frames);
      for (const channel of channels.values()) {
        if (channel.sounding.length > 0) mixChannel(channel, left, right, frames);
      }
      room?.process(left, right, frames);
      position += frames;
    },
    isSilent() {
      const ring = room ? ROOM_RING_SECONDS * rate : 0;
      return waiting.length === 0 && position >= quietFrom + ring;
    },
  };
}
