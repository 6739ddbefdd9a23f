/** For browser tests: what moves on a page after a person has seen it. */
import type { Page } from 'playwright-core';

/** Milliseconds by which fonts come late. */
const LATE_MS = 200;

/** Milliseconds for which the page is watched once it is there. */
const WATCHED_MS = 800;

/** How far things that stood there moved, as the platform scores it, and what they were. */
export interface Shift {
  readonly value: number;
  readonly moved: readonly string[];
}

/** Runs in the page before all else: keeps what moves. */
function watchShifts(): void {
  const shifts: Shift[] = [];
  Object.assign(window, { shifts });
  interface LayoutShift extends PerformanceEntry {
    readonly value: number;
    readonly sources: readonly { readonly node: Node | null }[];
  }
  const spelled = (node: Node | null) => (node instanceof Element ? node.outerHTML : `${node?.textContent}`);
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries() as LayoutShift[])
      shifts.push({
        value: entry.value,
        moved: entry.sources.map(({ node }) => spelled(node).slice(0, 120)),
      });
  }).observe({ type: 'layout-shift', buffered: true });
}

/**
 * Opens a page while its fonts come late.
 * @param there selector of what can be pressed
 * @returns what moved though it stood there already; whatever follows a press within half a second does not count
 */
export async function shiftsOf(page: Page, url: string, there: string): Promise<readonly Shift[]> {
  await page.goto('about:blank');
  await page.addInitScript(watchShifts);
  await page.route('**/*.woff2', async (route) => {
    await new Promise((resolve) => setTimeout(resolve, LATE_MS));
    await route.continue();
  });
  await page.goto(url);
  await page.locator(there).first().waitFor();
  await page.waitForTimeout(WATCHED_MS);
  return page.evaluate(() => (window as unknown as { shifts: readonly Shift[] }).shifts);
}
