/**
 * From what a verdict is about to one thing to do, and to the figures behind it.
 *
 * Conventions: what a student is told to do names a sound or a movement; amounts are figures.
 */
import { countedTempo, type PlaceFact, type Voice, type WrittenPlace } from '@shedbook/core';
import { dividedIn } from '../loop/pairs.ts';
import type { LoopTask } from '../loop/task.ts';
import { placeOf, whoPlays, writtenBar } from '../loop/who-and-where.ts';
import type { AdviceFact, FigureFact, PartFact, WhereFact } from './fact.ts';
import type { About } from './verdict.ts';

/** More places than these help nobody. */
const MOST_PLACES = 4;

/** The places that are told: each once, whatever the bar, where it is the same in every bar. */
function toldPlaces(places: readonly WrittenPlace[], inEveryBar = false): readonly WrittenPlace[] {
  const seen = new Set<string>();
  const told = places.filter(({ bar, beat, slot }) => {
    const name = inEveryBar ? `${beat}.${slot}` : `${bar}.${beat}.${slot}`;
    return !seen.has(name) && seen.add(name);
  });
  return told.slice(0, MOST_PLACES);
}

/** Whether it is about whole bars or rounds, which are told instead of places. */
function isStretch({ bars, rounds }: About): boolean {
  return bars !== undefined || rounds !== undefined;
}

/** The bars and rounds that something is about as a whole; none where it is about none. */
function partsOf({ bars, rounds }: About): readonly PartFact[] {
  if (!bars) return (rounds ?? []).map((round) => ({ fact: 'part-round', round }));
  if (!rounds) return bars.map((bar) => ({ fact: 'part-bar', bar }));
  return rounds.flatMap((round) => bars.map((bar) => ({ fact: 'part-bar-of-round', bar, round }) as const));
}

/** Where something happens; null where it happens throughout. */
function whereOf(about: About, places: readonly PlaceFact[]): WhereFact | null {
  const parts = partsOf(about);
  if (parts.length > 0) return { fact: 'in-parts', parts };
  return places.length > 0 ? { fact: 'on-places', places } : null;
}

/** Whether a place is the last triplet of its beat. */
function isLastTriplet(task: LoopTask, { bar, beat, slot }: WrittenPlace): boolean {
  return task.strokes.some(
    ({ written, slots }) =>
      slots === 3 && slot === 3 && written.bar === bar && written.beat === beat && written.slot === 3,
  );
}

function atPlace(
  task: LoopTask,
  { voice, inEveryBar }: About & { readonly voice: Voice },
  what: 'early' | 'late',
  place: WrittenPlace,
): AdviceFact {
  const at = { voice, place: placeOf(task, place, inEveryBar) };
  if (what === 'late') return { fact: 'do-sooner-at', ...at };
  return { fact: isLastTriplet(task, place) ? 'do-wait-for-last-triplet' : 'do-wait-at', ...at };
}

function throughout(task: LoopTask, voice: Voice, what: 'early' | 'late'): AdviceFact {
  const { lead } = task;
  if (voice === lead) return { fact: what === 'early' ? 'do-lay-back' : 'do-push', voice };
  return { fact: what === 'early' ? 'do-wait-for' : 'do-sooner-than', voice, lead };
}

type Advise = (about: About & { readonly voice: Voice }, task: LoopTask) => AdviceFact | null;

function strokeAdvice(
  throughoutFact: 'do-bring-in' | 'do-leave-out',
  someFact: 'do-fill-in' | 'do-leave-out',
  atFact: 'do-fill-in-at' | 'do-leave-out-near',
): Advise {
  return ({ voice, inEveryBar, places = [] }, task) => {
    const [first] = places;
    if (!first) return { fact: throughoutFact, voice };
    if (toldPlaces(places, inEveryBar).length > 1) return { fact: someFact, voice };
    return { fact: atFact, voice, place: placeOf(task, first, inEveryBar) };
  };
}

function timeAdvice(what: 'early' | 'late'): Advise {
  return (about, task) => {
    const [first] = isStretch(about) ? [] : (about.places ?? []);
    return first ? atPlace(task, about, what, first) : throughout(task, about.voice, what);
  };
}

/** What stayed out is brought in; what was struck elsewhere is put where it is written. */
const missingAdvice: Advise = (about, task) => {
  const first = task.strokes.find((stroke) => stroke.voice === about.voice);
  if (about.places || !about.elsewhere || !first)
    return strokeAdvice('do-bring-in', 'do-fill-in', 'do-fill-in-at')(about, task);
  const comesRound = task.strokes.filter(({ voice, written: { beat, slot } }) => {
    return voice === about.voice && beat === first.written.beat && slot === first.written.slot;
  });
  const place = placeOf(task, first.written, comesRound.length === task.bars);
  return { fact: 'do-put-where-written', voice: about.voice, place };
};

/** The same of sixteenths where these are what a task divides. */
function divided<Name extends string>(fact: Name, task: LoopTask): Name | `${Name}-sixteenths` {
  return dividedIn(task) === 'sixteenths' ? `${fact}-sixteenths` : fact;
}

/** By what it is about, where that is one voice. */
const OF_VOICE: Readonly<Partial<Record<About['what'], Advise>>> = {
  missing: missingAdvice,
  extra: strokeAdvice('do-leave-out', 'do-leave-out', 'do-leave-out-near'),
  'wrong-voice': ({ voice, instead }) => (instead ? { fact: 'do-move-to', voice, instead } : null),
  'straight-feel': ({ voice }, task) => ({ fact: divided('do-swing-voice', task), voice }),
  'swung-feel': ({ voice }, task) => ({ fact: divided('do-straighten-voice', task), voice }),
  early: timeAdvice('early'),
  late: timeAdvice('late'),
  uneven: ({ voice }) => ({ fact: 'do-even-out', voice }),
  loud: ({ voice, places }, { lead }) =>
    places ? { fact: 'do-ghost-softer', voice } : { fact: 'do-softer-under', voice, lead },
  soft: ({ voice }) => ({ fact: 'do-speak-up', voice }),
  'only-loudspeaker': ({ voice }) => ({ fact: 'do-tell-from-loudspeaker', voice }),
  'too-little-heard': ({ voice }) => ({ fact: 'do-let-be-heard', voice }),
};

/** The bars of some places as they are written, each once. */
function barsOf(places: readonly WrittenPlace[], task: LoopTask): readonly string[] {
  return [...new Set(places.map(({ bar }) => `${writtenBar(task, bar)}`))];
}

/** What to do about bars that were left out. */
function barAdvice(places: readonly WrittenPlace[] | undefined, task: LoopTask): AdviceFact | null {
  const bars = barsOf(places ?? [], task);
  const [first] = bars;
  if (first === undefined) return null;
  return bars.length === 1 ? { fact: 'do-play-bar', bar: first } : { fact: 'do-play-bars', bars };
}

function plainAdvice({ what, exercise, beats = 0, bpm, places }: About, task: LoopTask): AdviceFact | null {
  switch (what) {
    case 'missing':
      return barAdvice(places, task);
    case 'other-exercise':
      if (places) return { fact: 'do-play-in-order', bars: barsOf(places, task) };
      return exercise === undefined
        ? { fact: 'do-play-what-is-asked' }
        : { fact: 'do-play-the-asked', exercise };
    case 'straight-feel':
      return { fact: divided('do-swing', task) };
    case 'swung-feel':
      return { fact: divided('do-straighten', task) };
    case 'shifted':
      return { fact: beats > 0 ? 'do-come-in-sooner' : 'do-come-in-later', beats: Math.abs(beats) };
    case 'rushing':
      return { fact: 'do-breathe' };
    case 'dragging':
      return { fact: 'do-keep-moving' };
    case 'slow':
    case 'fast':
      return {
        fact: what === 'slow' ? 'do-play-faster' : 'do-play-slower',
        bpm: countedTempo(task.meter, bpm ?? task.bpm),
      };
    case 'nobody-played':
      return { fact: 'do-join-in' };
    case 'only-loudspeaker':
      return { fact: 'do-quieten-loudspeaker' };
    case 'too-little-heard':
      return { fact: 'do-come-nearer' };
    default:
      return null;
  }
}

/** What to do about something; null where there is nothing to do, as for an offset of the whole. */
export function adviceOn(about: About, task: LoopTask): AdviceFact | null {
  const { voice } = about;
  if (voice === undefined) return plainAdvice(about, task);
  return OF_VOICE[about.what]?.({ ...about, voice }, task) ?? null;
}

function barsFigure({ times = 0, of = 0, exercise }: About): FigureFact {
  return exercise === undefined
    ? { fact: 'figure-bars-missing', times, of }
    : { fact: 'figure-bars-missing-or', times, of, exercise };
}

/** The figures behind it; null where there are none. */
export function figureOf(about: About, task: LoopTask): FigureFact | null {
  const { what, voice, places = [], ms = 0, percent = 0, db = 0, times = 0, of = 0 } = about;
  if (what === 'offset') return { fact: ms < 0 ? 'figure-ahead' : 'figure-behind', ms: Math.abs(ms) };
  if (what === 'rushing' || what === 'dragging' || what === 'slow' || what === 'fast')
    return { fact: `figure-${what}`, percent };
  if (voice === undefined) return what === 'missing' ? barsFigure(about) : null;
  const who = whoPlays(task, voice, places[0] ?? null);
  const at = toldPlaces(places, about.inEveryBar).map((place) => placeOf(task, place, about.inEveryBar));
  const where = whereOf(about, at);
  if (what === 'missing')
    return where
      ? { fact: 'figure-missing-at', ...who, times, of, where }
      : { fact: 'figure-missing', ...who, times, of };
  if (what === 'extra')
    return at.length === 0
      ? { fact: 'figure-extra', ...who, times, of }
      : { fact: 'figure-extra-near', ...who, times, of, places: at };
  if (what === 'early' || what === 'late')
    return where ? { fact: `figure-${what}-at`, ...who, ms, where } : { fact: `figure-${what}`, ...who, ms };
  if (what === 'uneven') return { fact: 'figure-uneven', ...who, ms };
  if (what === 'loud' || what === 'soft') return { fact: `figure-${what}`, ...who, db, lead: task.lead };
  return null;
}
