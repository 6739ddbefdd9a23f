/**
 * What a phone covers of a page: a notch, round corners, the bar of its home screen.
 *
 * Conventions: CSS pixels. Functions with a page run in it.
 */
import type { Page } from 'playwright-core';

/** How far a phone covers each side. */
export interface Covered {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

/** A phone with what it covers; a page is 390 by 844, or lies on its side. */
export interface Phone {
  readonly viewport: { readonly width: number; readonly height: number };
  readonly covered: Covered;
}

/** Source: Apple, Human Interface Guidelines, layout: safe areas of a telephone with a notch in its longer side. */
export const PHONES: readonly Phone[] = [
  { viewport: { width: 390, height: 844 }, covered: { top: 59, right: 0, bottom: 34, left: 0 } },
  { viewport: { width: 844, height: 390 }, covered: { top: 0, right: 59, bottom: 21, left: 59 } },
];

/** Makes a page one on a phone. */
export async function coverPage(page: Page, { viewport, covered }: Phone): Promise<void> {
  await page.setViewportSize(viewport);
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setSafeAreaInsetsOverride' as never, { insets: covered } as never);
}

/**
 * Runs in the page: what can be read or pressed at points that are covered, at its beginning and at its end (or at those
 * of the dialog that is open over it), each once. It scrolls and looks in one go: a page may still get longer.
 */
function lookUnder({ top, right, bottom, left }: Covered, step: number): readonly string[] {
  const under = new Set<string>();
  const scrolls = document.querySelector('dialog[open]') ?? document.documentElement;
  const hasWords = (element: Element) =>
    element.matches('a, button, input, select, textarea, label, summary') ||
    [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim());
  for (const isEnd of [false, true]) {
    scrolls.scrollTo({ top: isEnd ? scrolls.scrollHeight : 0, behavior: 'instant' });
    // What scrolls by may pass there; what it begins and ends with may not stay.
    const isLong = scrolls.scrollHeight > scrolls.clientHeight + 1;
    const [above, below] = [isLong && isEnd ? 0 : top, isLong && !isEnd ? 0 : bottom];
    for (let x = 1; x < innerWidth; x += step)
      for (let y = 1; y < innerHeight; y += step) {
        const isFree = x >= left && x < innerWidth - right && y >= above && y < innerHeight - below;
        const hit = isFree ? null : document.elementFromPoint(x, y);
        if (hit && hasWords(hit)) under.add(`${hit.localName} ${hit.textContent?.trim().slice(0, 40)}`);
      }
  }
  return [...under];
}

/** Pixels between two points that are looked at. */
const STEP = 6;

/** What can be read or pressed of a page's beginning and of its end lies under what a phone covers: each once. */
export async function underNotch(page: Page, { covered }: Phone): Promise<readonly string[]> {
  return (await page.evaluate(`(${lookUnder})(${JSON.stringify(covered)}, ${STEP})`)) as readonly string[];
}
