/**
 * Note-ons with their note-offs, over all tracks.
 *
 * Conventions: a note-off ends the oldest open note of its key and channel in its own track; a note that is never
 * ended lasts to the end of its track.
 */
import type { Ticks } from '@shedbook/core';
import { type NoteEvent, type Smf, type SmfTrack, textsOf } from './smf.ts';

/** A note from its start to its end, in ticks; channels count from 1. */
export interface RawNote {
  readonly ticks: Ticks;
  readonly endTicks: Ticks;
  readonly channel: number;
  readonly key: number;
  readonly velocity: number;
  readonly trackName: string | null;
}

function notesOfTrack(track: SmfTrack): readonly RawNote[] {
  const trackName = textsOf(track, 'name')[0]?.text ?? null;
  const open = new Map<number, { on: NoteEvent; endTicks: Ticks }[]>();
  const all: { on: NoteEvent; endTicks: Ticks }[] = [];
  for (const event of track.events) {
    if (event.kind !== 'note-on' && event.kind !== 'note-off') continue;
    const id = event.channel * 128 + event.key;
    if (event.kind === 'note-on') {
      const note = { on: event, endTicks: track.endTicks };
      all.push(note);
      open.set(id, [...(open.get(id) ?? []), note]);
    } else {
      const oldest = open.get(id)?.shift();
      if (oldest) oldest.endTicks = event.ticks;
    }
  }
  return all.map(({ on, endTicks }) => {
    const { ticks, channel, key, velocity } = on;
    return { ticks, endTicks, channel, key, velocity, trackName };
  });
}

/** Every note of a file in order of time; at the same tick in order of tracks. */
export function pairNotes(file: Smf): readonly RawNote[] {
  return file.tracks.flatMap(notesOfTrack).sort((a, b) => a.ticks - b.ticks);
}
