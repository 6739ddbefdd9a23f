/**
 * A spoken count in recordings and films: a word on every click, felt on the click's own moment.
 *
 * Conventions: seconds of the sound that is counted over; a word begins before its click, the first one before the sound
 * itself, and makes room where the next one begins.
 */
import { type Hertz, type Performance, Seconds, type Stroke } from '@shedbook/core';
import { joined, Resampler } from '@shedbook/signal';
import { type RenderOptions, render } from '../render/render.ts';
import type { StereoAudio } from '../stereo.ts';
import {
  countWordOf,
  SPOKEN_FADE_SECONDS,
  SPOKEN_GAIN,
  SPOKEN_RATE_HZ,
  type SpokenLanguage,
  spokenPlace,
} from './count-word.ts';

/** The words of a language, as they were recorded. */
export interface SpokenWords {
  readonly language: SpokenLanguage;
  readonly samples: Float32Array;
  readonly sampleRateHz: Hertz;
}

/** A word that falls somewhere. */
export interface SpokenWord {
  /** First sample; below 0 where it begins before the sound. */
  readonly from: number;
  readonly samples: Float32Array;
}

/** What is needed of a stroke to count it. */
export type CountedStroke = Pick<Stroke, 'voice' | 'written' | 'slots' | 'timeSeconds'>;

/** A recording that is counted aloud begins so much before its first click: no word begins earlier than that. */
export const SPOKEN_LEAD_SECONDS = 0.2;

/** The words of a language at the rate of what they are said over. @param recorded all of them, at their own rate, in parts */
export function spokenAt(
  language: SpokenLanguage,
  recorded: readonly Float32Array[],
  sampleRateHz: Hertz,
): SpokenWords {
  const resampler = new Resampler(SPOKEN_RATE_HZ, sampleRateHz);
  const parts = [...recorded.map((part) => resampler.push(part)), resampler.flush()];
  return { language, samples: joined(parts), sampleRateHz };
}

/** Every word of a performance, in order: one on each click, the count-in with them. */
export function countAloud(
  strokes: readonly CountedStroke[],
  { language, samples, sampleRateHz }: SpokenWords,
): readonly SpokenWord[] {
  const found = strokes.flatMap((stroke) => {
    if (stroke.voice !== 'click') return [];
    const place = spokenPlace(language, countWordOf(stroke) ?? '');
    return place ? [{ place, fromSeconds: stroke.timeSeconds - place.feltSeconds }] : [];
  });
  const fade = Math.exp(-1 / (SPOKEN_FADE_SECONDS * sampleRateHz));
  return found.map(({ place: { startSeconds, lastsSeconds }, fromSeconds }, index) => {
    const start = Math.round(startSeconds * sampleRateHz);
    const word = samples.slice(start, start + Math.round(lastsSeconds * sampleRateHz));
    const next = found[index + 1]?.fromSeconds ?? Number.POSITIVE_INFINITY;
    let gain = SPOKEN_GAIN;
    for (let at = 0; at < word.length; at += 1) {
      if (fromSeconds + at / sampleRateHz >= next) gain *= fade;
      word[at] = gain * (word[at] as number);
    }
    return { from: Math.round(fromSeconds * sampleRateHz), samples: word };
  });
}

/** Adds words to a part of a sound, as far as they fall into it. @param at the part's first sample */
export function addWords({ left, right }: StereoAudio, words: readonly SpokenWord[], at: number): void {
  for (const { from, samples } of words) {
    const begin = Math.max(0, from - at);
    const end = Math.min(left.length, from - at + samples.length);
    for (let i = begin; i < end; i += 1) {
      const sample = samples[i + at - from] as number;
      left[i] = (left[i] as number) + sample;
      right[i] = (right[i] as number) + sample;
    }
  }
}

/** The sound of a performance with its count, {@link SPOKEN_LEAD_SECONDS} of which come before the performance. */
export function renderCounted(
  performance: Pick<Performance, 'strokes' | 'durationSeconds'>,
  words: SpokenWords,
  options: Omit<RenderOptions, 'loudnessLufs'>,
): StereoAudio {
  const later = (seconds: number) => Seconds(seconds + SPOKEN_LEAD_SECONDS);
  const strokes = performance.strokes.map((each) => ({ ...each, timeSeconds: later(each.timeSeconds) }));
  const audio = render({ strokes, durationSeconds: later(performance.durationSeconds) }, options);
  addWords(audio, countAloud(strokes, words), 0);
  return audio;
}
