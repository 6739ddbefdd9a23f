/**
 * A take of an electronic kit: notes in, report out. Times and voices are the instrument's own.
 *
 * Conventions: seconds from the start of the file; confidence of each stroke 1; what cannot be told has
 * nothing of microphones.
 */
import { inSection, type Seconds } from '@shedbook/core';
import { type Alignment, align } from '../align/align.ts';
import { askedGrid, isPlayed } from '../align/asked-grid.ts';
import type { FormGrid } from '../align/form-grid.ts';
import { toleranceSeconds } from '../align/match-bar.ts';
import type { Observations } from '../align/observations.ts';
import { alignInAnyFeel } from '../align/other-feel.ts';
import { withoutDrawn } from '../decide/drawn.ts';
import { byVoice } from '../decide/likelihood.ts';
import { otherTempo } from '../decide/not-heard.ts';
import { placesOf } from '../decide/places.ts';
import type { Decision } from '../decide/strokes.ts';
import {
  barsAs,
  type FittedExercise,
  fitAsked,
  fitFromTop,
  fitOthers,
  likelierThan,
  type OtherExercises,
  tellExercise,
} from '../decide/which-exercise.ts';
import type { Asked, Listened } from '../listened.ts';
import { measure } from '../measure/measure.ts';
import type { Pulse } from '../measure/pulse.ts';
import { cutStretch, type Stretch } from '../measure/stretch.ts';
import { asAsked } from '../network/heard-voices.data.ts';
import { fitNotes } from './fit-notes.ts';
import { matchNotes } from './match.ts';
import { observeNotes, type PlayedNote, type TimedVoice } from './notes.ts';
import { rimAsWritten, rimAtPlaces } from './rim.ts';
import { settleBars } from './settle-bars.ts';

/** How sure a note is a stroke: kits send some of their own. */
const SENT = 0.97;

function decideNotes(
  notes: readonly TimedVoice[],
  seen: Observations,
  grid: FormGrid,
  bars: Alignment['bars'],
): Decision {
  const reach = toleranceSeconds(grid, bars[bars.length >> 1]!.barSeconds);
  const places = placesOf(seen, grid, bars);
  const matched = matchNotes(rimAtPlaces(notes, places, new Set(grid.voices), reach), places, reach);
  return withoutDrawn(matched, grid, bars);
}

/** Where notes are from: a kit that sent them, or a recording of taps on one surface. */
export interface NotesTake {
  readonly kind: 'audio' | 'midi';
  readonly durationSeconds: Seconds;
}

/** Notes whose bars are known. */
export interface AlignedNotes {
  readonly notes: readonly TimedVoice[];
  readonly seen: Observations;
  readonly asked: Asked;
  readonly grid: FormGrid;
  readonly bars: Alignment['bars'];
  readonly take: NotesTake;
  /** Where it is known, the clock that offsets are measured against; else the take's own pulse. */
  readonly clock?: Pulse;
  /** What is known of the other exercises of the lesson. */
  readonly exercises?: OtherExercises;
  /** The bars that are reported on; all when left out. */
  readonly stretch?: Stretch;
}

function likeliest(one: FittedExercise, other: FittedExercise): FittedExercise {
  return other.likelihood > one.likelihood ? other : one;
}

/** The report on notes whose bars are known. */
export function reportOnNotes(known: AlignedNotes): Listened {
  const { notes, seen, asked, grid } = known;
  const { fromBar, toBar } = known.stretch ?? { fromBar: 0, toBar: known.bars.length };
  const whole = decideNotes(notes, seen, grid, known.bars);
  const decision = known.stretch ? cutStretch(whole, known.bars, known.stretch) : whole;
  const { confidence, agreement, refusal } = fitNotes(grid, decision, known.exercises?.rather);
  // Who sets the clock knows what is played; a loop that comes apart is a report and no refusal.
  if (refusal && !known.clock) return { report: null, refusal };
  const askedBpm = asked.bpm ?? asked.lesson.tempo.startBpm;
  const measured = measure({
    ...known.take,
    lesson: asked.lesson,
    askedBpm,
    grid,
    bars: known.bars.slice(fromBar, toBar),
    decision,
    confidence,
    ...(known.clock ? { clock: known.clock } : {}),
  });
  const unheard = otherTempo(measured.alignment.bpm, askedBpm);
  const exercise = asked.exercise === null ? {} : { exercise: { ...known.exercises, agreement } };
  const plays = asked.plays && asked.plays.length > 0 ? { plays: asked.plays } : {};
  return { report: { ...measured, unheard, ...exercise, ...plays }, refusal: null };
}

/** The notes from the first bar on and up to the end of the last one. */
function inBars(
  notes: readonly TimedVoice[],
  grid: FormGrid,
  bars: Alignment['bars'],
): readonly TimedVoice[] {
  const [first, last] = [bars[0]!, bars.at(-1)!];
  const reach = toleranceSeconds(grid, first.barSeconds);
  const [from, to] = [first.startSeconds - reach, last.startSeconds + last.barSeconds + reach];
  return notes.filter(({ timeSeconds }) => timeSeconds >= from && timeSeconds <= to);
}

/**
 * The report on strokes of one kit or surface, at least one, of which nobody knows when the bars are.
 * @param sent in order of time
 */
export function reportOnTake(sent: readonly TimedVoice[], take: NotesTake, asked: Asked): Listened {
  const grid = askedGrid(asked);
  const written = new Set(grid.voices);
  const notes = sent.map((note) => ({ ...note, voice: asAsked(note.voice, written) }));
  const seen = observeNotes(notes);
  const alignment = alignInAnyFeel(seen, asked, grid);
  if (!alignment) return { report: null, refusal: { fact: 'no-pulse-followed' } };
  const asWritten = rimAsWritten(notes, new Set(grid.voices));
  const chances = byVoice(asWritten.map(({ voice, timeSeconds }) => ({ voice, timeSeconds, struck: SENT })));
  const { playedAs, playedGrid } = alignment;
  const fitted = fitAsked(asked.exercise, playedGrid, alignment.bars, { seen, chances });
  // Without a groove under it each exercise has bars of its own.
  const isAlone = asked.lesson.groove.length === 0;
  const barsOf = (other: FormGrid) => (isAlone && align(seen, other)?.bars) || alignment.bars;
  const found = fitOthers(playedAs, barsOf, { seen, chances });
  const top = likelierThan(fitted, fitFromTop(found, alignment.bars, { seen, chances }));
  const others = top
    ? found.map((one) => (one.exercise === top.exercise ? likeliest(one, top) : one))
    : found;
  const exercises = tellExercise(fitted, others);
  const likely = others.find(({ exercise }) => exercise === exercises.rather) ?? top;
  const bars = settleBars(asWritten, grid, barsAs(fitted, likely, seen));
  // A kit sends strokes only; a microphone hears a count of sticks, and the stand, before and after them.
  const struck = take.kind === 'midi' ? notes : inBars(notes, grid, bars);
  return reportOnNotes({ notes: struck, seen, asked, grid, bars, take, exercises });
}

/** The notes that are the student's. Each key of the pad is the snare's: who plays that may strike its rim. */
export function ownNotes<T extends TimedVoice>(
  sent: readonly T[],
  asked: Pick<Asked, 'plays'>,
): readonly T[] {
  const isMine = isPlayed(asked);
  return sent.filter(({ voice }) => isMine(voice) || (voice === 'sidestick' && isMine('snare')));
}

/**
 * The report on a whole take of notes.
 * @param sent notes in order of time
 * @param durationSeconds of the file
 */
export function listenToNotes(sent: readonly PlayedNote[], durationSeconds: Seconds, whole: Asked): Listened {
  const asked = inSection(whole);
  const notes = ownNotes(sent, asked);
  if (notes.length === 0) {
    return { report: null, refusal: { fact: 'no-drum-notes' } };
  }
  return reportOnTake(notes, { kind: 'midi', durationSeconds }, asked);
}
