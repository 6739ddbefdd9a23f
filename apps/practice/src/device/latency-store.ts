/** Latencies that were measured or set by hand, by the names of the devices. */
import { keepMany, read, readAll } from '../kept/database.ts';

/** What is kept of a set of devices. */
export interface KeptLatency {
  readonly device: string;
  readonly latencyMs: number;
  /** Null where it was set by hand. */
  readonly spreadMs: number | null;
}

/** The latency of a set of devices in ms, or null. */
export async function latencyOf(device: string): Promise<number | null> {
  return (await read<KeptLatency>('latencies', device))?.latencyMs ?? null;
}

/** Keeps a latency. */
export function keepLatency(latency: KeptLatency): Promise<void> {
  return keepMany('latencies', [latency]);
}

/** Every latency that is kept. */
export function allLatencies(): Promise<readonly KeptLatency[]> {
  return readAll<KeptLatency>('latencies');
}
