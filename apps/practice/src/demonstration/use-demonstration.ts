/** A demonstration on the stand: playing it, and the clock that ball and counter go by meanwhile. */
import type { Form, Lesson } from '@shedbook/core';
import type { PackDemonstration } from '@shedbook/pack';
import { demonstrated, playedClock } from '@shedbook/playing';
import type { FlightClock } from '@shedbook/stand';
import { useEffect, useMemo, useRef, useState } from 'react';
import { usePracticeSession } from '../session/practice-session.tsx';
import { type Playback, playFrom, readDemonstration } from './playback.ts';

/** How far it is. */
export type DemonstrationState = 'still' | 'preparing' | 'playing' | 'broken';

/** What the page follows while a demonstration plays. */
export interface Followed {
  readonly form: Form;
  readonly clock: FlightClock;
}

/** A clock over what is heard of a demonstration. */
function clockOver(
  lesson: Lesson,
  shown: PackDemonstration,
  { playback, speed }: { readonly playback: Playback; readonly speed: number },
): FlightClock {
  const program = demonstrated(lesson, shown);
  const clock = playedClock(shown.knots);
  const { bpm } = shown;
  return {
    status: () => 'playing',
    subscribe: () => () => {},
    heard: () => {
      const seconds = playback.heardSeconds();
      const place = seconds === null ? Number.NEGATIVE_INFINITY : clock.placeAt(seconds);
      if (place < program.start || place >= program.end) return null;
      const secondsOf = (at: number) => clock.secondsAt(at) / speed;
      return { program, place, pass: 0, bpm, secondsOf, fromPlace: 0 };
    },
  };
}

/** Recordings at their speeds, as long as the same demonstration is on the stand. */
function useReading(shown: PackDemonstration) {
  const kept = useMemo(() => new Map<number, Promise<AudioBuffer>>(), [shown]);
  return (context: AudioContext, speed: number): Promise<AudioBuffer> => {
    const known = kept.get(speed);
    if (known) return known;
    const reading = readDemonstration(context, shown, speed);
    kept.set(speed, reading);
    reading.catch(() => kept.delete(speed));
    return reading;
  };
}

/**
 * A demonstration that can be played.
 * @param speed a ratio: 1 is as fast as it was played
 * @param follow told what the page follows, and null when it is over
 */
export function useDemonstration(
  shown: PackDemonstration,
  speed: number,
  follow: (followed: Followed | null) => void,
) {
  const { pack, player, playing: playerSounds, stop: stopPlayer } = usePracticeSession();
  const [state, setState] = useState<DemonstrationState>('still');
  const playback = useRef<Playback | null>(null);
  /** Which order to play was the last: one that comes too late is not obeyed. */
  const order = useRef(0);
  const read = useReading(shown);
  const end = (next: DemonstrationState) => {
    order.current += 1;
    playback.current?.stop();
    playback.current = null;
    follow(null);
    setState(next);
  };
  useEffect(() => () => end('still'), [shown, speed]);
  useEffect(() => {
    if (playerSounds && state !== 'still') end('still');
  }, [playerSounds]);
  const play = async () => {
    order.current += 1;
    const own = order.current;
    setState('preparing');
    stopPlayer();
    try {
      const context = player.context();
      await context.resume();
      const buffer = await read(context, speed);
      if (order.current !== own) return;
      const now = playFrom(context, { buffer, speed }, () => end('still'));
      playback.current = now;
      follow({ form: shown.form, clock: clockOver(pack.lesson, shown, { playback: now, speed }) });
      setState('playing');
    } catch {
      if (order.current === own) end('broken');
    }
  };
  return { state, play: () => void play(), stop: () => end('still') };
}
