/**
 * Listening to a take: audio of a known exercise in, a report of what was really played out.
 *
 * Conventions: mono Float32 samples of any rate, in one piece or in blocks; seconds from the first sample.
 * Memory does not grow with the audio, only with the strokes in it.
 */
import {
  type FullReport,
  type Hertz,
  inSection,
  Samples,
  type Seconds,
  samplesToSeconds,
  type Unheard,
  type Voice,
} from '@shedbook/core';
import { Resampler } from '@shedbook/signal';
import { type Alignment, alignmentOf } from './align/align.ts';
import { askedGrid, isPlayed } from './align/asked-grid.ts';
import type { PlacedBar } from './align/bars.ts';
import { withoutBounces, withoutDrumsAmid } from './align/bounces.ts';
import { drawnIn } from './align/brushed.ts';
import type { FormGrid } from './align/form-grid.ts';
import { toleranceSeconds } from './align/match-bar.ts';
import { type Observations, observe } from './align/observations.ts';
import { alignInAnyFeel } from './align/other-feel.ts';
import { levelledUnderOthers } from './decide/covered.ts';
import { coveredByHeld, splitHeld, withoutDrawn } from './decide/drawn.ts';
import { freeEvidence, gatherEvidence, hearFreely } from './decide/evidence.ts';
import { judgeFit } from './decide/fit.ts';
import type { HeardStroke } from './decide/heard-stroke.ts';
import { withInstead } from './decide/instead.ts';
import { leftOver, untoldBeside } from './decide/left-over.ts';
import { byVoice, chancesIn, type Eagerness } from './decide/likelihood.ts';
import { momentsFor, writtenMoments } from './decide/moments.ts';
import { unheardOf } from './decide/not-heard.ts';
import { type Place, placesOf } from './decide/places.ts';
import { type Decision, decide, type HeardDecision } from './decide/strokes.ts';
import { eagernessOf } from './decide/threshold.ts';
import {
  barsFor,
  type FittedExercise,
  fitAsked,
  fitOthers,
  goneThrough,
  type OtherExercises,
  tellExercise,
  voicesOf,
  weighAgain,
} from './decide/which-exercise.ts';
import { EventLog } from './detect/event-log.ts';
import type { HeardEvent } from './detect/events.ts';
import { EventExtractor } from './detect/extract.ts';
import { type KnownKit, kitInUse } from './detect/known-kit.ts';
import type { Asked, Listened } from './listened.ts';
import { askedOfSound } from './listened-for.ts';
import { type WithoutLoudspeaker, withoutLoudspeaker } from './loudspeaker/beside.ts';
import { FirstSound } from './loudspeaker/unknown/first-sound.ts';
import { machineVoices } from './loudspeaker/unknown/machine.ts';
import { measure } from './measure/measure.ts';
import type { Pulse } from './measure/pulse.ts';
import { cutStretch, type Stretch } from './measure/stretch.ts';
import { measureLevels } from './measure/voice-levels.ts';
import { StrokeNetwork } from './network/network.ts';
import { WEIGHTS } from './network/weights.data.ts';
import { unpackWeights } from './network/weights.ts';
import { PadListener } from './pad/pad-listener.ts';
import { ANALYSIS_RATE } from './signal/bands.data.ts';
import { HighBand } from './signal/high-band.ts';
import { transcribeEvents } from './transcribe/from-sound.ts';
import type { Known, Transcribed } from './transcribe/transcribe.ts';

let shared: StrokeNetwork | null = null;

/** The network, unpacked once. */
export function strokeNetwork(): StrokeNetwork {
  shared ??= new StrokeNetwork(unpackWeights(WEIGHTS));
  return shared;
}

/** Samples that are taken at a time, so that what is remembered of the highs suffices. */
const PIECE = 32_768;

/** A take whose loudest sample is softer than this is silent, dB relative to full scale. */
const SILENT_DB = -70;

/** Listens to audio that arrives in blocks. */
export class TakeListener {
  readonly #rate: Hertz;
  readonly #resampler: Resampler;
  readonly #network: StrokeNetwork;
  readonly #kit: KnownKit | undefined;
  readonly #high: HighBand;
  readonly #extractor: EventExtractor;
  readonly #events = new EventLog();
  readonly #first = new FirstSound();
  #samples = 0;
  #hasEnded = false;
  #heard: Heard | null = null;

  /**
   * @param sampleRateHz samples a second of the blocks, a whole number from 4000 to 384000
   * @param options what a line check told of the kit; another network than the shipped one, for measuring
   */
  constructor(
    sampleRateHz: Hertz,
    { kit, network = strokeNetwork() }: { readonly kit?: KnownKit; readonly network?: StrokeNetwork } = {},
  ) {
    this.#network = network;
    this.#kit = kitInUse(kit);
    this.#rate = sampleRateHz;
    this.#resampler = new Resampler(sampleRateHz, ANALYSIS_RATE);
    this.#high = new HighBand(sampleRateHz);
    this.#extractor = new EventExtractor(network, { live: false, high: this.#high, kit: this.#kit });
  }

  /** Takes the next block of mono samples. */
  push(block: Float32Array): void {
    this.#samples += block.length;
    for (let at = 0; at < block.length; at += PIECE) {
      const piece = block.subarray(at, at + PIECE);
      this.#high.push(piece);
      this.#analyse(this.#resampler.push(piece));
    }
  }

  /** The report, once all blocks are in; the same take may be asked for again, as something else. */
  finish(asked: Asked, beside?: Beside): Listened {
    const nothing = this.#end();
    if (nothing) return refuse(nothing);
    const durationSeconds = samplesToSeconds(Samples(this.#samples), this.#rate);
    const sound = this.#first.samples();
    const known = { ...(beside ? { beside } : {}), ...(this.#kit ? { kit: this.#kit } : {}) };
    const take = { kind: 'audio', durationSeconds, sound, ...known } as const;
    return reportOn(this.#all(), asked, take, this.#network);
  }

  /** What was played, written down without a lesson, once all blocks are in. */
  transcribe(known: Known = {}): Transcribed {
    const nothing = this.#end();
    if (nothing) return { transcript: null, refusal: { fact: nothing } };
    return transcribeEvents(this.#all().events, this.#network, known);
  }

  /** All events, and what the sound says of them: the same as whatever the take is heard. */
  #all(): Heard {
    this.#heard ??= heardIn(this.#events.between(), this.#network);
    return this.#heard;
  }

  /** Takes what the filters still hold. @returns why there is nothing to hear, or null where there is something */
  #end(): 'no-sound' | 'silent-recording' | null {
    if (!this.#hasEnded) {
      this.#analyse(this.#resampler.flush());
      this.#keep(this.#extractor.flush());
      this.#hasEnded = true;
    }
    if (this.#samples === 0) return 'no-sound';
    return this.#extractor.peakDb < SILENT_DB ? 'silent-recording' : null;
  }

  #analyse(samples: Float32Array): void {
    this.#first.push(samples);
    this.#keep(this.#extractor.push(samples));
  }

  #keep(events: readonly HeardEvent[]): void {
    for (const event of events) this.#events.push(event);
  }
}

function refuse(fact: 'no-sound' | 'silent-recording' | 'no-drums-followed'): Listened {
  return { report: null, refusal: { fact } };
}

/** A loudspeaker that was taken out of a take. */
type Beside = Pick<WithoutLoudspeaker, 'loudspeaker' | 'isDoubtful'>;

/** What is known of a take besides its events. */
interface TakeFacts {
  readonly kind: 'audio' | 'midi';
  readonly durationSeconds: Seconds;
  readonly beside?: Beside;
  /** What a line check told of the kit, where it was heard so. */
  readonly kit?: KnownKit | undefined;
  /** The beginning of its sound, of ANALYSIS_RATE, where a machine of which nobody told may be in it. */
  readonly sound?: Float32Array;
}

/** Events, and what the sound says of them whatever is written, as by `hearFreely`. */
export interface Heard {
  readonly events: readonly HeardEvent[];
  readonly free: Float64Array;
}

/** What the sound says of some events. */
export function heardIn(events: readonly HeardEvent[], network: StrokeNetwork): Heard {
  return { events, free: hearFreely(events, network) };
}

/** What is seen of a take, kept as long as what was heard of it. */
const seenIn = new WeakMap<Heard, Observations>();

/** What alignment sees of some events. */
function observed(heard: Heard): Observations {
  const seen = seenIn.get(heard) ?? observe(heard.events, heard.free);
  seenIn.set(heard, seen);
  return seen;
}

/** The report on events of any source. */
export function reportOn(heard: Heard, whole: Asked, take: TakeFacts, network = strokeNetwork()): Listened {
  const { asked, unheard: strange } = askedOfSound(inSection(whole));
  const { exercise } = asked;
  const grid = askedGrid(asked);
  const told = toldApart(heard, grid, network);
  const { events, free } = told;
  const seen = observed(told);
  const found = alignInAnyFeel(seen, asked, grid);
  if (!found) return refuse('no-drums-followed');
  const voices = voicesOf(asked).filter(isPlayed(asked));
  const sounding = { seen, chances: byVoice(chancesIn(events, free, voices)) };
  // which exercise it is, and which bar is which, goes by where strokes lie as they were played
  const { playedAs, playedGrid } = found;
  const fitted = fitAsked(exercise, playedGrid, found.bars, sounding);
  const all = [fitted, ...fitOthers(playedAs, () => found.bars, sounding)];
  const eagerness = eagernessIn(events, free, all);
  const chances = byVoice(chancesIn(events, free, voices, eagerness));
  const [first, ...others] = weighAgain(all, chances);
  const again = goneThrough(first!, { seen, chances });
  const exercises = tellExercise(again, others);
  const alignment = alignmentOf(grid, barsFor(again, others, exercises, seen));
  return reportAligned({ events, seen, asked, grid, alignment, take, network, free, exercises, strange });
}

/** The events that are strokes, and what the sound says of them: of a long roll where one is written its beginning. */
export function toldApart(heard: Heard, { bars }: FormGrid, network: StrokeNetwork): Heard {
  if (bars.every(({ held }) => held.length === 0)) return heard;
  const { events, amid } = withoutBounces(heard.events, heard.free);
  return { events, free: withoutDrumsAmid(hearFreely(events, network), amid) };
}

/** How eagerly each voice is heard on this kit, by the exercise that tells it best. */
function eagernessIn(
  events: readonly HeardEvent[],
  free: Float64Array,
  exercises: readonly FittedExercise[],
): Eagerness {
  const most = new Map<Voice, number>();
  // what the sound alone says of a voice is the same for each of them
  const voices = [...new Set(exercises.flatMap(({ grid }) => grid.voices))];
  const evidence = new Map(freeEvidence(events, free, voices).map((one) => [one.voice, one]));
  for (const { grid, places } of exercises) {
    const written = writtenMoments(events, places);
    for (const voice of grid.voices) {
      const eager = eagernessOf(momentsFor(evidence.get(voice)!, written));
      most.set(voice, Math.max(most.get(voice) ?? 0, eager));
    }
  }
  return most;
}

/** Events whose place in the form is known. */
export interface Aligned {
  readonly events: readonly HeardEvent[];
  /** The network that heard them. */
  readonly network: StrokeNetwork;
  /** What the sound says whatever is written, as by `hearFreely`. */
  readonly free: Float64Array;
  readonly seen: Observations;
  readonly asked: Asked;
  readonly grid: FormGrid;
  readonly alignment: Alignment;
  readonly take: TakeFacts;
  /** Where it is known, the clock that offsets are measured against; else the take's own pulse. */
  readonly clock?: Pulse;
  /** What is known of the other exercises of the lesson. */
  readonly exercises?: OtherExercises;
  /** Voices that are asked of the student and not listened for; none when left out. */
  readonly strange?: readonly Unheard[];
  /** The bars that are reported on; all when left out. The others still teach how the kit sounds. */
  readonly stretch?: Stretch;
  /** What is written later than this cannot have been heard yet, and nothing is made of it; all counts when left out. */
  readonly untilSeconds?: number;
}

/** The report on events whose bars are known. */
export function reportAligned(known: Aligned): Listened {
  const { events, seen, asked, grid, take, stretch, strange = [] } = known;
  const { bars } = known.alignment;
  const { untilSeconds = Number.POSITIVE_INFINITY } = known;
  const { open: allPlaces, under } = splitHeld(
    placesOf(seen, grid, bars).filter((place) => place.idealSeconds < untilSeconds),
    events,
    grid,
    bars,
  );
  const evidence = gatherEvidence(events, allPlaces, grid.voices, known);
  const barSeconds = bars[bars.length >> 1]!.barSeconds;
  const decided = withInstead(decide(events, evidence, allPlaces, toleranceSeconds(grid, barSeconds)), {
    ...{ events, evidence, free: known.free, places: allPlaces },
  });
  const { heard, hidden } = hiddenBy(
    take.beside,
    coveredByHeld(withoutDrawn(decided, grid, bars), under, grid, bars),
  );
  const measuredStrokes = measureLevels(events, heard.strokes);
  const whole = { ...heard, strokes: levelledUnderOthers(measuredStrokes, allPlaces) };
  const { fromBar, toBar } = stretch ?? { fromBar: 0, toBar: bars.length };
  const all = stretch ? cutStretch(whole, bars, stretch) : whole;
  const cut = take.beside?.loudspeaker ? withoutUntold(all) : all;
  const alignment = { ...known.alignment, bars: bars.slice(fromBar, toBar) };
  const places = allPlaces.filter((place) => place.takeBar >= fromBar && place.takeBar < toBar);
  const { decision, left } = withoutVoices(cut, places, loudspeakersIn(take, cut, places, bars));
  const isExercise = asked.exercise !== null;
  const fit = judgeFit({ grid, alignment, decision, isExercise, rather: known.exercises?.rather });
  // Who sets the clock knows what is played; a loop that comes apart is a report and no refusal.
  if (fit.refusal && !known.clock) return { report: null, refusal: fit.refusal };
  const askedBpm = asked.bpm ?? asked.lesson.tempo.startBpm;
  const measured = measure({
    ...take,
    lesson: asked.lesson,
    askedBpm,
    grid,
    bars: alignment.bars,
    decision,
    confidence: fit.confidence,
    ...(known.clock ? { clock: known.clock } : {}),
  });
  const { bpm, confidence } = measured.alignment;
  const leftVoices = new Set(left.map(({ expected }) => expected.voice));
  const unheard = unheardOf({
    ...{ evidence, decision, places, learntFrom: allPlaces, askedBpm, bpm, confidence },
  }).filter((one) => !('voice' in one) || !leftVoices.has(one.voice));
  const exercise = isExercise ? { exercise: { ...known.exercises, agreement: fit.agreement } } : {};
  const drawn = isPlayed(asked)('snare') ? drawnIn(grid, alignment.bars) : [];
  const hiddenOrLeft = [...hidden, ...left];
  const others = besideOf(take.beside, hiddenOrLeft);
  return {
    report: {
      ...measured,
      ...exercise,
      ...others,
      ...(take.kit ? { lineCheck: take.kit.name } : {}),
      ...coveredOf(decision),
      ...playsOf(asked),
      unheard: [
        ...unheard,
        ...coveredVoices(decision, unheard),
        ...hiddenVoices(hiddenOrLeft),
        ...drawn,
        ...strange,
      ],
    },
    refusal: null,
  };
}

/** The places under louder strokes, where there are any. */
function coveredOf({ covered = [] }: Decision): Pick<FullReport, 'covered'> {
  if (covered.length === 0) return {};
  return { covered: covered.map(({ expected }) => ({ ...expected.stroke.written, voice: expected.voice })) };
}

/** The voices of which strokes lie under louder ones, but for those that are a guess altogether. */
function coveredVoices({ covered = [] }: Decision, unheard: readonly Unheard[]): readonly Unheard[] {
  const said = new Set(unheard.flatMap((one) => ('voice' in one ? [one.voice] : [])));
  const counts = new Map<Voice, number>();
  for (const { expected } of covered) counts.set(expected.voice, (counts.get(expected.voice) ?? 0) + 1);
  return [...counts].flatMap(([voice, count]) =>
    said.has(voice) ? [] : [{ reason: 'under-others', voice, count } as const],
  );
}

/** The voices that are the student's, where not all are. */
function playsOf({ plays = [] }: Asked): Pick<FullReport, 'plays'> {
  return plays.length > 0 ? { plays } : {};
}

/** What was decided without the strokes that may be the loudspeaker's, and the places of those. */
function hiddenBy(beside: Beside | undefined, decided: HeardDecision) {
  const isHidden = ({ timeSeconds }: HeardStroke) => beside?.isDoubtful(timeSeconds) ?? false;
  return {
    heard: { ...decided, strokes: decided.strokes.filter((stroke) => !isHidden(stroke)) },
    hidden: decided.strokes.filter(isHidden).flatMap(({ place }) => place ?? []),
  };
}

/** The voices of which only a loudspeaker was heard, whether it is known or not. */
function loudspeakersIn(
  { beside, sound }: TakeFacts,
  { strokes, shy }: HeardDecision,
  places: readonly Place[],
  bars: readonly PlacedBar[],
): ReadonlySet<Voice> {
  const left = beside ? leftOver(strokes, shy) : new Set<Voice>();
  if (beside?.loudspeaker || !sound) return left;
  return new Set([...left, ...machineVoices({ sound, bars, places, strokes })]);
}

/** What was decided beside a loudspeaker: strokes that may be anybody's were not heard, and nobody knows why. */
function withoutUntold(decision: HeardDecision): HeardDecision {
  const untold = untoldBeside(decision);
  const isOut = ({ voice }: HeardStroke) => untold.has(voice);
  const lost = decision.strokes.filter(isOut).flatMap(({ place }) => place ?? []);
  return {
    ...decision,
    strokes: decision.strokes.filter((stroke) => !isOut(stroke)),
    missed: [...decision.missed, ...lost],
  };
}

/** What was decided without some voices, and all places of those. */
function withoutVoices(decision: HeardDecision, places: readonly Place[], voices: ReadonlySet<Voice>) {
  const isOut = (place: Place) => voices.has(place.expected.voice);
  return {
    decision: {
      ...decision,
      strokes: decision.strokes.filter(({ voice }) => !voices.has(voice)),
      missed: decision.missed.filter((place) => !isOut(place)),
      covered: (decision.covered ?? []).filter((place) => !isOut(place)),
    },
    left: places.filter(isOut),
  };
}

function hiddenVoices(hidden: readonly Place[]): readonly Unheard[] {
  const voices = [...new Set(hidden.map(({ expected }) => expected.voice))];
  return voices.map((voice) => ({
    reason: 'from-loudspeaker',
    voice,
    count: hidden.filter(({ expected }) => expected.voice === voice).length,
  }));
}

function besideOf(beside: Beside | undefined, hidden: readonly Place[]): Partial<FullReport> {
  const unknown = hidden.map(({ expected }) => ({ ...expected.stroke.written, voice: expected.voice }));
  return {
    ...(beside?.loudspeaker ? { loudspeaker: beside.loudspeaker } : {}),
    ...(unknown.length > 0 ? { unknown } : {}),
  };
}

/** A loudspeaker this loud beside the whole take, in dB, is all that there is where nothing else can be followed. */
const ALL_DB = -3;

/** What a take may be heard with. */
export interface HeardWith {
  /** What a line check told of the kit, with whatever weights. */
  readonly kit?: KnownKit;
}

/** A whole recording, mono. */
export interface Recording {
  readonly samples: Float32Array;
  readonly sampleRateHz: Hertz;
}

function atRate({ samples, sampleRateHz }: Recording, wantedHz: Hertz): Float32Array {
  if (sampleRateHz === wantedHz) return samples;
  const resampler = new Resampler(sampleRateHz, wantedHz);
  const first = resampler.push(samples).slice();
  const last = resampler.flush();
  const all = new Float32Array(first.length + last.length);
  all.set(first);
  all.set(last, first.length);
  return all;
}

/**
 * Listens to a whole take that was recorded beside a loudspeaker.
 * @param known what the loudspeaker played, from the take's first sample on
 * @param options whether it was played on one surface; what a line check told of the kit
 */
export function listenBeside(
  { samples, sampleRateHz }: Recording,
  known: Recording,
  asked: Asked,
  { onPad = false, ...heard }: { readonly onPad?: boolean } & HeardWith = {},
): Listened {
  const without = withoutLoudspeaker(samples, atRate(known, sampleRateHz), sampleRateHz);
  const listener = onPad ? new PadListener(sampleRateHz) : new TakeListener(sampleRateHz, heard);
  listener.push(without.samples);
  const listened = listener.finish(asked, without);
  const isAlone = without.loudspeaker !== null && without.loudspeaker.levelDb > ALL_DB;
  return listened.refusal && isAlone ? { report: null, refusal: { fact: 'only-the-loudspeaker' } } : listened;
}

/** Listens to a whole take. @param heard what a line check told of the kit */
export function listen(
  samples: Float32Array,
  sampleRateHz: Hertz,
  asked: Asked,
  heard: HeardWith = {},
): Listened {
  const listener = new TakeListener(sampleRateHz, heard);
  listener.push(samples);
  return listener.finish(asked);
}
