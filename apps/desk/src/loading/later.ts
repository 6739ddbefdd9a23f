/**
 * What is loaded when it is first wanted, or before that as soon as the page has been left in peace: whoever loses the
 * server meanwhile still opens every menu and every view. What cannot be had is asked for again until it comes.
 */
import { type ComponentType, type LazyExoticComponent, lazy, useEffect } from 'react';

/** Milliseconds without a press or a key after which there is time. */
const PEACE_MS = 4000;

/** Milliseconds after which something that did not come is asked for again. */
const AGAIN_MS = 2000;

const unloaded = new Set<() => Promise<unknown>>();

const after = (milliseconds: number) => new Promise((done) => setTimeout(done, milliseconds));

/** Loads something, and asks for it again as long as it cannot be had. */
export async function untilThere<Module>(load: () => Promise<Module>): Promise<Module> {
  for (;;) {
    try {
      return await load();
    } catch {
      await after(AGAIN_MS);
    }
  }
}

/** A way to load something, which is gone at leisure where nobody went it before. @returns the same way, which ends only when it is there */
export function later<Module>(load: () => Promise<Module>): () => Promise<Module> {
  unloaded.add(load);
  return async () => {
    const module = await untilThere(load);
    unloaded.delete(load);
    return module;
  };
}

/** A component that is loaded later. */
export function lazily<Module, Props>(
  load: () => Promise<Module>,
  pick: (module: Module) => ComponentType<Props>,
): LazyExoticComponent<ComponentType<Props>> {
  const loaded = later(load);
  return lazy(async () => ({ default: pick(await loaded()) }));
}

/** Waits until the browser has nothing to do. Safari has no such call: there a moment is enough. */
const untilIdle = () =>
  new Promise<void>((done) =>
    'requestIdleCallback' in window ? requestIdleCallback(() => done()) : setTimeout(done, AGAIN_MS),
  );

/** Loads everything that is still to come, one after the other, and what that brings; what fails waits until it is wanted. */
async function loadAll(isStopped: () => boolean): Promise<void> {
  for (const load of unloaded) {
    await untilIdle();
    if (isStopped()) return;
    await load().then(
      () => unloaded.delete(load),
      () => undefined,
    );
  }
}

/** Loads at leisure as long as the page is there, and leaves off while somebody works. */
export function useLeisure(): void {
  useEffect(() => {
    let timer = 0;
    let round = 0;
    const wait = () => {
      round += 1;
      const own = round;
      clearTimeout(timer);
      timer = window.setTimeout(() => void loadAll(() => own !== round), PEACE_MS);
    };
    const signs = ['pointerdown', 'keydown'] as const;
    for (const sign of signs) window.addEventListener(sign, wait, { capture: true, passive: true });
    wait();
    return () => {
      round += 1;
      clearTimeout(timer);
      for (const sign of signs) window.removeEventListener(sign, wait, { capture: true });
    };
  }, []);
}
