/** A kit as a line check told of it, and as it is kept. Plain data. */
import type { Voice } from '@shedbook/core';
import { HEARD_VOICES, type KnownKit, readKnownKit } from '@shedbook/listen';

/** A kit with the voices that its line check heard well. */
export interface KeptKit {
  readonly kit: KnownKit;
  readonly voices: readonly Voice[];
}

/** What was kept, of whatever came back; null where it is none. */
export function readKeptKit(value: unknown): KeptKit | null {
  const { kit: some, voices } = (value ?? {}) as { readonly kit?: unknown; readonly voices?: unknown };
  const kit = readKnownKit(some);
  const areVoices = Array.isArray(voices) && voices.every((voice) => HEARD_VOICES.includes(voice));
  return kit && areVoices ? { kit, voices } : null;
}
