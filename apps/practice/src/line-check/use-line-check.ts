/** A line check from the first count to what was learnt; broken off at any time, with nothing changed. */
import type { Voice } from '@shedbook/core';
import type { LearntKit } from '@shedbook/listen';
import { useEffect, useRef, useState } from 'react';
import type { Hearing } from '../ear/hearing.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { learnBeside } from './learn.ts';
import { recordSpan } from './record-span.ts';
import { soundSpan, soundsOf } from './turns.ts';

/** How far it is. */
export type Step =
  | { readonly at: 'ready' | 'learning' | 'failed' }
  | {
      readonly at: 'playing';
      readonly voices: readonly Voice[];
      /** When the first count is, in seconds of the audio context. */
      readonly startSeconds: number;
    }
  | { readonly at: 'learnt'; readonly learnt: LearntKit };

/** From the press to the first count, in seconds. */
const LEAD_SECONDS = 0.5;

/** A line check, how to begin one, or again with some of its voices, and how to break it off. */
export function useLineCheck(hearing: Hearing) {
  const { player, stop } = usePracticeSession();
  const [step, setStep] = useState<Step>({ at: 'ready' });
  const sounds = useRef<ReadonlyMap<Voice, Float32Array>>(new Map());
  const run = useRef(new AbortController());
  const leave = () => {
    run.current.abort();
    setStep({ at: 'ready' });
  };
  useEffect(() => () => run.current.abort(), []);
  const learn = async (rateHz: number, signal: AbortSignal) => {
    setStep({ at: 'learning' });
    try {
      setStep({ at: 'learnt', learnt: await learnBeside(sounds.current, rateHz, signal) });
    } catch {
      if (!signal.aborted) setStep({ at: 'failed' });
    }
  };
  const play = async (voices: readonly Voice[], before: ReadonlyMap<Voice, Float32Array>) => {
    const { microphone } = hearing.ear;
    if (!microphone) return;
    stop();
    run.current.abort();
    run.current = new AbortController();
    const { signal } = run.current;
    const context = player.context();
    await context.resume();
    const startSeconds = context.currentTime + LEAD_SECONDS;
    setStep({ at: 'playing', voices, startSeconds });
    const { fromSeconds, toSeconds } = soundSpan(voices.length);
    const span = { fromSeconds: startSeconds + fromSeconds, toSeconds: startSeconds + toSeconds };
    const samples = await recordSpan(microphone, span, signal);
    if (!samples) return;
    sounds.current = new Map([...before, ...soundsOf(samples, voices)]);
    await learn(microphone.rateHz, signal);
  };
  return {
    step,
    /** Begins with these voices, and nothing of before. */
    begin: (voices: readonly Voice[]) => void play(voices, new Map()),
    /** Plays some of the voices again; what was played of the others stays. */
    again: (voices: readonly Voice[]) => void play(voices, sounds.current),
    leave,
    context: player.context(),
  };
}
