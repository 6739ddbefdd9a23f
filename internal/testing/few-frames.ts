/**
 * For browser tests that play: pictures move by fewer frames, since drawing sixty of them a second takes a browser
 * without a graphics card more of the processor than all that is heard.
 */
import type { BrowserContext, Page } from 'playwright-core';

declare global {
  interface Window {
    /** From now on every frame is drawn. */
    drawEveryFrame: () => void;
  }
}

/** Milliseconds that a page waits before it asks for its next frame. */
export const FRAME_WAIT_MS = 150;

/** Runs in the page before anything else does. */
export function waitForFrames(waitMs: number): void {
  const { requestAnimationFrame: ask, cancelAnimationFrame: drop } = window;
  const asked = new Map<number, () => void>();
  let latest = 0;
  let wait = waitMs;
  window.drawEveryFrame = () => {
    wait = 0;
  };
  window.requestAnimationFrame = (draw) => {
    latest += 1;
    const id = latest;
    const go = () => {
      const frame = ask((now) => {
        asked.delete(id);
        draw(now);
      });
      asked.set(id, () => drop(frame));
    };
    if (wait === 0) go();
    else {
      const timer = setTimeout(go, wait);
      asked.set(id, () => clearTimeout(timer));
    }
    return id;
  };
  window.cancelAnimationFrame = (id) => {
    asked.get(id)?.();
    asked.delete(id);
  };
}

/** Lets pages of a window draw a few frames a second, until one asks for all of them. */
export function drawFewFrames(context: BrowserContext): Promise<unknown> {
  return context.addInitScript(waitForFrames, FRAME_WAIT_MS);
}

/** Lets a page draw every frame, where it is the picture that is watched. */
export function drawEveryFrame(page: Page): Promise<void> {
  return page.evaluate(() => window.drawEveryFrame());
}
