/** Files of notes as other programs send them. */
import { Ticks } from '@shedbook/core';
import { encodeSmf } from '../src/midi/encode.ts';
import type { NoteEvent } from '../src/midi/smf.ts';

/** A file of notes, each `[tick of 96 a quarter, key, velocity]`, on one channel. */
export function played(notes: readonly (readonly [number, number, number?])[], channel = 10): Uint8Array {
  const events = notes.map(([ticks, key, velocity = 90]): NoteEvent => {
    return { kind: 'note-on', ticks: Ticks(ticks), channel, key, velocity };
  });
  const ordered = events.sort((a, b) => a.ticks - b.ticks);
  return encodeSmf({
    format: 0,
    ticksPerQuarter: 96,
    tracks: [{ events: ordered, endTicks: Ticks(100_000) }],
  });
}
