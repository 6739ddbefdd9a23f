/**
 * A Standard MIDI File to strokes: our own files, other programs' and recordings of electronic kits.
 *
 * Conventions: `timeSeconds` from the start of the file through its tempo map; `at` in whole notes from there;
 * `levelDb` by the dynamics of core (velocity 90 is 0 dB). Where channel 10 has notes, other channels are not
 * drums and are left out; where it has none, all channels are read. Every note that is no voice of the drum set
 * is listed in `others` and reported once for each key.
 * Sources: Standard MIDI Files 1.0 (MMA RP-001); keys as in key-map.
 */
import {
  type Articulation,
  type Fraction,
  groupBy,
  type LeadDb,
  type Meter,
  parseMeter,
  Seconds,
  type SoundingVoice,
  Ticks,
  velocityToLevelDb,
} from '@shedbook/core';
import { lessonInside } from '../lesson/inside.ts';
import { decodeSmf } from './decode.ts';
import { keyInTrack } from './key-map.ts';
import { lessonOfTracks } from './lesson-event.ts';
import type { MidiFact } from './midi-fact.ts';
import { pairNotes, type RawNote } from './pair-notes.ts';
import type { ByteProblem } from './problem.ts';
import { PERCUSSION_CHANNEL, type Smf, textsOf } from './smf.ts';
import { type MidiTempo, midiClock, tempoMapOf, ticksToWholeNotes } from './tempo-map.ts';

/** A note that is no voice of the drum set. */
export interface MidiOtherNote {
  readonly timeSeconds: Seconds;
  readonly ticks: Ticks;
  readonly at: Fraction;
  readonly durationSeconds: Seconds;
  /** Counted from 1. */
  readonly channel: number;
  /** MIDI key, 0–127. */
  readonly key: number;
  /** MIDI velocity, 1–127. */
  readonly velocity: number;
}

/** A stroke of the drum set; `levelDb` is 0 at velocity 90. */
export interface MidiNote extends MidiOtherNote {
  readonly voice: SoundingVoice;
  readonly articulation: Articulation;
  readonly levelDb: LeadDb;
}

/** A meter and where it begins, in ticks and in whole notes. */
export interface MidiMeter {
  readonly ticks: Ticks;
  readonly at: Fraction;
  readonly meter: Meter;
}

/** What a file has, in seconds and in whole notes from its start. */
export interface MidiTake {
  /** An error among them means that nothing could be read. */
  readonly problems: readonly ByteProblem[];
  readonly title: string | null;
  /** The text of the lesson that the file was made from, where its notes are still those; null otherwise. */
  readonly lessonText: string | null;
  readonly ticksPerQuarter: number;
  readonly tempoMap: readonly MidiTempo[];
  /** The meters in order; empty when the file says none. */
  readonly meters: readonly MidiMeter[];
  readonly markers: readonly { readonly at: Fraction; readonly text: string }[];
  /** In order of time. */
  readonly notes: readonly MidiNote[];
  readonly others: readonly MidiOtherNote[];
  /** End of the longest track. */
  readonly durationSeconds: Seconds;
}

const NOTHING = {
  title: null,
  lessonText: null,
  ticksPerQuarter: 1,
  tempoMap: [],
  meters: [],
  markers: [],
  notes: [],
  others: [],
  durationSeconds: Seconds(0),
} as const;

function warning(code: string, found: MidiFact, expected: MidiFact, repair: MidiFact | null): ByteProblem {
  return { code, severity: 'warning', offset: null, found, expected, repair };
}

function metersOf(file: Smf, problems: ByteProblem[]): readonly MidiMeter[] {
  const events = file.tracks.flatMap((track) => track.events).filter((e) => e.kind === 'time-signature');
  return events
    .sort((a, b) => a.ticks - b.ticks)
    .flatMap(({ ticks, upper, lower }) => {
      const meter = parseMeter(`${upper}/${lower}`);
      if (!meter) {
        const found = { fact: 'midi-meter-found', upper, lower } as const;
        problems.push(warning('midi-meter', found, { fact: 'midi-meters' }, null));
        return [];
      }
      return [{ ticks, at: ticksToWholeNotes(ticks, file.ticksPerQuarter), meter }];
    });
}

function reportOthers(others: readonly MidiOtherNote[], drums: boolean): readonly ByteProblem[] {
  const elsewhere = (note: MidiOtherNote) => drums && note.channel !== PERCUSSION_CHANNEL;
  const groups = groupBy(others, (note) => (elsewhere(note) ? `channel ${note.channel}` : `key ${note.key}`));
  return [...groups.values()].flatMap((group) => {
    const [note] = group;
    if (!note) return [];
    const { channel, key } = note;
    const notes = group.length;
    const found: MidiFact = elsewhere(note)
      ? { fact: 'midi-notes-of-channel', notes, channel }
      : { fact: 'midi-notes-of-key', notes, key };
    return [warning('midi-other-note', found, { fact: 'midi-drum-key' }, { fact: 'midi-map-key' })];
  });
}

function describe(note: RawNote, clock: (ticks: Ticks) => Seconds, ticksPerQuarter: number): MidiOtherNote {
  const { ticks, endTicks, channel, key, velocity } = note;
  const timeSeconds = clock(ticks);
  const at = ticksToWholeNotes(ticks, ticksPerQuarter);
  return {
    timeSeconds,
    ticks,
    at,
    durationSeconds: Seconds(clock(endTicks) - timeSeconds),
    channel,
    key,
    velocity,
  };
}

/** The text of the lesson inside, where the notes are still those; where not, that is said. */
function readLesson(file: Smf, problems: ByteProblem[]): string | null {
  const inside = lessonOfTracks(file.tracks);
  if (!inside || !lessonInside(inside.text)) return null;
  if (inside.isSame) return inside.text;
  const [found, expected] = [{ fact: 'midi-other-notes' }, { fact: 'midi-notes-of-lesson' }] as const;
  problems.push(warning('midi-lesson', found, expected, { fact: 'midi-notes-hold' }));
  return null;
}

/** What the reader should know of the kit. */
export interface ReadMidiOptions {
  /** What MIDI key numbers stand for where the kit sends other ones than the map knows. */
  readonly keys?: Readonly<Record<number, SoundingVoice>>;
}

/** Reads a file; problems say what was refused or left out, and where. */
export function readMidi(bytes: Uint8Array, options: ReadMidiOptions = {}): MidiTake {
  const decoded = decodeSmf(bytes);
  const problems: ByteProblem[] = [...decoded.problems];
  const file = decoded.file;
  if (!file) return { ...NOTHING, problems };
  const tempoMap = tempoMapOf(file);
  const clock = midiClock(tempoMap, file.ticksPerQuarter);
  const raw = pairNotes(file);
  const drums = raw.some((note) => note.channel === PERCUSSION_CHANNEL);
  const notes: MidiNote[] = [];
  const others: MidiOtherNote[] = [];
  for (const note of raw) {
    const described = describe(note, clock, file.ticksPerQuarter);
    const own = options.keys?.[note.key];
    const meaning = own
      ? { voice: own, articulation: 'normal' as const }
      : keyInTrack(note.key, note.trackName);
    if (meaning && (!drums || note.channel === PERCUSSION_CHANNEL)) {
      notes.push({ ...described, ...meaning, levelDb: velocityToLevelDb(note.velocity) });
    } else others.push(described);
  }
  const meters = metersOf(file, problems);
  problems.push(...reportOthers(others, drums));
  const title = textsOf(file.tracks[0], 'name')[0]?.text ?? null;
  const markers = textsOf(file.tracks[0], 'marker').map(({ ticks, text }) => ({
    at: ticksToWholeNotes(ticks, file.ticksPerQuarter),
    text,
  }));
  const durationSeconds = clock(Ticks(Math.max(0, ...file.tracks.map((track) => track.endTicks))));
  const { ticksPerQuarter } = file;
  const lessonText = readLesson(file, problems);
  const times = { ticksPerQuarter, tempoMap, meters, markers };
  return { problems, title, lessonText, ...times, notes, others, durationSeconds };
}
