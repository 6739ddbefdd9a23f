/** What the program takes of the processor and of memory from a moment on. */

/** What a program may take from a moment on. */
export interface ProcessLimits {
  /** Milliseconds of the processor. */
  readonly processorMs: number;
  /** Bytes by which it may grow: those of buffers and compiled code, too. */
  readonly grownBytes: number;
}

/** Milliseconds from one look to the next. */
const LOOK_MS = 200;

/**
 * Looks again and again until too much was taken, or until it is ended.
 *
 * Conventions: one thread takes no more than time goes by, so that what others take beside it, or of a moment in which
 * nobody could look, counts as one look at most.
 * @returns ends it
 */
export function watchProcess({ processorMs, grownBytes }: ProcessLimits, tooMuch: () => void): () => void {
  const bytesBefore = process.memoryUsage.rss();
  let [taken, before] = [0, process.cpuUsage()];
  const watch = setInterval(() => {
    const { user, system } = process.cpuUsage(before);
    before = process.cpuUsage();
    taken += Math.min(LOOK_MS, (user + system) / 1000);
    if (taken <= processorMs && process.memoryUsage.rss() - bytesBefore <= grownBytes) return;
    clearInterval(watch);
    tooMuch();
  }, LOOK_MS);
  return () => clearInterval(watch);
}
