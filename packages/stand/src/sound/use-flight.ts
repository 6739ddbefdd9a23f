/** The ball's way in time with what is heard, for whoever draws it. */

import type { Program } from '@shedbook/playing';
import { type Flight, flightAt, type Landing, landingsOf } from '@shedbook/playing';
import { useEffect, useRef } from 'react';
import type { Player } from './player.ts';

/** Where the ball is at the moment that is heard. */
export interface BallMoment {
  readonly program: Program;
  readonly flight: Flight;
  /** Whether motion is unwanted: the ball then stands where it came down. */
  readonly isStill: boolean;
}

/** Draws the ball at a moment, or takes it away. */
export type DrawBall = (moment: BallMoment | null) => void;

/** What the ball has to know of whoever plays. */
export type FlightClock = Pick<Player, 'heard' | 'status' | 'subscribe'>;

/** Looks where the ball is; the landings of a program are found once. */
function ballWatcher(player: FlightClock): () => BallMoment | null {
  const isStill = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
  let program: Program | null = null;
  let landings: readonly Landing[] = [];
  return () => {
    const heard = player.heard();
    if (!heard) return null;
    if (heard.program !== program) {
      program = heard.program;
      landings = landingsOf(program);
    }
    const flight = flightAt(landings, heard.place, program.end);
    return flight && { program, flight, isStill };
  };
}

/** Has the ball drawn with every frame while something plays, and taken away once when it falls silent. */
export function useFlight(player: FlightClock, draw: DrawBall): void {
  const latest = useRef(draw);
  latest.current = draw;
  useEffect(() => {
    const watch = ballWatcher(player);
    let frame = 0;
    const ride = () => {
      frame = requestAnimationFrame(ride);
      latest.current(watch());
    };
    const look = () => {
      cancelAnimationFrame(frame);
      if (player.status() === 'playing') ride();
      else latest.current(null);
    };
    look();
    const unsubscribe = player.subscribe(look);
    return () => {
      unsubscribe();
      cancelAnimationFrame(frame);
    };
  }, [player]);
}
