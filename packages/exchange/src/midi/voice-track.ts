/**
 * The notes of one voice as a track.
 *
 * Conventions: a note of a drum lasts a thirty-second, of a cymbal that rings a quarter, and never past the next
 * note of its key or the last bar line: the file loops clean, samplers that obey note-offs then sound right, all others ignore them.
 */
import {
  isAccent,
  LeadDb,
  levelDbToVelocity,
  type SoundingVoice,
  type Stroke,
  Ticks,
  VOICE_FACTS,
} from '@shedbook/core';
import { trackName, voiceToKey } from './key-map.ts';
import { ornamentStrokes } from './ornaments.ts';
import { type Placement, TICKS_PER_QUARTER } from './placement.ts';
import { BRUSH_PROGRAM, type NoteEvent, PERCUSSION_CHANNEL, type SmfEvent, type SmfTrack } from './smf.ts';

interface Note {
  readonly ticks: Ticks;
  readonly key: number;
  readonly velocity: number;
  /** How long it lasts, where it is held; as long as its voice sounds where left out. */
  readonly lasts?: number;
}

/** Velocity of the note-offs: 64 is MIDI's value for a sender that does not measure it. */
const RELEASE_VELOCITY = 64;

/** A stroke where it lies in the file. */
export interface FiledStroke {
  readonly stroke: Stroke;
  readonly placement: Placement;
}

/** The notes of a stroke and its ornaments, in order of time. */
function strokeNotes({ stroke, placement }: FiledStroke, before: FiledStroke | undefined): readonly Note[] {
  const key = voiceToKey(stroke.voice, stroke.articulation, isAccent(stroke.mark));
  const note = (seconds: number, levelDb: number): Note => ({
    ticks: placement.strokeTicks(stroke, seconds),
    key,
    velocity: levelDbToVelocity(LeadDb(levelDb)),
  });
  const near = before?.placement === placement;
  const room = near ? stroke.timeSeconds - before.stroke.timeSeconds : Number.POSITIVE_INFINITY;
  const ornaments = ornamentStrokes(
    stroke.articulation,
    stroke.heldSeconds ?? placement.slotSeconds(stroke),
    room,
  )
    .map((added) => note(added.seconds, stroke.levelDb + added.levelDb))
    .filter((added) => added.ticks >= 0);
  const plain = note(0, stroke.levelDb);
  const { heldSeconds } = stroke;
  const lasts =
    heldSeconds === undefined ? undefined : placement.strokeTicks(stroke, heldSeconds) - plain.ticks;
  // A roll that is held is so many bounces; a sweep is one note as long as it is.
  const main = lasts === undefined || ornaments.length > 0 ? plain : { ...plain, lasts };
  return [...ornaments, { ...main, ticks: Ticks(Math.max(0, main.ticks)) }].sort((a, b) => a.ticks - b.ticks);
}

/** All notes of a voice; the bounces of a buzz stop where the next stroke begins. */
function voiceNotes(placed: readonly FiledStroke[]): readonly Note[] {
  const notes = placed.map((each, i) => strokeNotes(each, placed[i - 1]));
  return notes.flatMap((mine, i) => {
    const next = notes[i + 1]?.[0]?.ticks ?? Number.POSITIVE_INFINITY;
    return mine.filter((note, j) => j === 0 || note.ticks < next);
  });
}

function withEnds(notes: readonly Note[], longest: number, endTicks: Ticks): readonly NoteEvent[] {
  const next = new Map<number, number>();
  const events = notes.toReversed().flatMap(({ ticks, key, velocity, lasts = longest }): NoteEvent[] => {
    const room = (next.get(key) ?? endTicks) - ticks;
    next.set(key, ticks);
    const channel = PERCUSSION_CHANNEL;
    const end = Ticks(ticks + Math.max(1, Math.min(lasts, room)));
    return [
      { kind: 'note-off', ticks: end, channel, key, velocity: RELEASE_VELOCITY },
      { kind: 'note-on', ticks, channel, key, velocity },
    ];
  });
  const order = { 'note-off': 0, 'note-on': 1 };
  return events.sort((a, b) => a.ticks - b.ticks || order[a.kind] - order[b.kind]);
}

/** The choice of the brush set, where brushes play. */
function brushSet(placed: readonly FiledStroke[]): readonly SmfEvent[] {
  const isBrush = placed.some(
    ({ stroke: { articulation } }) => articulation === 'tap' || articulation === 'sweep',
  );
  const set = { ticks: Ticks(0), channel: PERCUSSION_CHANNEL, program: BRUSH_PROGRAM };
  return isBrush ? [{ kind: 'program', ...set }] : [];
}

/** The track of one voice: its name, then its notes. Strokes must be in order of time. */
export function voiceTrack(voice: SoundingVoice, placed: readonly FiledStroke[], endTicks: Ticks): SmfTrack {
  const ordered = voiceNotes(placed).toSorted((a, b) => a.ticks - b.ticks);
  const longest = voice !== 'click' && VOICE_FACTS[voice].rings ? TICKS_PER_QUARTER : TICKS_PER_QUARTER / 8;
  const events = withEnds(ordered, longest, endTicks);
  return {
    events: [{ kind: 'name', ticks: Ticks(0), text: trackName(voice) }, ...brushSet(placed), ...events],
    endTicks: Ticks(Math.max(endTicks, events.at(-1)?.ticks ?? 0)),
  };
}
