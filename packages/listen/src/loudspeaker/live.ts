/**
 * The loudspeaker beside whoever plays, while both go on: what the page plays is found in the microphone by its delay and
 * its room and taken out, and it is known how much of it may be left.
 *
 * Conventions: mono samples of one rate, microphone and page from the same first sample on; seconds from there.
 * What comes out is as long as what goes in, less than a block behind it. A report of strokes holds one that may be the
 * loudspeaker's for unknown, not for the student's.
 */
import { type Hertz, type LoudspeakerHeard, Samples, Seconds, samplesToSeconds } from '@shedbook/core';
import { energyOf, powerToDb } from '@shedbook/signal';
import { ADAPT_BLOCK, AdaptiveFilter, PARTS } from './adaptive.ts';
import type { BesideStream } from './beside-stream.ts';
import { CONVOLVE_BLOCK, Convolver } from './convolver.ts';
import { DelayFinder } from './delay-finder.ts';
import { SoundRing } from './sound-ring.ts';

/** The filter begins so many samples before the delay that was found. */
const BEFORE = 64;
/** A delay is believed once it was found so often, no farther off; another one than is known more often: it was moved. */
const SAME = 64;
const TWICE = 2;
const SURELY = 4;
/**
 * The filter is learnt from what there is when the delay is found; and anew from so many samples, 3 s at 44 100 Hz, so many
 * blocks at a time beside the one at hand. Each time twice over.
 */
const FIRST = 129 * ADAPT_BLOCK;
const AT_ONCE = 4;
/** What was learnt is put to work after so many samples. */
const RENEW = 4 * ADAPT_BLOCK;
/** What is kept of both sounds: the first samples and the longest delay before them. */
const KEPT = 1 << 18;
/** A stroke is compared from so long before its onset to so long after it. */
const BEFORE_SECONDS = 0.005;
const AFTER_SECONDS = 0.06;
/** What is softer than the loudspeaker by this power, or this often what the filter says it may leave, may be left of it. */
const LEFT = 1 / 16;
const MAYBE = 4;
const TINY = 1e-12;
/**
 * What is taken out leaves less than was there, on the whole of some 50 ms: where it leaves this much more, the microphone
 * no longer hears what was learnt (somebody put headphones on), and its sound stays as it is.
 */
const MEMORY = Math.exp(-CONVOLVE_BLOCK / 2205);
const MORE = 1.25;

/** Power of each block of the take: what was taken out, what stayed, and what may be left. */
interface Powers {
  readonly echo: number[];
  readonly rest: number[];
  readonly maybeLeft: number[];
}

/** A filter that is learnt anew from one sample on: it has come to another, and goes back to the first at a third. */
interface Again {
  readonly due: number;
  filter: AdaptiveFilter | null;
  from: number;
  at: number;
  until: number;
}

function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((sum, number) => sum + number, 0);
}

/** Takes what a loudspeaker plays out of a microphone's sound. */
export class LiveLoudspeaker {
  readonly #rate: Hertz;
  readonly #finder = new DelayFinder();
  readonly #known = new SoundRing(KEPT);
  readonly #take = new SoundRing(KEPT);
  readonly #powers: Powers = { echo: [], rest: [], maybeLeft: [] };
  readonly #waiting = {
    known: new Float32Array(CONVOLVE_BLOCK),
    take: new Float32Array(CONVOLVE_BLOCK),
    count: 0,
  };
  #delay: number | null = null;
  #found = { delay: 0, times: 0 };
  #filter = new AdaptiveFilter();
  #convolver = new Convolver(PARTS * ADAPT_BLOCK);
  /** What is learnt anew, null where nothing is. */
  #again: Again | null = null;
  /** The first sample at which the loudspeaker played. */
  #begins: number | null = null;
  /** Powers of the last blocks: what the microphone took, and what would be left of it. */
  #recent = { take: 0, rest: 0 };

  constructor(sampleRateHz: Hertz) {
    this.#rate = sampleRateHz;
  }

  /**
   * Takes the next samples of both. @param played what was given to the loudspeaker; null is silence
   * @returns the microphone's samples without it, as many as have become a whole block
   */
  push(microphone: Float32Array, played: Float32Array | null): Float32Array {
    const { known, take } = this.#waiting;
    const cleaned = new Float32Array(
      CONVOLVE_BLOCK * Math.floor((this.#waiting.count + microphone.length) / CONVOLVE_BLOCK),
    );
    let to = 0;
    for (let i = 0; i < microphone.length; i += 1) {
      take[this.#waiting.count] = microphone[i]!;
      known[this.#waiting.count] = played?.[i] ?? 0;
      this.#waiting.count += 1;
      if (this.#waiting.count < CONVOLVE_BLOCK) continue;
      this.#waiting.count = 0;
      cleaned.set(this.#block(known, take), to);
      to += CONVOLVE_BLOCK;
    }
    return cleaned;
  }

  /** The loudspeaker, where it is heard. */
  get heard(): LoudspeakerHeard | null {
    if (this.#delay === null) return null;
    const [echo, rest] = [sumOf(this.#powers.echo) + TINY, sumOf(this.#powers.rest) + TINY];
    return {
      delaySeconds: Seconds(samplesToSeconds(Samples(this.#delay), this.#rate)),
      levelDb: powerToDb(echo) - powerToDb(echo + rest),
    };
  }

  /** The same for a stream that began later, so many seconds after the first sample. */
  from(beganSeconds: number): BesideStream {
    const heard = () => this.heard;
    return {
      get heard() {
        return heard();
      },
      isDoubtful: (seconds) => this.isDoubtful(seconds + beganSeconds),
    };
  }

  /** Whether what sounds at a moment may be the loudspeaker's. */
  isDoubtful(seconds: number): boolean {
    const blockAt = (at: number) => Math.max(0, Math.floor((at * this.#rate) / CONVOLVE_BLOCK));
    const sum = (of: readonly number[]) =>
      sumOf(of.slice(blockAt(seconds - BEFORE_SECONDS), blockAt(seconds + AFTER_SECONDS) + 1));
    const [echo, rest, maybe] = [sum(this.#powers.echo), sum(this.#powers.rest), sum(this.#powers.maybeLeft)];
    return echo > 0 && (rest < LEFT * echo || rest < MAYBE * maybe);
  }

  #block(known: Float32Array, take: Float32Array): Float32Array {
    this.#known.push(known);
    this.#take.push(take);
    if (this.#begins === null && known.some((sample) => sample !== 0)) this.#begins = this.#known.end;
    this.#settle(this.#finder.push(known, take));
    if (this.#delay === null) {
      this.#note(0, 0);
      return take;
    }
    const from = this.#take.end - CONVOLVE_BLOCK;
    const echo = this.#convolver.push(this.#late(from, CONVOLVE_BLOCK));
    const rest = take.map((sample, i) => sample - echo[i]!);
    const isThere = this.#leavesLess(take, rest);
    if (isThere) this.#note(energyOf(Float32Array.from(echo)), energyOf(rest));
    else this.#note(0, energyOf(take));
    if (this.#take.end % ADAPT_BLOCK === 0) {
      this.#learn(this.#take.end - ADAPT_BLOCK);
      this.#learnAgain();
    }
    if (this.#take.end % RENEW === 0) this.#convolver.set(this.#filter.samples());
    return isThere ? rest : take;
  }

  /** Whether taking the loudspeaker out of a block leaves less of the sound than there was. */
  #leavesLess(take: Float32Array, rest: Float32Array): boolean {
    this.#recent.take = MEMORY * this.#recent.take + energyOf(take);
    this.#recent.rest = MEMORY * this.#recent.rest + energyOf(rest);
    return this.#recent.rest <= MORE * this.#recent.take;
  }

  #note(echo: number, rest: number): void {
    this.#powers.echo.push(echo);
    this.#powers.rest.push(rest);
    this.#powers.maybeLeft.push(0);
  }

  /** What was played, as late as it comes. */
  #late(from: number, count: number): Float32Array {
    return this.#known.between(from - Math.max(0, this.#delay! - BEFORE), count);
  }

  #learn(from: number): void {
    const maybeLeft = this.#adapt(this.#filter, from);
    const share = CONVOLVE_BLOCK / ADAPT_BLOCK;
    this.#powers.maybeLeft.fill(share * maybeLeft, from / CONVOLVE_BLOCK);
  }

  #adapt(filter: AdaptiveFilter, from: number) {
    return filter.push(this.#late(from, ADAPT_BLOCK), this.#take.between(from, ADAPT_BLOCK));
  }

  /** Takes a delay that was found often enough. */
  #settle(found: number | null): void {
    if (found === null) return;
    const isAgain = Math.abs(found - this.#found.delay) <= SAME;
    this.#found = { delay: found, times: isAgain ? this.#found.times + 1 : 1 };
    if (this.#delay !== null && Math.abs(found - this.#delay) <= SAME) return;
    if (this.#found.times < (this.#delay === null ? TWICE : SURELY)) return;
    this.#delay = found;
    this.#learnFirst();
  }

  /** Learns from what is kept of both sounds. */
  #learnFirst(): void {
    const end = this.#take.end - (this.#take.end % ADAPT_BLOCK);
    const from = this.#firstOf(end);
    this.#filter = this.#guessed(from, end);
    for (let at = from; at < end; at += ADAPT_BLOCK) this.#learn(at);
    for (let at = from; at < end; at += ADAPT_BLOCK) this.#learn(at);
    this.#convolver = new Convolver(PARTS * ADAPT_BLOCK);
    this.#convolver.set(this.#filter.samples());
    for (let at = end - PARTS * ADAPT_BLOCK; at < this.#take.end - CONVOLVE_BLOCK; at += CONVOLVE_BLOCK)
      this.#convolver.push(this.#late(at, CONVOLVE_BLOCK));
    const due = this.#begins! + FIRST;
    this.#again = end < due ? { due, filter: null, from: 0, at: 0, until: 0 } : null;
  }

  /** Where what is learnt from begins, no farther back than is kept. */
  #firstOf(end: number): number {
    const began = Math.max(0, this.#begins! - ADAPT_BLOCK, end - FIRST);
    return began - (began % ADAPT_BLOCK);
  }

  #guessed(from: number, end: number): AdaptiveFilter {
    const filter = new AdaptiveFilter();
    filter.guess(this.#late(from, end - from), this.#take.between(from, end - from));
    return filter;
  }

  /** Learns anew beside the block at hand; what came of it takes over when it has come to the present. */
  #learnAgain(): void {
    const again = this.#again;
    const { end } = this.#take;
    if (!again || end < again.due) return;
    if (!again.filter) {
      again.from = this.#firstOf(end);
      Object.assign(again, { filter: this.#guessed(again.from, end), at: again.from, until: end });
    }
    for (let count = 0; count < AT_ONCE && again.at < end; count += 1) {
      this.#adapt(again.filter!, again.at);
      again.at += ADAPT_BLOCK;
      // The first time through ends where it began to be learnt, the second at the present.
      if (again.at !== again.until) continue;
      again.at = again.from;
      again.until = 0;
    }
    if (again.at < end) return;
    this.#filter = again.filter!;
    this.#again = null;
  }
}
