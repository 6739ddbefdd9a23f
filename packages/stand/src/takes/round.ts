/**
 * One round of a take against its model, as fast as it was played or slower, with where it is on the page.
 *
 * Conventions: seconds of a round from its first bar line, as it was played.
 */
import { type Bpm, type Form, Hertz, type Lesson, Seconds } from '@shedbook/core';
import type { Program } from '@shedbook/playing';
import type { Heard } from '../sound/player.ts';
import { Comparison, renderStrokes } from './comparison.ts';
import { modelStrokes, playedStrokes } from './model.ts';
import type { PlayedTake, TakeLoop } from './played-take.ts';
import { slowSamples } from './slow-sound.ts';

/** Before the bar line and after the round so much is heard as well, in seconds as it was played. */
export const LEAD_SECONDS = 0.15;
const RINGING_SECONDS = 0.4;

/** Which round, and how fast. */
export interface Slow {
  readonly round: number;
  /** A ratio: 1 is as fast as it was played, 0.5 half as fast. */
  readonly speed: number;
}

/** Speeds that can be chosen, in percent of what was played. */
export const SPEEDS = { least: 20, most: 100, step: 5 } as const;

/** What is played. */
export interface Round {
  readonly lesson: Lesson;
  /** Once through, not counted in. */
  readonly form: Form;
  /** The take's exercise by its number today; null for the groove alone. */
  readonly number: number | null;
  readonly take: PlayedTake;
  readonly loop: TakeLoop;
  /** A ratio: 1 is as fast as it was played. */
  readonly speed: number;
}

/** The mono samples of a part of a recording; silence where there is none. */
function cut(buffer: AudioBuffer, fromSeconds: number, seconds: number): Float32Array {
  const from = Math.round(fromSeconds * buffer.sampleRate);
  const samples = new Float32Array(Math.round(seconds * buffer.sampleRate));
  const own = buffer.getChannelData(0).subarray(Math.max(0, from), Math.max(0, from + samples.length));
  samples.set(own, Math.max(0, -from));
  return samples;
}

/** Makes a round ready. @param audio the recording; null for a kit, whose strokes are in the report */
export async function prepareRound(
  context: AudioContext,
  audio: Blob | null,
  { lesson, form, number, take, loop, speed }: Round,
): Promise<Comparison> {
  const sampleRateHz = Hertz(context.sampleRate);
  const seconds = LEAD_SECONDS + loop.endSeconds - loop.startSeconds + RINGING_SECONDS;
  const request = { durationSeconds: Seconds(seconds / speed), setUp: lesson.setUp };
  const from = loop.startSeconds - LEAD_SECONDS;
  const slower = (strokes: ReturnType<typeof playedStrokes>) =>
    strokes
      .map((stroke) => ({ ...stroke, timeSeconds: Seconds((stroke.timeSeconds - from) / speed) }))
      .filter(({ timeSeconds }) => timeSeconds >= 0 && timeSeconds < seconds / speed);
  const model = renderStrokes({
    ...request,
    strokes: slower(modelStrokes(lesson, form, { ...take, number, loops: [loop] })),
  });
  if (!audio) {
    const own = await renderStrokes({ ...request, strokes: slower(playedStrokes(take)) });
    return new Comparison(context, own, await model, 0);
  }
  const decoded = await context.decodeAudioData(await audio.arrayBuffer());
  const begin = from + take.latencySeconds;
  const onsets = (take.report?.strokes ?? []).map(({ timeSeconds }) => timeSeconds - begin);
  const samples = slowSamples(cut(decoded, begin, seconds), onsets, { rateHz: sampleRateHz, speed });
  const own = new AudioBuffer({ length: Math.max(1, samples.length), sampleRate: context.sampleRate });
  own.copyToChannel(samples, 0);
  return new Comparison(context, own, await model, 0);
}

/** What is heard of a program at a moment of a round, in seconds from its bar line as it was played. */
export function heardAt(program: Program, bpm: Bpm, seconds: number): Heard {
  const secondsOf = (place: number) => (place * 240) / bpm;
  return { program, place: (seconds * bpm) / 240, pass: 0, bpm, secondsOf, fromPlace: 0 };
}
