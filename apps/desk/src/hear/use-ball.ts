/**
 * Lets the ball ride: it comes down on every count and every stroke in time with what is heard.
 */
import { type Lesson, type Meter, sectionOf } from '@shedbook/core';
import { type Flight, flightHeight, type Landing } from '@shedbook/playing';
import { type Player, useFlight } from '@shedbook/stand';
import type { RefObject } from 'react';
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
  return { x: from + (to - from) * flight.share, y: FLOOR - flightHeight(flight, HEIGHT) };
}

/** Shows the ball of one bar at a place, and hides all others; null hides every one. */
export function placeBalls(
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
  useFlight(player, (moment) => {
    const balls = (within: string) =>
      root.current?.querySelectorAll<SVGElement>(`${within} [data-ball]`) ?? [];
    if (!moment) return placeBalls(balls(''), null, null);
    const { program, flight, isStill } = moment;
    const own = balls(`[data-exercise="${program.exercise}"]`);
    placeBalls(
      own,
      flight.from.patternBar,
      ballAt(flight, sectionOf(lesson, program.exercise).meter, isStill),
    );
  });
}
