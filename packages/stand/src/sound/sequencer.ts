/**
 * Reading a program out in time, block by block: which strokes fall in the next samples. Tempo, balance, mutes
 * and click may change at any moment; no stroke is dropped or struck twice by a change of tempo or feel.
 *
 * What was given out is settled: a change takes hold from the sample up to which strokes have been given out.
 *
 * Conventions: samples from the start of the sequencer; places in whole notes; tempo in quarter notes a minute.
 */
import { type Bpm, LeadDb, Seconds, type SoundingVoice } from '@shedbook/core';
import type { Program, ProgramStroke } from '@shedbook/playing';
import { type ClickGap, clicksIn } from '@shedbook/sound';

/** A stroke with the sample that it falls on. */
export interface TimedStroke {
  readonly sample: number;
  /** How many times the form was gone through before it. */
  readonly pass: number;
  /** With how long it lasts at its tempo, where it is held. */
  readonly stroke: ProgramStroke & { readonly heldSeconds?: Seconds };
}

/** Where the sequencer is: at `sample` it stands at `place` and goes on at `bpm`. */
export interface Anchor {
  readonly sample: number;
  /** Whole notes from the first bar of the form. */
  readonly place: number;
  readonly bpm: Bpm;
  /** How many times the form was gone through before. */
  readonly pass: number;
  /** Where it was gone on with, in whole notes, after a count-in that lies before it; 0 where left out. */
  readonly fromPlace?: number;
}

/** Where something is gone on with: a bar line, in whole notes, and the times the form was gone through before. */
export interface GoOnAt {
  /** In whole notes from the first bar of the form. */
  readonly place: number;
  readonly pass: number;
}

/** What changes while it plays. */
export interface LiveSettings {
  readonly bpm: Bpm;
  readonly click: boolean;
  /** Bars in which the click drops out, counted on from one time through the form to the next. */
  readonly gap?: ClickGap;
  readonly mute: readonly SoundingVoice[];
  /** Added to the level of a voice, in dB. */
  readonly trimDb: Readonly<Partial<Record<SoundingVoice, number>>>;
}

/** When another program takes over: where it is, at the next bar line, or when the form has come to its end. */
export type TakeOver = 'now' | 'next bar' | 'next time';

/** Strokes that are being read. */
interface Stream {
  strokes: readonly ProgramStroke[];
  next: number;
  pass: number;
}

/** Quarter notes a minute to samples a whole note. */
function samplesPerWhole(bpm: number, rate: number): number {
  return (240 * rate) / bpm;
}

/** Places closer than this are the same, in whole notes. */
const SAME = 1e-9;

function isFrom(stroke: ProgramStroke, place: number): boolean {
  return stroke.place >= place - SAME;
}

/** The count-in right before a bar line, and the strokes from there on. */
function strokesFrom(program: Program, place: number): readonly ProgramStroke[] {
  const isCountIn = (stroke: ProgramStroke) => stroke.role === 'count-in';
  const countIn = program.strokes
    .filter(isCountIn)
    .map((stroke) => ({ ...stroke, place: stroke.place + place }));
  return [...countIn, ...program.strokes.filter((stroke) => !isCountIn(stroke) && isFrom(stroke, place))];
}

/** A player of programs. */
export class Sequencer {
  readonly #rate: number;
  #program: Program;
  #queued: Program | null = null;
  /** The bar line at which the program is left for the queued one; null: at its end. */
  #cut: number | null = null;
  #settings: LiveSettings;
  #queuedSettings: LiveSettings | null = null;
  #anchor: Anchor;
  #main: Stream;
  #clicks: Stream;
  /** Everything before this sample has been given out. */
  #given: number;
  /** Whether all strokes of the program are read, and not only those from where it was gone on with. */
  #isWhole: boolean;

  /** @param from where it goes on, after its count-in; the first bar where left out */
  constructor(
    program: Program,
    settings: LiveSettings,
    rate: number,
    sample: number,
    from: GoOnAt = { place: 0, pass: 0 },
  ) {
    this.#rate = rate;
    this.#program = program;
    this.#settings = settings;
    const { place, pass } = from;
    const { bpm } = settings;
    this.#anchor = { sample, place: place + program.start, bpm, pass, fromPlace: place };
    this.#isWhole = place === 0;
    this.#main = { strokes: this.#isWhole ? program.strokes : strokesFrom(program, place), next: 0, pass };
    this.#clicks = { strokes: program.clicks.filter((each) => isFrom(each, place)), next: 0, pass };
    this.#given = sample;
  }

  get anchor(): Anchor {
    return this.#anchor;
  }

  get program(): Program {
    return this.#program;
  }

  /** Changes tempo, click, mutes or balance: from the next time round, or from where it is. */
  change(settings: LiveSettings, when: 'now' | 'next time' = 'now'): void {
    if (when === 'next time') {
      this.#queuedSettings = settings;
      return;
    }
    this.#queuedSettings = null;
    if (settings.bpm !== this.#settings.bpm) {
      const sample = this.#given;
      this.#anchor = { ...this.#anchor, sample, place: this.#placeAt(sample), bpm: settings.bpm };
    }
    this.#settings = settings;
  }

  /** Goes on with another program: from its start at the next bar line or the next time round, or where it is. */
  replace(program: Program, when: TakeOver): void {
    if (when !== 'now') {
      this.#queued = program;
      this.#cut = when === 'next bar' ? this.#nextBarLine() : null;
      return;
    }
    if (this.#cut !== null) {
      this.#cut = null;
      this.#queued = null;
    }
    if (this.#queued?.exercise === program.exercise) this.#queued = null;
    const sameShape = program.shape === this.#program.shape;
    this.#program = program;
    this.#stayInside();
    if (sameShape && this.#isWhole) this.#main.strokes = program.strokes;
    else this.#main = this.#streamFromHere(program.strokes);
    this.#clicks = this.#streamFromHere(program.clicks);
  }

  /** The first bar line that has not been passed. */
  #nextBarLine(): number {
    const place = this.#placeAt(this.#given);
    return this.#program.bars.find((bar) => bar.place >= place)?.place ?? this.#program.end;
  }

  /** A form that is shorter than where it stands is gone on with at the same bar, counted round. */
  #stayInside(): void {
    const place = this.#placeAt(this.#given);
    const { end } = this.#program;
    if (place >= end) this.#anchor = { ...this.#anchor, sample: this.#given, place: place % end };
  }

  /** Where the program is left: its end, or before it where another one waits for a bar line. */
  #leavesAt(): number {
    return this.#cut ?? this.#program.end;
  }

  /** Where it stands at a sample, in whole notes of the form: grows on past the end until it goes round. */
  #placeAt(sample: number): number {
    return (
      this.#anchor.place + (sample - this.#anchor.sample) / samplesPerWhole(this.#anchor.bpm, this.#rate)
    );
  }

  #sampleOf(place: number): number {
    return this.#anchor.sample + (place - this.#anchor.place) * samplesPerWhole(this.#anchor.bpm, this.#rate);
  }

  /** The strokes that have not been given out yet. */
  #streamFromHere(strokes: readonly ProgramStroke[]): Stream {
    const next = strokes.findIndex((stroke) => Math.round(this.#sampleOf(stroke.place)) >= this.#given);
    return { strokes, next: next < 0 ? strokes.length : next, pass: this.#main.pass };
  }

  #goRound(): void {
    const sample = this.#sampleOf(this.#leavesAt());
    this.#cut = null;
    const pass = this.#anchor.pass + 1;
    if (this.#queued) {
      this.#program = this.#queued;
      this.#queued = null;
    }
    if (this.#queuedSettings) {
      this.#settings = this.#queuedSettings;
      this.#queuedSettings = null;
    }
    this.#isWhole = true;
    this.#anchor = { sample, place: 0, bpm: this.#settings.bpm, pass };
    const first = (strokes: readonly ProgramStroke[]) =>
      Math.max(
        0,
        strokes.findIndex((each) => each.place >= 0),
      );
    this.#main = { strokes: this.#program.strokes, next: first(this.#program.strokes), pass };
    this.#clicks = { strokes: this.#program.clicks, next: 0, pass };
  }

  #sounds(stroke: ProgramStroke, pass: number): boolean {
    const { click, gap, mute } = this.#settings;
    if (stroke.role === 'count-in' || stroke.role === 'click') return true;
    if (stroke.voice !== 'click') return !mute.includes(stroke.voice);
    return click && clicksIn(pass * this.#program.bars.length + stroke.written.bar, gap);
  }

  #take(stream: Stream, until: number, out: TimedStroke[]): void {
    for (let stroke = stream.strokes[stream.next]; stroke; stroke = stream.strokes[stream.next]) {
      const sample = Math.round(this.#sampleOf(stroke.place));
      if (sample >= until) return;
      stream.next += 1;
      if (!this.#sounds(stroke, stream.pass)) continue;
      const levelDb = LeadDb(stroke.levelDb + (this.#settings.trimDb[stroke.voice] ?? 0));
      // At the tempo that it begins in.
      const perWhole = samplesPerWhole(this.#anchor.bpm, this.#rate) / this.#rate;
      const held = stroke.held === undefined ? {} : { heldSeconds: Seconds(stroke.held * perWhole) };
      out.push({ sample, pass: stream.pass, stroke: { ...stroke, ...held, levelDb } });
    }
  }

  /** The strokes that fall before `sample` and have not been given out, in order. */
  until(sample: number): readonly TimedStroke[] {
    const out: TimedStroke[] = [];
    for (;;) {
      const leaves = this.#sampleOf(this.#leavesAt());
      const limit = this.#cut === null ? sample : Math.min(sample, Math.round(leaves));
      this.#take(this.#main, limit, out);
      this.#take(this.#clicks, limit, out);
      const done = this.#cut !== null || this.#main.next >= this.#main.strokes.length;
      if (!done || leaves >= sample) break;
      this.#goRound();
    }
    this.#given = Math.max(this.#given, sample);
    return out.sort((a, b) => a.sample - b.sample);
  }
}
