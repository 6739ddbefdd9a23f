/** What may never settle, with an end. */

/**
 * What a promise gives, where it does so in time.
 * @throws Error after `ms` milliseconds; what the promise does later is nobody's any more
 */
export function inTime<T>(promise: Promise<T>, ms: number): Promise<T> {
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => reject(new Error(`Nothing came within ${ms} ms`)), ms);
    promise.then(resolve, reject).finally(() => clearTimeout(late));
  });
}
