/**
 * Lets the ball ride: it comes down on every count and every stroke in time with what is heard.
 */
import type { Lesson, Meter } from '@shedbook/core';
import type { Player, Program } from '@shedbook/stand';
import { type Flight, flightAt, type Landing, landingsOf } from '@shedbook/stand';
import { type RefObject, useEffect } from 'react';
import { BEAT_LEAD, beatEdges, QUARTER_WIDTH, slotX } from '../notation/layout.ts';

/** A place in a drawing of the usual width, in one where a quarter note takes other units. */
function inWidth(x: number, quarterWidth: number): number {
  return BEAT_LEAD + ((x - BEAT_LEAD) * quarterWidth) / QUARTER_WIDTH;
}

/** Height of a flight of a quarter note over the heads, and of the longest, in units of the drawing. */
const HEIGHT = { quarter: 26, most: 44 } as const;

/** Where the ball touches: just over the stems' ends it would hide nothing, on the heads it is clearest. */
const FLOOR = -9;

function xOf(landing: Landing, edges: readonly number[]): number {
  return slotX(edges, landing.beat, landing.phase);
}

/** The ball's place in units of the bar that it left from. */
export function ballAt(
  flight: Flight,
  meter: Meter,
  still: boolean,
): { readonly x: number; readonly y: number } {
  const edges = beatEdges(meter);
  const from = xOf(flight.from, edges);
  const sameBar = flight.to !== null && flight.to.bar === flight.from.bar;
  const to = sameBar ? xOf(flight.to as Landing, edges) : (edges.at(-1) ?? from);
  if (still) return { x: from, y: FLOOR };
  const length = (flight.to?.place ?? flight.from.place + 0.25) - flight.from.place;
  const height = Math.min(HEIGHT.most, HEIGHT.quarter * Math.sqrt(Math.max(0, length) / 0.25));
  const arc = 4 * flight.share * (1 - flight.share);
  return { x: from + (to - from) * flight.share, y: FLOOR - height * arc };
}

function place(
  balls: Iterable<SVGElement>,
  patternBar: number | null,
  at: { x: number; y: number } | null,
): void {
  for (const ball of balls) {
    const { ball: bar, left, right, quarter } = ball.dataset;
    const x = at === null ? 0 : inWidth(at.x, Number(quarter));
    const here =
      at !== null &&
      patternBar !== null &&
      Number(bar) === patternBar &&
      x >= Number(left) &&
      x < Number(right);
    ball.style.visibility = here ? 'visible' : 'hidden';
    if (here) ball.setAttribute('transform', `translate(${x.toFixed(2)} ${at.y.toFixed(2)})`);
  }
}

/** Lets the ball ride while something plays. */
export function useBall(player: Player, lesson: Lesson, root: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const still = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
    let frame = 0;
    let program: Program | null = null;
    let landings: readonly Landing[] = [];
    const draw = () => {
      frame = requestAnimationFrame(draw);
      const balls = root.current?.querySelectorAll<SVGElement>('[data-ball]') ?? [];
      const heard = player.heard();
      if (!heard) return place(balls, null, null);
      if (heard.program !== program) {
        program = heard.program;
        landings = landingsOf(program);
      }
      const flight = flightAt(landings, heard.place, program.end);
      if (!flight) return place(balls, null, null);
      const own =
        root.current?.querySelectorAll<SVGElement>(`[data-exercise="${program.exercise}"] [data-ball]`) ?? [];
      place(own, flight.from.patternBar, ballAt(flight, lesson.meter, still));
    };
    const stop = () => cancelAnimationFrame(frame);
    const look = () => {
      stop();
      if (player.status() === 'playing') draw();
      else place(root.current?.querySelectorAll<SVGElement>('[data-ball]') ?? [], null, null);
    };
    look();
    const unsubscribe = player.subscribe(look);
    return () => {
      unsubscribe();
      stop();
    };
  }, [player, lesson, root]);
}
