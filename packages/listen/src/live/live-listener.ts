/**
 * The ear of the practice room: audio blocks or notes in, strokes out at once, a report for every loop.
 *
 * Conventions: as in `live-stroke.ts`. Nothing here knows of clocks or devices; it runs in a worker, in an audio
 * worklet and in Node alike. Two extractors hear the same audio: one hands over strokes with 38 ms of hindsight,
 * one waits for more and is what reports are made from.
 */

import {
  type Bpm,
  type FullReport,
  type Hertz,
  inSection,
  padVoice,
  Seconds,
  secondsToMilliseconds,
  type TakeDb,
  type Unheard,
  type Voice,
} from '@shedbook/core';
import { Resampler } from '@shedbook/signal';
import { isPlayed } from '../align/asked-grid.ts';
import type { PlacedBar } from '../align/bars.ts';
import type { FormGrid } from '../align/form-grid.ts';
import { observe } from '../align/observations.ts';
import { isByHand } from '../decide/drawn.ts';
import { EventLog } from '../detect/event-log.ts';
import type { HeardEvent } from '../detect/events.ts';
import { EventExtractor } from '../detect/extract.ts';
import { type KnownKit, kitInUse } from '../detect/known-kit.ts';
import { heardIn, reportAligned, strokeNetwork, toldApart } from '../listen.ts';
import type { Asked, Listened } from '../listened.ts';
import { askedOfSound } from '../listened-for.ts';
import type { BesideStream } from '../loudspeaker/beside-stream.ts';
import type { Stretch } from '../measure/stretch.ts';
import { ownNotes, reportOnNotes } from '../midi/listen-to-notes.ts';
import { observeNotes, type PlayedNote } from '../midi/notes.ts';
import { onRim } from '../midi/rim.ts';
import { asAsked } from '../network/heard-voices.data.ts';
import { type Tap, TapFinder } from '../pad/tap-finder.ts';
import { ANALYSIS_RATE } from '../signal/bands.data.ts';
import { HighBand } from '../signal/high-band.ts';
import { type ClockBar, type ClockPlace, LiveClock } from './clock.ts';
import type { LiveBar, LiveListener, LiveOptions, LivePlace, LiveStroke } from './live-stroke.ts';
import { LiveMemory } from './memory.ts';
import { struckVoices } from './struck.ts';
import { clockPulse, placeClockBars, takeGrid } from './take-grid.ts';

/** Two strokes of one voice are at least this far apart. */
const APART_SECONDS = 0.045;
/** A loop's report learns the sound of the kit from this many bars at most, itself included. */
const LEARNING_BARS = 32;
/** Sound this long before and after the bars of a report belongs to them. */
const EDGE_SECONDS = 0.15;
/** So long after its bar line a bar's strokes were all said. */
const SETTLED_SECONDS = 0.09;
/** What is written so soon after them claims what it sounds like; what comes later was not listened to yet. */
const NEXT_SECONDS = 0.08;

/** Why there is no report where no stroke is the student's. */
function nothingPlayed(beside: BesideStream | null): Listened {
  const fact = beside?.heard ? 'only-the-loudspeaker' : 'nothing-played';
  return { report: null, refusal: { fact } };
}

/** A loudspeaker this loud beside the whole, in dB, is nearly all that there is; then one stroke of so many written may be its own. */
const ALL_DB = -3;
const ONE_OF = 8;
/** From this confidence on a stroke is likelier than not: where nobody plays any more, what still rings is under it. */
const LIKELY = 0.5;

function likelyIn({ strokes }: FullReport): number {
  return strokes.filter(({ confidence }) => confidence >= LIKELY).length;
}

/** Whether so few of the written strokes were heard for sure that they may be anything. */
function isHardlyAnything(report: FullReport): boolean {
  const { strokes, missed, unknown = [] } = report;
  const likely = likelyIn(report);
  return (ONE_OF - 1) * likely <= missed.length + unknown.length + strokes.length - likely;
}

/** Whether no stroke of a report is a student's. */
function isNobody(report: Listened['report']): boolean {
  if (!report) return false;
  const isLoud = report.loudspeaker !== undefined && report.loudspeaker.levelDb > ALL_DB;
  return isHardlyAnything(report) && (isLoud || likelyIn(report) === 0);
}

/** Hears what reports are made from. */
class PatientEar {
  readonly #high: HighBand;
  readonly #extractor: EventExtractor;
  readonly #events = new EventLog();

  constructor(sampleRateHz: Hertz, kit: KnownKit | undefined) {
    this.#high = new HighBand(sampleRateHz);
    this.#extractor = new EventExtractor(strokeNetwork(), { live: false, high: this.#high, kit });
  }

  /** @param samples the same block at the rate of the analysis, as far as it is known */
  push(block: Float32Array, samples: Float32Array): void {
    this.#high.push(block);
    for (const event of this.#extractor.push(samples)) this.#events.push(event);
  }

  between(fromSeconds: number, toSeconds: number): readonly HeardEvent[] {
    for (const event of this.#extractor.drain()) this.#events.push(event);
    return this.#events.between(fromSeconds, toSeconds);
  }
}

/** The audio side of a listener. */
class LiveEar {
  readonly #resampler: Resampler;
  readonly #quick: EventExtractor | null;
  readonly #patient: PatientEar | null;

  constructor(sampleRateHz: Hertz, only: LiveOptions['only'], kit: KnownKit | undefined) {
    this.#resampler = new Resampler(sampleRateHz, ANALYSIS_RATE);
    this.#quick = only === 'reports' ? null : new EventExtractor(strokeNetwork(), { live: true, kit });
    this.#patient = only === 'strokes' ? null : new PatientEar(sampleRateHz, kit);
  }

  push(block: Float32Array): readonly HeardEvent[] {
    const samples = this.#resampler.push(block);
    this.#patient?.push(block, samples);
    return this.#quick?.push(samples) ?? [];
  }

  /** What was heard between two moments, for reports. */
  between(fromSeconds: number, toSeconds: number): readonly HeardEvent[] {
    if (!this.#patient) throw new RangeError('Internal error: this listener was made for strokes alone');
    return this.#patient.between(fromSeconds, toSeconds);
  }
}

/** What a report is made from: bars of the clock, and which of them it is about. */
interface ReportBars {
  readonly bars: readonly ClockBar[];
  readonly stretch: Stretch;
  /** Whether bars are counted through the loops. */
  readonly through: boolean;
  /** Loops between others in which nobody played: nothing is asked there. */
  readonly silent: ReadonlySet<number>;
}

class Listener implements LiveListener {
  readonly #asked: Asked;
  /** Voices that are asked of the student and not listened for. */
  readonly #strange: readonly Unheard[];
  readonly #ear: LiveEar | null;
  readonly #kit: KnownKit | undefined;
  readonly #taps: TapFinder | null;
  /** What every stroke is, on one surface; null on a drum set. */
  readonly #padVoice: Voice | null;
  readonly #clock: LiveClock;
  readonly #notes: PlayedNote[] = [];
  readonly #lastOf = new Map<Voice, number>();
  readonly #taken = new WeakSet<ClockPlace>();
  readonly #voices: ReadonlySet<Voice>;
  readonly #isMine: (voice: Voice) => boolean;
  readonly #memory: LiveMemory;
  /** Bars that were over when it was learnt last what strokes need. */
  #learnt = 0;
  readonly #rate: number;
  /** Samples so far. */
  #samples = 0;
  readonly #beside: BesideStream | null;
  /** Whether somebody played in a loop, of those that were reported on. */
  readonly #isPlayed = new Map<number, boolean>();
  #latencySeconds: number;

  constructor(asked: Asked, options: LiveOptions) {
    const { sampleRateHz, onPad = false, only } = options;
    const whole = { ...inSection(asked), form: { ...asked.form, repeat: 1, countInBars: 0 } };
    const isSound = sampleRateHz !== undefined && !onPad;
    const heard = isSound ? askedOfSound(whole) : { asked: whole, unheard: [] };
    this.#asked = heard.asked;
    this.#strange = heard.unheard;
    this.#clock = new LiveClock(this.#asked);
    this.#padVoice = onPad ? padVoice(this.#asked.lesson, this.#asked.exercise) : null;
    this.#kit = isSound ? kitInUse(options.kit) : undefined;
    this.#ear = sampleRateHz === undefined || onPad ? null : new LiveEar(sampleRateHz, only, this.#kit);
    this.#taps = sampleRateHz === undefined || !onPad ? null : new TapFinder(sampleRateHz);
    this.#latencySeconds = options.latencySeconds ?? 0;
    this.#rate = sampleRateHz ?? Number.NaN;
    this.#beside = options.beside ?? null;
    const { voices } = this.#clock.gridAt(this.#asked.bpm ?? this.#asked.lesson.tempo.startBpm);
    this.#voices = new Set(voices);
    this.#isMine = isPlayed(this.#asked);
    this.#memory = new LiveMemory(strokeNetwork(), voices);
  }

  startLoop(startSeconds: Seconds, bpm: Bpm): number {
    return this.#clock.startLoop(startSeconds, bpm);
  }

  bar(startSeconds: Seconds, bpm: Bpm): void {
    this.#clock.bar(startSeconds, bpm);
  }

  stop(atSeconds: Seconds): void {
    this.#clock.stop(atSeconds);
  }

  setLatency(latencySeconds: Seconds): void {
    this.#latencySeconds = latencySeconds;
  }

  get loops(): number {
    return this.#clock.loops;
  }

  get bars(): readonly LiveBar[] {
    return this.#clock.bars.map(({ loop, formBar, startSeconds, barSeconds }) => ({
      loop,
      bar: formBar + 1,
      endSeconds: Seconds(startSeconds + barSeconds),
    }));
  }

  push(block: Float32Array): readonly LiveStroke[] {
    if (this.#taps) return this.#taps.push(block).flatMap((tap) => this.#strokeOfTap(tap));
    if (!this.#ear) throw new RangeError('Internal error: this listener was made without a sample rate');
    const events = this.#ear.push(block);
    this.#samples += block.length;
    // No stroke waits for what is learnt: that is done while none is heard.
    if (events.length === 0) this.#learn(this.#samples / this.#rate - this.#latencySeconds);
    return events.flatMap((event) => this.#strokesOf(event));
  }

  /** On a pad taps come as notes do: there is nothing to tell apart. */
  #strokeOfTap({ seconds, levelDb }: Tap): readonly LiveStroke[] {
    return this.#padVoice === null ? [] : [this.note(Seconds(seconds), this.#padVoice, levelDb)];
  }

  note(timeSeconds: Seconds, sent: Voice, levelDb: TakeDb): LiveStroke {
    const voice = this.#padVoice ?? asAsked(sent, this.#voices);
    this.#notes.push({ timeSeconds, voice, levelDb });
    const [first, other] = onRim(voice, this.#voices);
    const isThere = (one: Voice) => this.#clock.nearest(one, timeSeconds - this.#latencySeconds) !== null;
    const read = other && !isThere(first!) ? other : first!;
    return this.#place({ timeSeconds, voice: read, levelDb, confidence: 1, isSure: true });
  }

  #strokesOf(event: HeardEvent): readonly LiveStroke[] {
    const placeOf = (voice: Voice, seconds: number) =>
      this.#clock.nearest(voice, seconds - this.#latencySeconds);
    const { told, free } = this.#memory.hear(event, (voice) => {
      const place = placeOf(voice, event.timeSeconds);
      return place ? event.timeSeconds - this.#latencySeconds - place.seconds : Number.POSITIVE_INFINITY;
    });
    const isWritten = (voice: Voice, seconds: number) => placeOf(voice, seconds) !== null;
    const needed = (voice: Voice) => this.#memory.needed(voice);
    const struck = struckVoices({ event, told, free, isWritten, asked: this.#voices, needed }).filter(
      ({ voice, timeSeconds }) =>
        this.#isMine(voice) &&
        !this.#beside?.isDoubtful(timeSeconds) &&
        timeSeconds - (this.#lastOf.get(voice) ?? Number.NEGATIVE_INFINITY) >= APART_SECONDS,
    );
    for (const { voice, timeSeconds } of struck) this.#lastOf.set(voice, timeSeconds);
    return struck.map((one) => this.#place(one)).filter((one) => !this.#isBounce(one));
  }

  /** Whether a stroke that is written nowhere may be part of what a hand holds. */
  #isBounce({ voice, written, timeSeconds }: LiveStroke): boolean {
    return isByHand(voice) && written === null && this.#clock.isHeld(timeSeconds - this.#latencySeconds);
  }

  /** Once a bar is over it tells what the strokes of the next ones need. */
  #learn(seconds: number): void {
    const over = this.#clock.over(seconds - SETTLED_SECONDS);
    const isMore = over > this.#learnt;
    this.#learnt = over;
    if (!isMore) return;
    const from = this.#memory.fromSeconds - this.#latencySeconds - EDGE_SECONDS;
    const places = this.#clock.placesBetween(from, seconds, this.#latencySeconds);
    if (places.length > 0) this.#memory.learn(places);
  }

  /** Finds the place of a stroke; a place is taken by the first stroke that comes. */
  #place(stroke: Omit<LiveStroke, 'written' | 'offsetMs'>): LiveStroke {
    const seconds = stroke.timeSeconds - this.#latencySeconds;
    const place = this.#clock.nearest(stroke.voice, seconds);
    if (!place || this.#taken.has(place)) return { ...stroke, written: null, offsetMs: null };
    this.#taken.add(place);
    const { beat, slot } = place.expected.stroke.written;
    const written: LivePlace = { loop: place.bar.loop, bar: place.bar.formBar + 1, beat, slot };
    return { ...stroke, written, offsetMs: secondsToMilliseconds(Seconds(seconds - place.seconds)) };
  }

  loopReport(loop: number): Listened {
    const { bars } = this.#clock;
    const first = bars.findIndex((bar) => bar.loop === loop);
    if (first < 0) throw new RangeError(`Internal error: there is no loop ${loop}`);
    const end = bars.findLastIndex((bar) => bar.loop === loop) + 1;
    const listened = this.#reportInside(first, end);
    this.#isPlayed.set(loop, listened.report !== null && !isHardlyAnything(listened.report));
    return listened;
  }

  reportUpTo(loop: number, bar: number): Listened {
    const index = this.#clock.bars.findIndex((one) => one.loop === loop && one.formBar === bar - 1);
    if (index < 0) throw new RangeError(`Internal error: there is no bar ${bar} in loop ${loop}`);
    return this.#reportInside(index - bar + 1, index + 1);
  }

  /** A report on some bars of one loop, by index and without the end, with those before them in mind. */
  #reportInside(first: number, end: number): Listened {
    const from = Math.max(0, Math.min(first, end - LEARNING_BARS));
    const stretch = { fromBar: first - from, toBar: end - from };
    // The bar after it claims its own first strokes where they come early.
    const bars = this.#clock.bars.slice(from, end + 1);
    return this.#report({ bars, stretch, through: false, silent: new Set() });
  }

  finish(): Listened {
    const { bars } = this.#clock;
    if (bars.length === 0) return { report: null, refusal: { fact: 'nothing-asked' } };
    for (const { loop } of bars) if (!this.#isPlayed.has(loop)) this.loopReport(loop);
    const isPlayed = ({ loop }: ClockBar) => this.#isPlayed.get(loop) ?? true;
    if (!bars.some(isPlayed)) return this.#reportWhole(bars);
    const own = bars.slice(bars.findIndex(isPlayed), bars.findLastIndex(isPlayed) + 1);
    return this.#reportWhole(own, new Set(own.filter((bar) => !isPlayed(bar)).map(({ loop }) => loop)));
  }

  /** A report on all of some bars, counted through the loops. */
  #reportWhole(bars: readonly ClockBar[], silent: ReadonlySet<number> = new Set()): Listened {
    return this.#report({ bars, stretch: { fromBar: 0, toBar: bars.length }, through: true, silent });
  }

  #report({ bars, stretch, through, silent }: ReportBars): Listened {
    const from = bars[0]!.startSeconds + this.#latencySeconds - EDGE_SECONDS;
    const last = bars[stretch.toBar - 1]!;
    const end = last.startSeconds + last.barSeconds + this.#latencySeconds;
    const to = end + EDGE_SECONDS;
    const isIn = ({ timeSeconds }: { readonly timeSeconds: number }) =>
      timeSeconds >= from && timeSeconds < to;
    const notes = ownNotes(this.#notes, this.#asked).filter(isIn);
    const network = strokeNetwork();
    const grid = takeGrid(this.#clock, bars, through);
    const { events, free } = toldApart(heardIn(this.#ear?.between(from, to) ?? [], network), grid, network);
    const seen = this.#ear ? observe(events, free) : observeNotes(notes);
    const placed = placeClockBars(seen, grid, bars, this.#latencySeconds).map((bar, index) =>
      silent.has(bars[index]!.loop) ? { ...bar, formBar: null, score: 0 } : bar,
    );
    const own = placed.slice(stretch.fromBar, stretch.toBar);
    const durationSeconds = Seconds(
      own.reduce((sum, bar) => sum + (bar.formBar === null ? 0 : bar.barSeconds), 0),
    );
    const asked = { ...this.#asked, bpm: bars[stretch.toBar - 1]!.bpm };
    const known = { seen, asked, grid, stretch, clock: clockPulse(own, grid.quarters) };
    const listened = this.#ear
      ? reportAligned({
          ...known,
          events,
          network,
          free,
          strange: this.#strange,
          untilSeconds: end + NEXT_SECONDS,
          alignment: { bars: placed, matchPerStroke: matchPerStroke(grid, own) },
          take: { kind: 'audio', durationSeconds, kit: this.#kit, ...this.#besideOf() },
        })
      : reportOnNotes({
          ...known,
          notes,
          bars: placed,
          take: { kind: this.#taps ? 'audio' : 'midi', durationSeconds },
        });
    return isNobody(listened.report) ? nothingPlayed(this.#beside) : listened;
  }

  #besideOf() {
    const { heard: loudspeaker = null, isDoubtful } = this.#beside ?? {};
    return loudspeaker && isDoubtful ? { beside: { loudspeaker, isDoubtful } } : {};
  }
}

/** Mean match of a written stroke of some bars. */
function matchPerStroke(grid: FormGrid, bars: readonly PlacedBar[]): number {
  const strokes = bars.reduce(
    (sum, { formBar }) => sum + (formBar === null ? 0 : grid.bars[formBar]!.strokes.length),
    0,
  );
  return bars.reduce((sum, bar) => sum + bar.score, 0) / Math.max(1, strokes);
}

/**
 * A listener for a student who plays along with a clock.
 * @throws RangeError when the lesson does not have the exercise.
 */
export function createLiveListener(asked: Asked, options: LiveOptions = {}): LiveListener {
  return new Listener(asked, options);
}
