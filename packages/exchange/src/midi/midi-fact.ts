/** What is wrong with a Standard MIDI File and what would be right, as facts. */
import type { ExpectedFact, Fact } from '@shedbook/core';

/** A part of the file by name. */
interface NamedPartFact extends Fact {
  readonly fact:
    | 'midi-chunk-type'
    | 'midi-header-length'
    | 'midi-header-chunk'
    | 'midi-format'
    | 'midi-track-count'
    | 'midi-division'
    | 'midi-header'
    | 'midi-chunk-length'
    | 'midi-chunk'
    | 'midi-meta-type'
    | 'midi-meta-length'
    | 'midi-meta-data'
    | 'midi-event-data'
    | 'midi-delta-time'
    | 'midi-event'
    | 'midi-status'
    | 'midi-exclusive-length'
    | 'midi-exclusive-data';
}

/** Name of a part of the file. */
export type MidiPartName = NamedPartFact['fact'];

/** A part of the file. */
export type MidiPartFact =
  | NamedPartFact
  /** A chunk by its type, in quotes or as hexadecimal bytes. */
  | (Fact & { readonly fact: 'midi-chunk-of'; readonly type: string });

/** The largest file that is read. */
interface MidiSizeFact extends Fact {
  readonly fact: 'midi-bytes-up-to';
  readonly bytes: number;
}

/** What has no value to name. */
interface PlainMidiFact extends Fact {
  readonly fact:
    | 'midi-data-end'
    | 'midi-long-quantity'
    | 'midi-empty-file'
    | 'midi-no-ticks'
    | 'midi-zero-tempo'
    | 'midi-no-drum-notes'
    | 'midi-track-end'
    | 'midi-header-wanted'
    | 'midi-formats'
    | 'midi-ticks'
    | 'midi-status-wanted'
    | 'midi-data-wanted'
    | 'midi-event-wanted'
    | 'midi-time-signature-wanted'
    | 'midi-end-event'
    | 'midi-next-track'
    | 'midi-meters'
    | 'midi-drum-key'
    | 'midi-damaged'
    | 'midi-cut-or-damaged'
    | 'midi-cut'
    | 'midi-choose-file'
    | 'midi-other-file'
    | 'midi-export-again'
    | 'midi-export-format'
    | 'midi-export-musical-time'
    | 'midi-map-key'
    | 'midi-other-notes'
    | 'midi-notes-of-lesson'
    | 'midi-notes-hold'
    | 'midi-left-out';
}

/** A number of bytes. */
interface BytesFact extends Fact {
  readonly fact:
    | 'midi-bytes'
    | 'midi-bytes-left'
    | 'midi-bytes-after-end'
    | 'midi-header-found'
    | 'midi-short-tempo'
    | 'midi-short-time-signature';
  readonly bytes: number;
}

/** A byte, as people write it: `0x4D`. */
interface ByteFact extends Fact {
  readonly fact: 'midi-no-status' | 'midi-byte-in-event' | 'midi-status-found';
  readonly byte: string;
}

/** Facts with values of their own. */
type ValuedMidiFact =
  | (Fact & { readonly fact: 'midi-bytes-of'; readonly bytes: number; readonly part: MidiPartFact })
  | (Fact & { readonly fact: 'midi-short-quantity'; readonly part: MidiPartFact })
  | (Fact & { readonly fact: 'midi-format-found'; readonly format: number })
  /** Frames a second, and ticks a frame. */
  | (Fact & { readonly fact: 'midi-time-code'; readonly frames: number; readonly ticks: number })
  | (Fact & { readonly fact: 'midi-end-after-tracks'; readonly read: number; readonly tracks: number })
  /** The lower number as a power of 2. */
  | (Fact & { readonly fact: 'midi-time-signature-found'; readonly upper: number; readonly power: number })
  | (Fact & { readonly fact: 'midi-meter-found'; readonly upper: number; readonly lower: number })
  | (Fact & { readonly fact: 'midi-notes-of-channel'; readonly notes: number; readonly channel: number })
  | (Fact & { readonly fact: 'midi-notes-of-key'; readonly notes: number; readonly key: number })
  | (Fact & { readonly fact: 'midi-notes-on-no-slot'; readonly notes: number })
  | (Fact & { readonly fact: 'midi-notes-on-slots'; readonly bars: number })
  | (Fact & { readonly fact: 'midi-read-as'; readonly meter: string });

/** A meter, as its text. */
export interface MeterFact extends Fact {
  readonly fact: 'change-of-meter' | 'meter-throughout';
  readonly meter: string;
}

/** What is found in a Standard MIDI File, expected of it, or likely to repair it. */
export type MidiFact =
  | ExpectedFact
  | MidiPartFact
  | PlainMidiFact
  | MidiSizeFact
  | BytesFact
  | ByteFact
  | ValuedMidiFact
  | MeterFact;
