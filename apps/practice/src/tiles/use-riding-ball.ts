/** The ball that rides the tiles, and the count that lights up under it, in time with what is heard. */
import type { PackBar } from '@shedbook/pack';
import { ballOn, type Flight, type Landing, type Program, type ShownBar, shownAt } from '@shedbook/playing';
import { type FlightClock, useFlight } from '@shedbook/stand';
import type { RefObject } from 'react';
import type { Pictures } from './pictures.ts';

interface Shown {
  readonly where: ShownBar;
  readonly bar: PackBar;
}

function shownOf(program: Program, landing: Landing, pictures: Pictures): Shown | null {
  const sizes = { exercise: pictures.exercise.length, groove: pictures.groove.length };
  const where = shownAt(program, landing, sizes);
  const shown = where && pictures[where.on][where.index];
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
    const { acrossMm, overMm } = ballOn(bar, flight, still);
    ball.setAttribute('transform', `translate(${acrossMm.toFixed(2)} ${(floor - overMm).toFixed(2)})`);
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
    const at = moment && shownOf(moment.program, moment.flight.from, pictures);
    if (moment && at) drawOn(root.current, at, moment.flight, moment.isStill);
    else hideAll(root.current);
  });
}
