/** Playing a round of a take against its model, and the clock that the ball rides by. */
import type { Form, Lesson } from '@shedbook/core';
import { createProgram } from '@shedbook/playing';
import { useEffect, useMemo, useRef, useState } from 'react';
import type { FlightClock } from '../sound/use-flight.ts';
import type { Comparison, Side } from './comparison.ts';
import type { PlayedTake } from './played-take.ts';
import { heardAt, LEAD_SECONDS, prepareRound, type Slow } from './round.ts';

/** How far it is. */
export type ReplayState = 'still' | 'preparing' | 'playing' | 'broken';

/** What is played. */
export interface RoundOf {
  readonly lesson: Lesson;
  /** Once through, not counted in; the same object as long as nothing changes. */
  readonly form: Form;
  /** The take's exercise by its number today; null for the groove alone. */
  readonly number: number | null;
  readonly take: PlayedTake;
  readonly slow: Slow;
}

/** Where it is played. */
export interface RoundMeans {
  /** The sound of this page, and silence of whatever else plays on it. */
  readonly context: () => AudioContext;
  /** The recording; null where there is none any more. */
  readonly audioOf: () => Promise<Blob | null>;
}

/** A round, and what can be done with it. */
export interface RoundReplay {
  readonly state: ReplayState;
  readonly side: Side;
  /** Chooses what is heard, also while it plays. */
  readonly hear: (side: Side) => void;
  readonly play: () => void;
  readonly stop: () => void;
  readonly clock: FlightClock;
}

/** The replay of a round. */
export function useRound(of: RoundOf, { context: contextOf, audioOf }: RoundMeans): RoundReplay {
  const { lesson, form, number, take, slow } = of;
  const [state, setState] = useState<ReplayState>('still');
  const [side, setSide] = useState<Side>('both');
  const comparison = useRef<Comparison | null>(null);
  const listeners = useRef(new Set<() => void>());
  const { round, speed } = slow;
  const shown = useRef<ReplayState>('still');
  const playedAt = useRef(slow);
  const loop = take.loops[round];
  const program = useMemo(
    () =>
      loop ? createProgram(lesson, { exercise: number, form, layers: take.layers, bpm: loop.bpm }) : null,
    [lesson, number, form, take.layers, loop],
  );
  const stop = () => {
    comparison.current?.stop();
    setState('still');
  };
  // Another round or speed is made anew: what plays falls silent.
  useEffect(() => {
    playedAt.current = { round, speed };
    return () => {
      comparison.current?.stop();
      setState('still');
    };
  }, [round, speed]);
  useEffect(() => {
    shown.current = state;
    for (const listener of listeners.current) listener();
  }, [state]);
  const clock = useMemo(
    (): FlightClock => ({
      status: () => (shown.current === 'playing' ? 'playing' : 'silent'),
      subscribe: (listener) => {
        listeners.current.add(listener);
        return () => listeners.current.delete(listener);
      },
      heard: () => {
        const at = comparison.current?.positionSeconds;
        if (at === undefined || !program || !loop) return null;
        const seconds = at * playedAt.current.speed - LEAD_SECONDS;
        return seconds < 0 || seconds > loop.endSeconds - loop.startSeconds
          ? null
          : heardAt(program, loop.bpm, seconds);
      },
    }),
    [program, loop],
  );
  const play = async () => {
    if (!loop) return;
    comparison.current?.stop();
    setState('preparing');
    try {
      const context = contextOf();
      await context.resume();
      const audio = take.kind === 'audio' ? await audioOf() : null;
      const asked = { lesson, form, number, take, loop, speed };
      comparison.current = await prepareRound(context, audio, asked);
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
  return { state, side, hear, play: () => void play(), stop, clock };
}
