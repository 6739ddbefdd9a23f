/** A thread that listens. */
import type { EarOrder, EarReport, EarRole } from './ear-messages.ts';

/**
 * Starts a thread of the ear.
 * @param hear gets everything that it says
 * @param broken called when it could not start or broke
 */
export function startEarThread(role: EarRole, hear: (report: EarReport) => void, broken: () => void): Worker {
  const thread = new Worker(new URL('./ear.worker.ts', import.meta.url), { type: 'module' });
  thread.onmessage = ({ data }: MessageEvent<EarReport>) => hear(data);
  thread.onerror = broken;
  thread.postMessage({ kind: 'role', role } satisfies EarOrder);
  return thread;
}
