/** A take and its model made ready for listening, and the choice between them. */
import { type Form, type Lesson, Seconds } from '@shedbook/core';
import { numberToday } from '@shedbook/judge';
import { Comparison, modelStrokes, playedStrokes, renderStrokes, type Side } from '@shedbook/stand/takes';
import { useEffect, useRef, useState } from 'react';
import { LONGEST_TAKE_SECONDS } from '../ear/listening.ts';
import { formOf } from '../session/choice.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import type { Take } from './take.ts';

/** How far it is. */
export type ComparisonState = 'empty' | 'preparing' | 'ready' | 'playing' | 'broken';

/** After the last bar line the take rings on, in seconds. */
const RINGING_SECONDS = 1;

async function prepare(context: AudioContext, lesson: Lesson, form: Form, take: Take, audio: Blob | null) {
  const number = numberToday(lesson, take);
  const end = take.loops.at(-1)?.endSeconds ?? take.durationSeconds;
  const request = {
    durationSeconds: Seconds(Math.min(end + RINGING_SECONDS, LONGEST_TAKE_SECONDS)),
    setUp: lesson.setUp,
  };
  const strokes = number === undefined ? [] : modelStrokes(lesson, form, { ...take, number });
  const [own, model] = await Promise.all([
    audio
      ? audio.arrayBuffer().then((bytes) => context.decodeAudioData(bytes))
      : renderStrokes({ ...request, strokes: playedStrokes(take) }),
    renderStrokes({ ...request, strokes }),
  ]);
  return new Comparison(context, own, model, audio ? take.latencySeconds : 0);
}

/** Listening to a take. @param audioOf its sound, asked for when somebody listens */
export function useComparison(take: Take, audioOf: () => Promise<Blob | null>) {
  const { lesson, player, stop: stopPlayer } = usePracticeSession();
  const [state, setState] = useState<ComparisonState>('empty');
  const [side, setSide] = useState<Side>('take');
  const comparison = useRef<Comparison | null>(null);
  useEffect(() => () => comparison.current?.stop(), []);
  const start = () => {
    stopPlayer();
    comparison.current?.hear(side);
    comparison.current?.play(() => setState('ready'));
    setState('playing');
  };
  const load = async () => {
    setState('preparing');
    try {
      const context = player.context();
      await context.resume();
      const audio = take.kind === 'audio' ? await audioOf() : null;
      if (take.kind === 'audio' && !audio) return setState('broken');
      comparison.current = await prepare(context, lesson, formOf(lesson, take.form), take, audio);
      start();
    } catch {
      setState('broken');
    }
  };
  const play = () => (comparison.current ? start() : void load());
  const stop = () => {
    comparison.current?.stop();
    setState('ready');
  };
  const hear = (next: Side) => {
    setSide(next);
    comparison.current?.hear(next);
  };
  return { state, side, hear, play, stop, hasModel: numberToday(lesson, take) !== undefined };
}
