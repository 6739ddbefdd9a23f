/**
 * A Standard MIDI File as data: header and tracks of events.
 *
 * Conventions: `ticks` count from the start of the track; `channel` counts from 1 as people do (drums are 10);
 * keys and velocities are 0–127.
 * Source: Standard MIDI Files 1.0 (MMA RP-001); MIDI 1.0 for channel messages.
 */
import type { Ticks } from '@shedbook/core';

/** A key goes down or up. */
export interface NoteEvent {
  readonly kind: 'note-on' | 'note-off';
  readonly ticks: Ticks;
  readonly channel: number;
  /** MIDI key, 0–127. */
  readonly key: number;
  /** MIDI velocity, 0–127. */
  readonly velocity: number;
}

/** A meta event of text. */
export interface TextEvent {
  /** Types 01, 03 and 06; a name is a track's, or the whole file's in its first track. */
  readonly kind: 'text' | 'name' | 'marker';
  readonly ticks: Ticks;
  readonly text: string;
}

/** A meta event 51: the tempo from here on, in microseconds per quarter note. */
export interface TempoEvent {
  readonly kind: 'tempo';
  readonly ticks: Ticks;
  readonly microsecondsPerQuarter: number;
}

/** A meta event 58: the meter from here on. */
export interface TimeSignatureEvent {
  readonly kind: 'time-signature';
  readonly ticks: Ticks;
  /** How many units a bar has. */
  readonly upper: number;
  /** Units that make a whole note, a number such as 4 or 8. */
  readonly lower: number;
  /** MIDI clocks (24 a quarter) between clicks of a metronome. */
  readonly clocksPerClick: number;
}

/** Another set of sounds on a channel from here on. */
export interface ProgramEvent {
  readonly kind: 'program';
  readonly ticks: Ticks;
  readonly channel: number;
  /** Counted from 0. */
  readonly program: number;
}

/** The events that matter here; a program is written and not read. */
export type SmfEvent = NoteEvent | ProgramEvent | TextEvent | TempoEvent | TimeSignatureEvent;

/** A track chunk. */
export interface SmfTrack {
  /** In the order of the file. */
  readonly events: readonly SmfEvent[];
  /** Where the track ends, in ticks. */
  readonly endTicks: Ticks;
}

/** A file; ticks per quarter note are 1–32767. */
export interface Smf {
  /** 0: one track; 1: tracks that sound together. */
  readonly format: 0 | 1;
  readonly ticksPerQuarter: number;
  readonly tracks: readonly SmfTrack[];
}

/** The channel of General MIDI percussion, counted from 1. */
export const PERCUSSION_CHANNEL = 10;

/** The brush set of General MIDI 2, counted from 0; other players keep their own set. */
export const BRUSH_PROGRAM = 40;

/** The tempo before any tempo event: 120 quarters a minute, as RP-001 says. */
export const DEFAULT_MICROSECONDS_PER_QUARTER = 500_000;

/** The texts of one kind in a track, in order. */
export function textsOf(track: SmfTrack | undefined, kind: TextEvent['kind']): readonly TextEvent[] {
  return (track?.events ?? []).filter((event): event is TextEvent => event.kind === kind);
}
