/** What is wrong with a MusicXML file and what would be right, as facts. */
import type { ExpectedFact, Fact, Voice } from '@shedbook/core';
import type { MeterFact } from '../midi/midi-fact.ts';
import type { XmlFact } from '../xml/xml-fact.ts';

/** An instrument with the key that plays it. */
interface InstrumentOfKeyFact extends Fact {
  readonly fact: 'instrument-of-key';
  readonly name: string;
  /** MIDI key. */
  readonly key: number;
}

/** What notes are of that are no voice of the drum set. */
export type InstrumentFact =
  | (Fact & { readonly fact: 'definite-pitch' | 'unknown-instrument' })
  | (Fact & { readonly fact: 'instrument'; readonly name: string })
  | InstrumentOfKeyFact;

/** What has no value to name. */
interface PlainMusicXmlFact extends Fact {
  readonly fact:
    | 'musicxml-drum-voice'
    | 'musicxml-no-sum'
    | 'musicxml-fitting-divisions'
    | 'musicxml-no-beats'
    | 'musicxml-one-meter'
    | 'musicxml-no-divisions'
    | 'musicxml-a-number-of-divisions'
    | 'musicxml-divisions-first'
    | 'musicxml-backup-over'
    | 'musicxml-backup-inside'
    | 'musicxml-strokes-inside'
    | 'musicxml-one-stroke'
    | 'musicxml-partwise'
    | 'musicxml-compressed'
    | 'musicxml-damaged-zip'
    | 'musicxml-graces-left-out'
    | 'musicxml-notes-left-out'
    | 'musicxml-measure-left-out'
    | 'musicxml-bars-left-out'
    | 'musicxml-it-left-out'
    | 'musicxml-to-bar-line'
    | 'musicxml-save-partwise'
    | 'musicxml-other-file'
    | 'musicxml-save-again'
    | 'musicxml-other-notes'
    | 'musicxml-notes-of-lesson'
    | 'musicxml-notes-hold';
}

/** Facts with values of their own. */
type ValuedMusicXmlFact =
  | (Fact & { readonly fact: 'musicxml-graces-alone'; readonly notes: number; readonly voice: Voice })
  | (Fact & { readonly fact: 'musicxml-stroke-after'; readonly voice: Voice })
  | (Fact & { readonly fact: 'musicxml-notes-of'; readonly notes: number; readonly of: InstrumentFact })
  /** Numbers of beats as written. */
  | (Fact & { readonly fact: 'musicxml-beats'; readonly beats: string })
  | (Fact & { readonly fact: 'musicxml-duration'; readonly text: string })
  | (Fact & { readonly fact: 'musicxml-without-duration'; readonly element: string })
  | (Fact & { readonly fact: 'musicxml-after-bar'; readonly meter: string })
  /** A place as a part of a whole note, e.g. `1/20`. */
  | (Fact & { readonly fact: 'musicxml-misfit'; readonly voice: Voice; readonly place: string })
  | (Fact & { readonly fact: 'musicxml-root'; readonly element: string })
  | (Fact & { readonly fact: 'musicxml-zip-without'; readonly file: string })
  | (Fact & { readonly fact: 'musicxml-no-root-file'; readonly file: string })
  | (Fact & { readonly fact: 'musicxml-no-file'; readonly file: string });

/** What is found in a MusicXML file, expected of it, or likely to repair it. */
export type MusicXmlFact =
  | ExpectedFact
  | MeterFact
  | InstrumentFact
  | XmlFact
  | PlainMusicXmlFact
  | ValuedMusicXmlFact;
