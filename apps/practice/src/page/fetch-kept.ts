/**
 * Asking for a file of a pack. The page's own pack keeps its files for times without a network; another pack of the
 * student's has kept its own, and they are found there.
 */

/** The file. @throws TypeError when it can be had from nowhere. */
export async function fetchKept(path: string): Promise<Response> {
  try {
    return await fetch(path);
  } catch (error) {
    const kept = 'caches' in globalThis ? await caches.match(new URL(path, window.location.href)) : undefined;
    if (kept) return kept;
    throw error;
  }
}
