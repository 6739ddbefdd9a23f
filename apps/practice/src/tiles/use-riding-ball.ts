/** The ball that rides the tiles, and the count that lights up under it, in time with what is heard. */
import type { PackBar } from '@shedbook/pack';
import {
  type Flight,
  type FlightClock,
  flightHeight,
  type Landing,
  type Program,
  useFlight,
} from '@shedbook/stand';
import type { RefObject } from 'react';
import type { Pictures } from './pictures.ts';
import { type ShownBar, shownBar, xAt } from './places.ts';

/** Height of a flight of a quarter note, and of the longest, in millimetres. */
const HEIGHT_MM = { quarter: 5.5, most: 8 } as const;

/** Where the ball is across its bar; with still pictures it stays where it came down. */
function acrossOf(flight: Flight, bar: PackBar, still: boolean): number {
  const { from, to, share } = flight;
  const x = xAt(bar, from.beat, from.phase);
  if (still) return x;
  const next = to && to.bar === from.bar ? xAt(bar, to.beat, to.phase) : bar.widthMm;
  return x + (next - x) * share;
}

interface Shown {
  readonly where: ShownBar;
  readonly bar: PackBar;
}

function shownAt(program: Program, landing: Landing, pictures: Pictures): Shown | null {
  const bar = program.bars.find((each) => each.bar === Math.max(1, landing.bar));
  if (!bar) return null;
  const sizes = { exercise: pictures.exercise.length, groove: pictures.groove.length };
  const where = shownBar(program, bar, sizes);
  const shown = pictures[where.on][where.index];
  return shown ? { where, bar: shown } : null;
}

function hideAll(root: HTMLElement): void {
  for (const ball of root.querySelectorAll<SVGElement>('[data-part="ball"]'))
    ball.style.visibility = 'hidden';
  for (const count of root.querySelectorAll('[data-now]')) count.removeAttribute('data-now');
}

function drawOn(root: HTMLElement, { where, bar }: Shown, flight: Flight, still: boolean): void {
  const picture = root.querySelector(`[data-on="${where.on}"][data-bar="${bar.bar}"]`);
  for (const ball of root.querySelectorAll<SVGElement>('[data-part="ball"]')) {
    const here = picture?.contains(ball) ?? false;
    ball.style.visibility = here ? 'visible' : 'hidden';
    if (!here) continue;
    const floor = Number(ball.dataset['floor']);
    const y = still ? floor : floor - flightHeight(flight, HEIGHT_MM);
    ball.setAttribute('transform', `translate(${acrossOf(flight, bar, still).toFixed(2)} ${y.toFixed(2)})`);
  }
  for (const count of root.querySelectorAll<SVGElement>('[data-beat]')) {
    const now = picture?.contains(count) && count.dataset['beat'] === String(flight.from.beat + 1);
    if (now) count.setAttribute('data-now', '');
    else count.removeAttribute('data-now');
  }
}

/** Lets the ball ride while something plays. */
export function useRidingBall(
  player: FlightClock,
  pictures: Pictures,
  root: RefObject<HTMLElement | null>,
): void {
  useFlight(player, (moment) => {
    if (!root.current) return;
    const at = moment && shownAt(moment.program, moment.flight.from, pictures);
    if (moment && at) drawOn(root.current, at, moment.flight, moment.isStill);
    else hideAll(root.current);
  });
}
