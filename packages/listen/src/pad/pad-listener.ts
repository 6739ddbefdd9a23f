/**
 * A take on one surface, a pad or a table: any short tap is a stroke of the exercise, so taps come as notes do and there
 * is nothing to tell apart.
 *
 * Conventions: mono samples in blocks of any length; the lesson is as `ontoPad` gives it. What sounds before the first
 * bar or after the last one is nobody's stroke: sticks that count in, a voice, a stand that is put right.
 */
import { type Hertz, inSection, padVoice, Samples, samplesToSeconds } from '@shedbook/core';
import type { Asked, Listened } from '../listened.ts';
import type { WithoutLoudspeaker } from '../loudspeaker/beside.ts';
import { reportOnTake } from '../midi/listen-to-notes.ts';
import { type Tap, TapFinder } from './tap-finder.ts';

/** A take whose loudest sample is softer than this is silent: −70 dB relative to full scale. */
const SILENT = 10 ** (-70 / 20);

function refuse(fact: 'no-sound' | 'silent-recording' | 'no-taps'): Listened {
  return { report: null, refusal: { fact } };
}

/** Listens to a pad, in audio that arrives in blocks. */
export class PadListener {
  readonly #rate: Hertz;
  readonly #finder: TapFinder;
  readonly #taps: Tap[] = [];
  #samples = 0;
  #peak = 0;

  /** @param sampleRateHz samples a second of the blocks */
  constructor(sampleRateHz: Hertz) {
    this.#rate = sampleRateHz;
    this.#finder = new TapFinder(sampleRateHz);
  }

  /** Takes the next block of mono samples. */
  push(block: Float32Array): void {
    this.#samples += block.length;
    for (const sample of block) this.#peak = Math.max(this.#peak, Math.abs(sample));
    this.#taps.push(...this.#finder.push(block));
  }

  /**
   * The report, once all blocks are in.
   * @param asked an exercise of a lesson on a pad
   * @param beside where a loudspeaker was taken out, which moments may still be its own
   */
  finish(whole: Asked, beside?: Pick<WithoutLoudspeaker, 'isDoubtful'>): Listened {
    const asked = inSection(whole);
    const voice = padVoice(asked.lesson, asked.exercise);
    const taps = this.#taps.filter(({ seconds }) => !beside?.isDoubtful(seconds));
    if (this.#samples === 0) return refuse('no-sound');
    if (this.#peak < SILENT) return refuse('silent-recording');
    if (voice === null || taps.length === 0) return refuse('no-taps');
    const durationSeconds = samplesToSeconds(Samples(this.#samples), this.#rate);
    const strokes = taps.map(({ seconds, levelDb }) => ({ timeSeconds: seconds, voice, levelDb }));
    return reportOnTake(strokes, { kind: 'audio', durationSeconds }, asked);
  }
}
