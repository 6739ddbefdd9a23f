/** One round of a take in slow motion against its model, with where it is on the page. */
import { type Bpm, type Form, Hertz, type Lesson, Seconds } from '@shedbook/core';
import { createProgram, type Program } from '@shedbook/playing';
import type { Heard, PlayerStatus } from '@shedbook/stand';
import { useEffect, useMemo, useRef, useState } from 'react';
import { formOf } from '../session/choice.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { Comparison, renderStrokes, type Side } from './comparison.ts';
import { modelStrokes, playedStrokes } from './model.ts';
import { slowSamples } from './slow-sound.ts';
import type { Take, TakeLoop } from './take.ts';

/** Before the bar line and after the round so much is heard as well, in seconds as it was played. */
const LEAD_SECONDS = 0.15;
const RINGING_SECONDS = 0.4;

/** Which round, and how fast. */
export interface Slow {
  readonly round: number;
  /** A ratio: 1 is as fast as it was played, 0.5 half as fast. */
  readonly speed: number;
}

/** What the ball asks of whoever plays. */
interface Clock {
  readonly heard: () => Heard | null;
  readonly status: () => PlayerStatus;
  readonly subscribe: (listener: () => void) => () => void;
}

interface Round {
  readonly lesson: Lesson;
  readonly form: Form;
  /** The take's exercise by its number today. */
  readonly number: number | null;
  readonly take: Take;
  readonly loop: TakeLoop;
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

async function prepare(context: AudioContext, audio: Blob | null, round: Round): Promise<Comparison> {
  const { lesson, form, number, take, loop, speed } = round;
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
function heardAt(program: Program, bpm: Bpm, seconds: number): Heard {
  const secondsOf = (place: number) => (place * 240) / bpm;
  return { program, place: (seconds * bpm) / 240, pass: 0, bpm, secondsOf, fromPlace: 0 };
}

/** How far it is. */
export type ReplayState = 'still' | 'preparing' | 'playing' | 'broken';

/** The replay of a round. @param number of the take's exercise today */
export function useReplay(
  { take, number, slow }: { readonly take: Take; readonly number: number | null; readonly slow: Slow },
  audioOf: () => Promise<Blob | null>,
) {
  const { pack, player, stop: stopPlayer } = usePracticeSession();
  const { lesson } = pack;
  const [state, setState] = useState<ReplayState>('still');
  const [side, setSide] = useState<Side>('both');
  const comparison = useRef<Comparison | null>(null);
  const listeners = useRef(new Set<() => void>());
  const latest = useRef({ state, slow });
  latest.current = { state, slow };
  const loop = take.loops[slow.round];
  const form = useMemo(
    () => ({ ...formOf(lesson, take.form), repeat: 1, countInBars: 0 }),
    [lesson, take.form],
  );
  const program = useMemo(
    () =>
      loop ? createProgram(lesson, { exercise: number, form, layers: take.layers, bpm: loop.bpm }) : null,
    [lesson, number, form, take.layers, loop],
  );
  const stop = () => {
    comparison.current?.stop();
    setState('still');
  };
  useEffect(() => stop, [slow.round, slow.speed]);
  useEffect(() => {
    for (const listener of listeners.current) listener();
  }, [state]);
  const clock = useMemo(
    (): Clock => ({
      status: () => (latest.current.state === 'playing' ? 'playing' : 'silent'),
      subscribe: (listener) => {
        listeners.current.add(listener);
        return () => listeners.current.delete(listener);
      },
      heard: () => {
        const at = comparison.current?.positionSeconds;
        if (at === undefined || !program || !loop) return null;
        const seconds = at * latest.current.slow.speed - LEAD_SECONDS;
        return seconds < 0 || seconds > loop.endSeconds - loop.startSeconds
          ? null
          : heardAt(program, loop.bpm, seconds);
      },
    }),
    [program, loop],
  );
  const play = async () => {
    if (!loop) return;
    stopPlayer();
    comparison.current?.stop();
    setState('preparing');
    try {
      const context = player.context();
      await context.resume();
      const audio = take.kind === 'audio' ? await audioOf() : null;
      const round = { lesson, form, number, take, loop, speed: slow.speed };
      comparison.current = await prepare(context, audio, round);
      comparison.current.hear(side);
      comparison.current.play(() => setState('still'));
      setState('playing');
    } catch {
      setState('broken');
    }
  };
  const hear = (next: Side) => {
    setSide(next);
    comparison.current?.hear(next);
  };
  return { state, side, hear, play: () => void play(), stop, clock, form };
}
