/**
 * Performances to a Standard MIDI File.
 *
 * Conventions: General MIDI percussion on channel 10, 3360 ticks a quarter. One track a voice, because a student
 * mutes voices and not limbs, and a limb follows from its voice. Tick 0 is the start of the count-in. Velocities
 * by the dynamics of core: 0 dB is 90. Flams, drags and buzzes are written out as strokes; a grace stroke that
 * would lie before tick 0 is left out.
 * Sources: Standard MIDI Files 1.0 (MMA RP-001); General MIDI System Level 1.
 * Differs from the source: text is UTF-8. A tempo is a whole number of microseconds a quarter, so the clock of a
 * file may differ from the performance by up to half a microsecond a quarter note.
 */
import { type Meter, type Performance, type SoundingVoice, Ticks, VOICES } from '@shedbook/core';
import { conductorTrack } from './conductor-track.ts';
import { encodeSmf } from './encode.ts';
import { lessonEvent } from './lesson-event.ts';
import { type MidiTiming, placePerformance, TICKS_PER_QUARTER } from './placement.ts';
import type { SmfTrack } from './smf.ts';
import { type FiledStroke, voiceTrack } from './voice-track.ts';

/** What a file says beside its strokes. */
export interface WriteMidiOptions {
  readonly title: string;
  readonly by?: string | null;
  /** Text of the lesson to keep inside, where the file is all of it; none when left out. */
  readonly lessonText?: string;
  /** `performed` when left out. */
  readonly timing?: MidiTiming;
  /** 1 when left out: a track a voice; 0: everything in one track. */
  readonly format?: 0 | 1;
}

/** A performance with a name, one of several in a file. */
export interface MidiSection {
  readonly name: string | null;
  readonly meter: Meter;
  readonly performance: Performance;
}

const TRACK_ORDER: readonly SoundingVoice[] = [...VOICES, 'click'];

function placeSections(sections: readonly MidiSection[], options: WriteMidiOptions) {
  let startTicks = Ticks(0);
  return sections.map(({ name, meter, performance }) => {
    const timing = options.timing ?? 'performed';
    const placement = placePerformance(performance, meter, timing, startTicks);
    startTicks = placement.endTicks;
    return { name, meter, performance, placement };
  });
}

/** All tracks in one, in order of time; tracks earlier in the file come first at the same tick. */
function mergeTracks(tracks: readonly SmfTrack[]): SmfTrack {
  const events = tracks.flatMap((track, i) => (i === 0 ? track.events : track.events.slice(1)));
  return {
    events: events.sort((a, b) => a.ticks - b.ticks),
    endTicks: Ticks(Math.max(...tracks.map((track) => track.endTicks))),
  };
}

/** The first track with the text of the lesson, and the sum of the notes that it was written with. */
function withLesson(track: SmfTrack, voices: readonly SmfTrack[], text: string | undefined): SmfTrack {
  if (text === undefined) return track;
  const event = { kind: 'text', ticks: Ticks(0), text: lessonEvent(text, voices) } as const;
  const after = track.events.findIndex(
    ({ ticks, kind }) => ticks > 0 || (kind !== 'name' && kind !== 'text'),
  );
  const at = after < 0 ? track.events.length : after;
  return { ...track, events: track.events.toSpliced(at, 0, event) };
}

/** The bytes of a file with performances one after another, each with its name as a marker: a whole sheet. */
export function writeMidiSheet(sections: readonly MidiSection[], options: WriteMidiOptions): Uint8Array {
  const placed = placeSections(sections, options);
  const byVoice = new Map<SoundingVoice, FiledStroke[]>();
  for (const { performance, placement } of placed) {
    for (const stroke of performance.strokes) {
      const list = byVoice.get(stroke.voice) ?? [];
      list.push({ stroke, placement });
      byVoice.set(stroke.voice, list);
    }
  }
  const { title, by = null, format = 1 } = options;
  const plain = conductorTrack(placed, { title, by });
  const voices = TRACK_ORDER.flatMap((voice) => {
    const strokes = byVoice.get(voice);
    return strokes ? [voiceTrack(voice, strokes, plain.endTicks)] : [];
  });
  const tracks = [withLesson(plain, voices, options.lessonText), ...voices];
  return encodeSmf({
    format,
    ticksPerQuarter: TICKS_PER_QUARTER,
    tracks: format === 0 ? [mergeTracks(tracks)] : tracks,
  });
}

/** The bytes of a file with one performance. */
export function writeMidi(
  performance: Performance,
  { meter, ...options }: WriteMidiOptions & Pick<MidiSection, 'meter'>,
): Uint8Array {
  return writeMidiSheet([{ name: null, meter, performance }], options);
}
