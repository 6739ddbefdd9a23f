/**
 * From a stream of samples to events: short frames, novelty peaks, patches, network.
 *
 * Conventions: samples at ANALYSIS_RATE; memory is a few seconds of samples and one batch of patches. A live
 * extractor asks less of the future (38 ms after the event) and hands over each event at once.
 */
import { PowerSpectrum, powerToDb } from '@shedbook/signal';
import { LONG_INPUTS, SHORT_INPUTS, type StrokeNetwork } from '../network/network.ts';
import {
  ANALYSIS_RATE,
  LIVE_LONG_FRAMES,
  LIVE_SHORT_FRAMES,
  LONG_BANDS,
  LONG_CENTRES,
  LONG_EDGES,
  LONG_SIZE,
  SHORT_BANDS,
  SHORT_BEFORE,
  SHORT_EDGES,
  SHORT_FRAMES,
  SHORT_HOP,
  SHORT_SIZE,
} from '../signal/bands.data.ts';
import type { HighBand } from '../signal/high-band.ts';
import { RumbleFilter } from '../signal/rumble.ts';
import { EventEnergy } from './energy.ts';
import { type HeardEvent, NO_ENERGY, readEvent } from './events.ts';
import { heardOn, type KnownKit } from './known-kit.ts';
import { NoveltyPeaks, PEAK_REACH } from './novelty.ts';

/** Events that go through the network together. */
const BATCH = 48;
/** Frames of band levels that are kept. */
const KEPT_FRAMES = 256;
/** The patch's scale: this many dB under its reference count as nothing. */
const RANGE_DB = 70;
/** Events that the mean spectrum of the surroundings remembers. */
const MEAN_EVENTS = 160;
const TINY = 1e-14;

/** Extracts events from one stream. */
export class EventExtractor {
  readonly #network: StrokeNetwork;
  readonly #live: boolean;
  readonly #kit: KnownKit | null;
  readonly #energy: EventEnergy | null;
  readonly #short = new PowerSpectrum(SHORT_SIZE);
  readonly #long = new PowerSpectrum(LONG_SIZE);
  readonly #shortPower = new Float64Array(SHORT_SIZE / 2 + 1);
  readonly #longPower = new Float64Array(LONG_SIZE / 2 + 1);
  readonly #levels = new Float64Array(KEPT_FRAMES * SHORT_BANDS);
  readonly #rumble = new RumbleFilter();
  readonly #novelty = new NoveltyPeaks();
  readonly #mean = new Float64Array(LONG_BANDS);
  #meanCount = 0;
  #samples = new Float32Array(1 << 16);
  /** Stream position of the first sample kept; the stream is preceded by silence. */
  #start = -LONG_SIZE * 4;
  #length = LONG_SIZE * 4;
  #frame = 0;
  #waiting: number[] = [];
  readonly #batchShort = new Float64Array(BATCH * SHORT_INPUTS);
  readonly #batchLong = new Float64Array(BATCH * LONG_INPUTS);
  #batch: { frame: number; referenceDb: number; energyDb: Float32Array }[] = [];
  #peakSquare = 0;

  /** @param options whether to ask little of the future; else, what lies above the analysed band; what is known of the kit */
  constructor(
    network: StrokeNetwork,
    options: { readonly kit?: KnownKit | undefined } & (
      | { readonly live: true }
      | { readonly live: false; readonly high?: HighBand }
    ),
  ) {
    this.#network = network;
    this.#live = options.live;
    this.#kit = options.kit ?? null;
    this.#energy = options.live ? null : new EventEnergy(options.high ?? null);
  }

  /** Takes samples; returns the events that are ready. */
  push(samples: Float32Array): readonly HeardEvent[] {
    const events: HeardEvent[] = [];
    for (let at = 0; at < samples.length; at += 8192) {
      this.#append(samples.subarray(at, at + 8192));
      this.#advance(events);
    }
    return events;
  }

  /** The last events, as if silence followed. */
  flush(): readonly HeardEvent[] {
    const events = [...this.push(new Float32Array(LONG_SIZE * 4))];
    this.#runBatch(events);
    return events;
  }

  /** The events that wait for company, at once. */
  drain(): readonly HeardEvent[] {
    const events: HeardEvent[] = [];
    this.#runBatch(events);
    return events;
  }

  /** The highest level of a sample so far, in dB re full scale. */
  get peakDb(): number {
    return powerToDb(this.#peakSquare + TINY);
  }

  #append(samples: Float32Array): void {
    if (this.#length + samples.length > this.#samples.length) {
      const keep = 1 << 14;
      const drop = this.#length - keep;
      this.#samples.copyWithin(0, drop, this.#length);
      this.#start += drop;
      this.#length = keep;
    }
    this.#samples.set(samples, this.#length);
    this.#rumble.run(this.#samples, this.#length, this.#length + samples.length);
    this.#length += samples.length;
    for (let i = 0; i < samples.length; i += 1) {
      const square = samples[i]! * samples[i]!;
      if (square > this.#peakSquare) this.#peakSquare = square;
    }
  }

  #advance(events: HeardEvent[]): void {
    const end = this.#start + this.#length;
    while (this.#frame * SHORT_HOP + SHORT_SIZE / 2 <= end) {
      const row = (this.#frame % KEPT_FRAMES) * SHORT_BANDS;
      this.#short.compute(
        this.#samples,
        this.#frame * SHORT_HOP - SHORT_SIZE / 2 - this.#start,
        this.#shortPower,
      );
      bandLevels(this.#shortPower, SHORT_EDGES, this.#levels, row);
      if (this.#novelty.push(this.#levels, row)) this.#waiting.push(this.#frame - PEAK_REACH);
      this.#frame += 1;
      this.#collect(events, end);
    }
    this.#collect(events, end);
  }

  #collect(events: HeardEvent[], end: number): void {
    const shortAfter = (this.#live ? LIVE_SHORT_FRAMES : SHORT_FRAMES) - SHORT_BEFORE;
    const lastLong = LONG_CENTRES[this.#live ? LIVE_LONG_FRAMES - 1 : LONG_CENTRES.length - 1]!;
    while (this.#waiting.length > 0) {
      const frame = this.#waiting[0]!;
      if (frame + shortAfter > this.#frame || frame * SHORT_HOP + lastLong + LONG_SIZE / 2 > end) return;
      this.#waiting.shift();
      this.#cut(frame);
      if (this.#live || this.#batch.length === BATCH) this.#runBatch(events);
    }
  }

  /** Writes the patch at `frame` into the batch. */
  #cut(frame: number): void {
    const slot = this.#batch.length;
    const long = this.#batchLong;
    const longAt = slot * LONG_INPUTS;
    const longFrames = this.#live ? LIVE_LONG_FRAMES : LONG_CENTRES.length;
    let reference = -200;
    for (let i = 0; i < longFrames; i += 1) {
      const start = frame * SHORT_HOP + LONG_CENTRES[i]! - LONG_SIZE / 2 - this.#start;
      this.#long.compute(this.#samples, start, this.#longPower);
      this.#energy?.add(i, this.#longPower);
      bandLevels(this.#longPower, LONG_EDGES, long, longAt + i * LONG_BANDS);
      let total = TINY;
      for (let bin = 0; bin < this.#longPower.length; bin += 1) total += this.#longPower[bin]!;
      reference = Math.max(reference, powerToDb(total));
    }
    normalise(long, longAt, longFrames * LONG_BANDS, reference);
    long.fill(0, longAt + longFrames * LONG_BANDS, longAt + LONG_CENTRES.length * LONG_BANDS);
    const short = this.#batchShort;
    const shortFrames = this.#live ? LIVE_SHORT_FRAMES : SHORT_FRAMES;
    for (let i = 0; i < shortFrames; i += 1) {
      const index = frame - SHORT_BEFORE + i;
      const to = slot * SHORT_INPUTS + i * SHORT_BANDS;
      const from = (((index % KEPT_FRAMES) + KEPT_FRAMES) % KEPT_FRAMES) * SHORT_BANDS;
      if (index < 0) short.fill(-200, to, to + SHORT_BANDS);
      else for (let band = 0; band < SHORT_BANDS; band += 1) short[to + band] = this.#levels[from + band]!;
    }
    normalise(short, slot * SHORT_INPUTS, shortFrames * SHORT_BANDS, reference);
    short.fill(0, slot * SHORT_INPUTS + shortFrames * SHORT_BANDS, (slot + 1) * SHORT_INPUTS);
    this.#batch.push({ frame, referenceDb: reference, energyDb: this.#energy?.take(frame) ?? NO_ENERGY });
    this.#learnSurroundings(longAt + 2 * LONG_BANDS);
  }

  #learnSurroundings(at: number): void {
    this.#meanCount = Math.min(MEAN_EVENTS, this.#meanCount + 1);
    for (let band = 0; band < LONG_BANDS; band += 1) {
      this.#mean[band] =
        this.#mean[band]! + (this.#batchLong[at + band]! - this.#mean[band]!) / this.#meanCount;
    }
  }

  #runBatch(events: HeardEvent[]): void {
    const count = this.#batch.length;
    if (count === 0) return;
    for (let slot = 0; slot < count; slot += 1) {
      this.#batchLong.set(this.#mean, slot * LONG_INPUTS + LONG_CENTRES.length * LONG_BANDS);
    }
    const result = this.#network.run(this.#batchShort, this.#batchLong, count);
    this.#batch.forEach(({ frame, referenceDb, energyDb }, index) => {
      const event = readEvent((frame * SHORT_HOP) / ANALYSIS_RATE, referenceDb, result, index, energyDb);
      events.push(this.#kit ? heardOn(this.#kit, event, this.#live ? 'quick' : 'patient') : event);
    });
    this.#batch = [];
  }
}

/** Level of each band in dB, written from `at`. */
function bandLevels(power: Float64Array, edges: readonly number[], levels: Float64Array, at: number): void {
  for (let band = 0; band + 1 < edges.length; band += 1) {
    let sum = TINY;
    const stop = edges[band + 1]!;
    for (let bin = edges[band]!; bin < stop; bin += 1) sum += power[bin]!;
    levels[at + band] = 4.342944819032518 * Math.log(sum);
  }
}

/** From dB to 0…1 over the range under the reference. */
function normalise(values: Float64Array, at: number, count: number, reference: number): void {
  for (let i = at; i < at + count; i += 1) {
    values[i] = Math.max(0, (values[i]! - reference + RANGE_DB) / RANGE_DB);
  }
}
