/**
 * The strokes of one part, bar after bar.
 *
 * Conventions: a cursor in whole notes from the bar line is moved by notes, backups and forwards. Repeats are not
 * unrolled: what is written is read once.
 * Source: MusicXML 4.0, elements note, chord, grace, backup, forward, attributes.
 */

import type { Articulation, PlacedStroke, Voice } from '@shedbook/core';
import {
  add,
  childOf,
  childrenOf,
  compare,
  type Fraction,
  fraction,
  type LeadDb,
  type Meter,
  subtract,
  type TextPlace,
  type XmlElement,
  ZERO,
} from '@shedbook/core';
import { parseDecimal } from './decimal.ts';
import { GraceNotes, type NoteTally, tally } from './grace-notes.ts';
import type { InstrumentFact, MusicXmlFact } from './musicxml-fact.ts';
import type { ProblemList } from './problems.ts';
import { meterOf } from './read-header.ts';
import { type ReadInstrument, voiceOfNote } from './read-instruments.ts';
import { type ReadTouch, readTouch } from './read-note.ts';

/** A stroke of a score with where it stands in the text. */
export interface ScoreStroke extends PlacedStroke, TextPlace {
  readonly sticking: ReadTouch['sticking'];
  /** 0 is forte; null where the file does not say. */
  readonly levelDb: LeadDb | null;
}

/** A bar of a part. */
export interface ScoreBar {
  readonly measure: XmlElement;
  readonly meter: Meter | null;
}

/** What was read of a part. */
export interface ReadPart {
  readonly strokes: readonly ScoreStroke[];
  readonly bars: readonly ScoreBar[];
}

/** What notes are of that are no voice. */
type Unvoiced = ReadInstrument | 'definite-pitch' | 'unknown-instrument';

function instrumentFact(of: Unvoiced): InstrumentFact {
  if (typeof of === 'string') return { fact: of };
  const { name, key } = of;
  return key === null ? { fact: 'instrument', name } : { fact: 'instrument-of-key', name, key };
}

/** Ways of striking that are held by a tie. */
function isHeld(articulation: Articulation): boolean {
  return articulation === 'buzz' || articulation === 'sweep';
}

/** Reads the strokes of a part; what it cannot read goes to the problems. */
export class PartReader {
  readonly #instruments: ReadonlyMap<string, ReadInstrument>;
  readonly #problems: ProblemList;
  readonly #path: string;
  readonly #strokes: ScoreStroke[] = [];
  readonly #bars: ScoreBar[] = [];
  /** How long what is tied on lasts so far, by its voice, in whole notes. */
  readonly #begun = new Map<Voice, Fraction>();
  readonly #leftOut = new Map<Unvoiced, NoteTally>();
  readonly #graces: GraceNotes;
  #divisions: Fraction | null = null;
  #toldOfDivisions = false;
  #clef = 'percussion';
  #meter: Meter | null = null;
  #cursor: Fraction = ZERO;
  /** Where the bar ends that is being read. */
  #furthest: Fraction = ZERO;
  #chordStart: Fraction = ZERO;

  constructor(part: string, instruments: ReadonlyMap<string, ReadInstrument>, problems: ProblemList) {
    this.#path = part;
    this.#instruments = instruments;
    this.#problems = problems;
    this.#graces = new GraceNotes(part, problems);
  }

  /** All bars of the part. */
  read(part: XmlElement): ReadPart {
    for (const measure of childrenOf(part, 'measure')) this.#measure(measure);
    for (const [what, { first, count }] of this.#leftOut) {
      this.#problems.add(first, {
        code: 'musicxml-left-out',
        path: this.#path,
        found: { fact: 'musicxml-notes-of', notes: count, of: instrumentFact(what) },
        expected: { fact: 'musicxml-drum-voice' },
        repair: { fact: 'musicxml-notes-left-out' },
      });
    }
    return { strokes: this.#strokes, bars: this.#bars };
  }

  #measure(measure: XmlElement): void {
    this.#cursor = ZERO;
    this.#furthest = ZERO;
    try {
      for (const element of measure.children) this.#element(element);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      this.#problems.add(measure, {
        code: 'musicxml-duration',
        severity: 'error',
        path: this.#path,
        found: { fact: 'musicxml-no-sum' },
        expected: { fact: 'musicxml-fitting-divisions' },
        repair: { fact: 'musicxml-measure-left-out' },
      });
    }
    this.#graces.endBar();
    if (measure.attributes['implicit'] === 'yes' && this.#bars.length === 0) this.#shiftPickup();
    this.#bars.push({ measure, meter: this.#meter });
  }

  /** A pickup is the end of a bar: what it has is moved up to the bar line after it. */
  #shiftPickup(): void {
    const missing = this.#meter ? subtract(this.#meter.bar, this.#furthest) : ZERO;
    if (missing.num <= 0) return;
    const pickup = this.#strokes.map((stroke) => ({ ...stroke, inBar: add(stroke.inBar, missing) }));
    this.#strokes.splice(0, pickup.length, ...pickup);
  }

  #element(element: XmlElement): void {
    if (element.name === 'attributes') this.#attributes(element);
    else if (element.name === 'note') this.#note(element, this.#bars.length);
    else if (element.name === 'backup') this.#move(element, -1);
    else if (element.name === 'forward') this.#move(element, 1);
    if (compare(this.#cursor, this.#furthest) > 0) this.#furthest = this.#cursor;
  }

  #attributes(element: XmlElement): void {
    const divisions = childOf(element, 'divisions');
    if (divisions) this.#divisions = parseDecimal(divisions.text);
    this.#clef = childOf(childOf(element, 'clef'), 'sign')?.text ?? this.#clef;
    const time = childOf(element, 'time');
    if (!time) return;
    this.#meter = meterOf(time);
    if (!this.#meter) {
      const beats = childrenOf(time, 'beats')
        .map((each) => each.text)
        .join(' + ');
      const found: MusicXmlFact =
        beats === '' ? { fact: 'musicxml-no-beats' } : { fact: 'musicxml-beats', beats };
      this.#problems.add(time, {
        code: 'musicxml-meter',
        severity: 'error',
        path: this.#path,
        found,
        expected: { fact: 'musicxml-one-meter' },
      });
    }
  }

  /** Whole notes that an element lasts. */
  #duration(element: XmlElement): Fraction {
    const text = childOf(element, 'duration')?.text;
    const duration = parseDecimal(text);
    const divisions = this.#divisions;
    if (duration && divisions && divisions.num > 0) {
      return fraction(duration.num * divisions.den, duration.den * divisions.num * 4);
    }
    if (!divisions && this.#toldOfDivisions) return ZERO;
    this.#toldOfDivisions ||= !divisions;
    const given: MusicXmlFact = text
      ? { fact: 'musicxml-duration', text }
      : { fact: 'musicxml-without-duration', element: element.name };
    this.#problems.add(element, {
      code: 'musicxml-duration',
      severity: 'error',
      path: this.#path,
      found: divisions ? given : { fact: 'musicxml-no-divisions' },
      expected: { fact: divisions ? 'musicxml-a-number-of-divisions' : 'musicxml-divisions-first' },
    });
    return ZERO;
  }

  #move(element: XmlElement, direction: 1 | -1): void {
    const length = this.#duration(element);
    const to = direction === 1 ? add(this.#cursor, length) : subtract(this.#cursor, length);
    this.#cursor = to.num < 0 ? ZERO : to;
    if (to.num < 0) {
      this.#problems.add(element, {
        code: 'musicxml-backup',
        path: this.#path,
        found: { fact: 'musicxml-backup-over' },
        expected: { fact: 'musicxml-backup-inside' },
        repair: { fact: 'musicxml-to-bar-line' },
      });
    }
  }

  #note(note: XmlElement, bar: number): void {
    if (childOf(note, 'cue')) return;
    if (childOf(note, 'grace')) {
      this.#grace(note);
      return;
    }
    if (!childOf(note, 'chord')) {
      this.#graces.beginEvent();
      this.#chordStart = this.#cursor;
      this.#cursor = add(this.#cursor, this.#duration(note));
    }
    if (!childOf(note, 'rest')) this.#stroke(note, bar, this.#chordStart);
  }

  #grace(note: XmlElement): void {
    const struck = this.#struck(note);
    if (struck) this.#graces.add(struck.voice, note);
  }

  #struck(note: XmlElement) {
    const id = childOf(note, 'instrument')?.attributes['id'] ?? '';
    const instrument = this.#instruments.get(id) ?? this.#only();
    const struck = childOf(note, 'unpitched') ? voiceOfNote(note, instrument, this.#clef) : null;
    if (struck) return struck;
    const what = childOf(note, 'pitch') ? 'definite-pitch' : (instrument ?? 'unknown-instrument');
    tally(this.#leftOut, what, note);
    return null;
  }

  /** The instrument of a part that has one only, whose notes need not name it. */
  #only(): ReadInstrument | undefined {
    return this.#instruments.size === 1 ? [...this.#instruments.values()][0] : undefined;
  }

  #stroke(note: XmlElement, bar: number, inBar: Fraction): void {
    const tied = childrenOf(note, 'tie').some((tie) => tie.attributes['type'] === 'stop');
    if (tied) this.#hold(note);
    const struck = tied ? null : this.#struck(note);
    if (!struck) return;
    if (this.#meter && compare(inBar, this.#meter.bar) >= 0) {
      this.#problems.add(note, {
        code: 'musicxml-overfull',
        path: this.#path,
        found: { fact: 'musicxml-after-bar', meter: this.#meter.text },
        expected: { fact: 'musicxml-strokes-inside' },
        repair: { fact: 'musicxml-it-left-out' },
      });
      return;
    }
    const { buzz, ...touch } = readTouch(note);
    const articulation = this.#graces.take(struck.voice) ?? (buzz ? 'buzz' : struck.articulation);
    const { line, column } = note;
    this.#strokes.push({ bar, inBar, voice: struck.voice, articulation, ...touch, line, column });
    const goesOn = childrenOf(note, 'tie').some((tie) => tie.attributes['type'] === 'start');
    if (goesOn && isHeld(articulation)) this.#begun.set(struck.voice, this.#duration(note));
    else this.#begun.delete(struck.voice);
  }

  /** A note that goes on from the one before it: a roll or a sweep lasts as much longer, all else rings as it does. */
  #hold(note: XmlElement): void {
    const voice = this.#struck(note)?.voice;
    const so = voice && this.#begun.get(voice);
    const at = this.#strokes.findLastIndex((stroke) => stroke.voice === voice);
    const from = this.#strokes[at];
    if (!so || !voice || !from) return;
    const held = add(so, this.#duration(note));
    this.#begun.set(voice, held);
    this.#strokes[at] = { ...from, held };
  }
}
