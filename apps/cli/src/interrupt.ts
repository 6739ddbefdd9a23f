/** Work that can be interrupted at the keyboard. */

/** Runs what can be interrupted at the keyboard. @returns null where it was */
export async function unlessInterrupted<T>(run: (signal: AbortSignal) => Promise<T>): Promise<T | null> {
  const control = new AbortController();
  const stop = () => control.abort();
  process.on('SIGINT', stop).on('SIGTERM', stop);
  try {
    return await run(control.signal);
  } catch (error) {
    if (control.signal.aborted) return null;
    throw error;
  } finally {
    process.off('SIGINT', stop).off('SIGTERM', stop);
  }
}
