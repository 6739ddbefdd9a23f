/** What is looked for on both pages. Functions with a page run in it. */
import { type EnginePage, until } from './engine.ts';

/** The count of the practice page; '' where it does not contain a text. */
export function readCounter(text: string): string {
  const says = document.querySelector('[data-part="counter"]')?.textContent ?? '';
  return says.includes(text) ? says : '';
}

/** The text of an element, or ''. */
export function textOf(css: string): string {
  return document.querySelector(css)?.textContent ?? '';
}

/** Where the ball is, as it is drawn; '' while it is not shown, or where it was seen before. */
function readBall(seen: readonly string[]): string {
  const balls = [...document.querySelectorAll<SVGElement>('[data-part="ball"], [data-ball]')];
  const shown = balls.find(({ style }) => style.visibility === 'visible');
  const place = shown?.getAttribute('transform') ?? '';
  return seen.includes(place) ? '' : place;
}

/** Waits until the ball was seen in three places. @throws Error where it stands still */
export async function ballMoves(page: EnginePage): Promise<void> {
  const seen: string[] = [];
  while (seen.length < 3)
    seen.push(await until(page, `place ${seen.length + 1} of the ball`, readBall, seen));
}
