/** The check of the way of the sound: clicks are played, heard and kept for the devices. */
import { useState } from 'react';
import { checkKit, checkMicrophone } from '../device/check-latency.ts';
import type { RoundTrip } from '../device/latency.ts';
import { keepLatency } from '../device/latency-store.ts';
import type { Ear } from '../ear/ear.ts';
import { usePracticeSession } from '../session/practice-session.tsx';

/** How far the check is. */
export type Check =
  | { readonly at: 'ready' | 'running' | 'failed' | 'kept' }
  | { readonly at: 'done'; readonly trip: RoundTrip };

/** Takes a latency, in ms, and keeps it for the devices. */
export function takeLatency(ear: Ear, latencyMs: number, spreadMs: number | null): void {
  const { device } = ear.state();
  ear.setLatency(latencyMs);
  if (device !== null) void keepLatency({ device, latencyMs, spreadMs }).catch(() => undefined);
}

/** The check, and how to run it. */
export function useCheck(ear: Ear) {
  const { player, stop } = usePracticeSession();
  const [check, setCheck] = useState<Check>({ at: 'ready' });
  const run = async () => {
    stop();
    setCheck({ at: 'running' });
    const context = player.context();
    await context.resume();
    const trip = ear.microphone
      ? await checkMicrophone(context, ear.microphone)
      : ear.kit && (await checkKit(context, ear.kit));
    if (!trip) return setCheck({ at: 'failed' });
    takeLatency(ear, trip.medianMs, trip.spreadMs);
    setCheck({ at: 'done', trip });
  };
  return { check, setCheck, run };
}
