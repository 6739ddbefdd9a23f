/**
 * Listening again with what was found in mind: a score is made of the first hearing, and the take is heard as one of that
 * score. Limbs that are softest keep time all the same: the hi-hat foot on the back beats and the bass drum on every beat
 * are asked for where they were not heard, and believed only where their limb surely plays.
 *
 * Conventions: seconds; bars of the take from the first that was written down.
 */
import {
  cell,
  type ExercisePart,
  type Lesson,
  type Meter,
  type Pattern,
  parseLesson,
  perform,
  Seconds,
  type Voice,
} from '@shedbook/core';
import type { PlacedBar } from '../align/bars.ts';
import { formGrid } from '../align/form-grid.ts';
import { toleranceSeconds } from '../align/match-bar.ts';
import { observe } from '../align/observations.ts';
import { gatherEvidence } from '../decide/evidence.ts';
import { placesOf } from '../decide/places.ts';
import { decide } from '../decide/strokes.ts';
import type { HeardEvent } from '../detect/events.ts';
import { measureLevels } from '../measure/voice-levels.ts';
import type { StrokeNetwork } from '../network/network.ts';
import { keyOf, mostly } from './bars.ts';
import type { StruckVoice } from './struck.ts';
import type { Transcript } from './transcribe.ts';

/** A voice with the same in this share of its bars is meant to have it in all. */
const MEANT = 0.35;

/** What a soft limb is asked for, beat by beat. */
const GUESSES: Readonly<Partial<Record<Voice, (beat: number) => boolean>>> = {
  'hihat-foot': (beat) => beat % 2 === 1,
  bass: () => true,
};

/** What a voice has most often in all bars, where it has it often enough; else what was heard. */
function steadied({ bars }: Pattern): Pattern {
  const keys = bars.map(keyOf);
  const counts = new Map<string, number>();
  for (const key of keys) if (key.trim() !== '') counts.set(key, (counts.get(key) ?? 0) + 1);
  const [key = '', count = 0] = [...counts].toSorted((a, b) => b[1] - a[1])[0] ?? [];
  if (count < MEANT * bars.length) return { bars };
  const usual = mostly(bars.filter((_, i) => keys[i] === key));
  return { bars: bars.map(() => usual) };
}

function guessed(voice: Voice, of: Meter, count: number): ExercisePart {
  const isAsked = GUESSES[voice]!;
  const bar = of.beats.map((_, beat) => cell(isAsked(beat) ? 'x' : '.'));
  return { voice, pattern: { bars: Array.from({ length: count }, () => bar) } };
}

function scoreOf({ parts, comping, bars, meter }: Transcript): readonly ExercisePart[] {
  const heard = parts.map(({ voice, pattern }) => ({
    voice,
    pattern: voice === comping ? pattern : steadied(pattern),
  }));
  const there = new Set(parts.map(({ voice }) => voice));
  const missing = (Object.keys(GUESSES) as Voice[]).filter((voice) => !there.has(voice));
  return [...heard, ...missing.map((voice) => guessed(voice, meter, bars.length))];
}

/** A lesson with one exercise, all of what was heard. */
function lessonOf(heard: Transcript, parts: readonly ExercisePart[]): Lesson {
  const { lesson } = parseLesson(`title: Heard\nmeter: ${heard.meter.text}\n`, 'heard.lesson.yaml');
  if (!lesson) throw new RangeError('Internal error: a lesson without exercises has a fault');
  const exercise = { number: 1, name: null, parts, sticking: null, notes: null };
  return { ...lesson, feel: heard.feel, groove: [], exercises: [exercise] };
}

/** A hearing of a recording. */
export interface Sounding {
  readonly events: readonly HeardEvent[];
  readonly free: Float64Array;
  readonly network: StrokeNetwork;
}

/** The strokes of a take, heard as one of what was written down. */
export function hearAsWritten(
  { events, free, network }: Sounding,
  heard: Transcript,
): readonly StruckVoice[] {
  const parts = scoreOf(heard);
  const sections = [{ play: 'pattern' as const, bars: heard.bars.length, ending: null }];
  const form = { name: 'heard', sections, repeat: 1, countInBars: 0 };
  const performance = perform(lessonOf(heard, parts), { exercise: 1, form, bpm: heard.bpm });
  const grid = formGrid(performance, heard.meter);
  const bars = heard.bars.map(({ startSeconds, durationSeconds }, formBar): PlacedBar => {
    return { startSeconds, barSeconds: durationSeconds, formBar, score: 0 };
  });
  const places = placesOf(observe(events, free), grid, bars);
  const evidence = gatherEvidence(events, places, grid.voices, { network, free });
  const decided = decide(events, evidence, places, toleranceSeconds(grid, grid.barSeconds));
  const known = new Set(heard.parts.map(({ voice }) => voice));
  const isBelieved = (voice: Voice) => known.has(voice) || decided.playing.get(voice) === 'yes';
  const strokes = decided.strokes.filter(({ voice }) => isBelieved(voice));
  return measureLevels(events, strokes).map(({ timeSeconds, voice, levelDb }) => {
    return { timeSeconds: Seconds(timeSeconds), voice, levelDb };
  });
}
