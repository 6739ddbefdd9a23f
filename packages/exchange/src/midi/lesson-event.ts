/**
 * The text of the lesson in a MIDI file: a text event whose first line has its name and the sum of the notes that it was
 * written with, the lesson under it.
 */
import { LESSON_FIELD, sumOf } from '../lesson/inside.ts';
import { type SmfTrack, textsOf } from './smf.ts';

/** When each key goes down, and how hard. */
function notesOf(tracks: readonly SmfTrack[]): readonly string[] {
  return tracks
    .flatMap(({ events }) => events)
    .flatMap((event) => (event.kind === 'note-on' ? [`${event.ticks} ${event.key} ${event.velocity}`] : []));
}

/** The text of the event. */
export function lessonEvent(text: string, tracks: readonly SmfTrack[]): string {
  return `${LESSON_FIELD} ${sumOf(notesOf(tracks))}\n${text}`;
}

/** The text of the lesson inside, and whether the notes are still those that it was written with; null without one. */
export function lessonOfTracks(
  tracks: readonly SmfTrack[],
): { readonly text: string; readonly isSame: boolean } | null {
  const event = textsOf(tracks[0], 'text').find(({ text }) => text.startsWith(`${LESSON_FIELD} `));
  if (!event) return null;
  const end = event.text.indexOf('\n');
  const sum = event.text.slice(LESSON_FIELD.length + 1, end);
  return { text: event.text.slice(end + 1), isSame: end > 0 && sum === sumOf(notesOf(tracks)) };
}
