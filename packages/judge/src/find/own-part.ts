/**
 * Whether the exercise's own part is another one's, or the right one some beats late.
 *
 * Conventions: what is less likely costs more, in natural logarithms of probability: a stroke left out or added by
 * mistake, another exercise of the sheet, the right one a beat or a bar late. Another reading must explain what was
 * played well, and not only better than what was asked.
 */
import type { Voice } from '@shedbook/core';
import type { LoopTask } from '../loop/task.ts';
import { dueIn, shifted } from '../take/due.ts';
import { type HeardRound, hearRound, latenessOfVoices, matchOf, type RoundStrokes } from '../take/hearing.ts';
import { agreementOf, type Match, matchStrokes, surfaceOf } from '../take/match.ts';
import type { PlayedStroke } from '../take/played.ts';
import type { Finding } from '../verdict/finding.ts';

/** One stroke in seventeen is left out by mistake, one in twenty-five is added; an ear makes mistakes of its own. */
const COST = {
  midi: { missed: Math.log(17), extra: Math.log(25) },
  audio: { missed: Math.log(8), extra: Math.log(8) },
} as const;
/** Reading the wrong line of a sheet, beside each other line that it might have been. */
const OTHER = Math.log(10);
/** Coming in wrongly, beside each other beat that it might have been. */
const SHIFT = Math.log(40);
/** What is named instead must agree so well with what was played. */
const AGREES = { midi: 0.9, audio: 0.8 } as const;
/** With fewer strokes of its own, an exercise was not played, unless all that it has is there and nothing else. */
const FEWEST = 2;
const ALL = 1;
/** Readings nearer than this explain what was played equally well. */
const EQUALLY = Math.log(10);

/** The rest of the groove, and what is to be explained. */
export interface OwnPart {
  readonly task: LoopTask;
  readonly others: () => readonly { readonly exercise: number; readonly task: LoopTask }[];
  readonly kind: 'audio' | 'midi';
  readonly isAlongClick: boolean;
  /** Whether a voice is the student's. */
  readonly isMine: (voice: Voice) => boolean;
}

/** The voices that an exercise's own part is written for. */
export function ownVoices(task: LoopTask): ReadonlySet<Voice> {
  return new Set(task.strokes.filter(({ role }) => role === 'pattern').map(({ voice }) => voice));
}

interface Explained {
  readonly finding: Finding;
  readonly cost: number;
}

function costOf({ missed, extra }: Match, kind: 'audio' | 'midi'): number {
  const cost = COST[kind];
  return (
    missed.length * cost.missed + extra.reduce((sum, { confidence }) => sum + confidence * cost.extra, 0)
  );
}

/** The strokes of some voices in a round. */
function of(round: HeardRound, voices: ReadonlySet<Voice>): readonly PlayedStroke[] {
  const surfaces = new Set([...voices].map(surfaceOf));
  return round.strokes.filter(({ voice }) => surfaces.has(surfaceOf(voice)));
}

/** How the strokes of some voices match a task, all its strokes so many beats later. */
function matchAs(
  rounds: readonly HeardRound[],
  task: LoopTask,
  voices: ReadonlySet<Voice>,
  beats = 0,
): Match {
  const matches = rounds.map((round) => {
    const due = dueIn(round.bars, task).filter(({ voice }) => voices.has(voice));
    const late = beats === 0 ? due : shifted(due, beats, round.bars);
    return matchStrokes(late, of(round, voices), latenessOfVoices(round));
  });
  return {
    pairs: matches.flatMap(({ pairs }) => pairs),
    missed: matches.flatMap(({ missed }) => missed),
    extra: matches.flatMap(({ extra }) => extra),
  };
}

function union(a: ReadonlySet<Voice>, b: ReadonlySet<Voice>): ReadonlySet<Voice> {
  return new Set([...a, ...b]);
}

/** Whether the bars of a part are unlike each other, so that a bar more or less can be told. */
function hasUnlikeBars({ strokes, bars }: LoopTask, voices: ReadonlySet<Voice>): boolean {
  const shapes = Array.from({ length: bars }, (_, index) =>
    strokes
      .filter(({ voice, written }) => voices.has(voice) && written.bar === index + 1)
      .map(({ voice, written }) => `${voice} ${written.beat}.${written.slot}`)
      .join(),
  );
  return new Set(shapes).size > 1;
}

/** Beats that a part may come late by: within a bar, and a whole bar where that can be told. */
function shifts(task: LoopTask, voices: ReadonlySet<Voice>): readonly number[] {
  const { length: beatsInBar } = task.beats;
  const within = Array.from({ length: beatsInBar - 1 }, (_, index) => index + 1);
  const whole = hasUnlikeBars(task, voices) ? [beatsInBar] : [];
  return [...within, ...whole].flatMap((beats) => [beats, -beats]);
}

function readings(rounds: readonly HeardRound[], part: OwnPart): readonly Explained[] {
  const mine = (voices: ReadonlySet<Voice>) => new Set([...voices].filter(part.isMine));
  const own = mine(ownVoices(part.task));
  const explain = (match: Match, prior: number, finding: Finding, asked: number): readonly Explained[] => {
    const agreement = agreementOf(match);
    const cost = costOf(match, part.kind) + prior;
    const isEnough = match.pairs.length >= FEWEST || (part.kind === 'midi' && agreement === ALL);
    const explains = isEnough && agreement >= AGREES[part.kind] && cost < asked;
    return explains ? [{ finding, cost }] : [];
  };
  const askedCost = costOf(matchAs(rounds, part.task, own), part.kind);
  if (askedCost <= Math.min(OTHER, SHIFT)) return [];
  const late = shifts(part.task, own).flatMap((beats) =>
    explain(
      matchAs(rounds, part.task, own, beats),
      SHIFT,
      { what: 'shifted', beats, strength: 2 },
      askedCost,
    ),
  );
  const other = part.others().flatMap(({ exercise, task }) => {
    const voices = union(own, mine(ownVoices(task)));
    const asked =
      voices.size === own.size ? askedCost : costOf(matchAs(rounds, part.task, voices), part.kind);
    return explain(
      matchAs(rounds, task, voices),
      OTHER,
      { what: 'other-exercise', exercise, strength: 1 },
      asked,
    );
  });
  return [...late, ...other].toSorted((a, b) => a.cost - b.cost);
}

/**
 * What the own part is instead of what was asked; nothing where it is that. A part a beat late may be another exercise
 * of the sheet: where both explain it, both are told.
 */
export function partFindings(rounds: readonly HeardRound[], part: OwnPart): readonly Finding[] {
  const found = readings(rounds, part);
  const best = found[0];
  if (!best) return [];
  const kinds = new Set<string>();
  return found.flatMap(({ finding, cost }) => {
    if (cost > best.cost + EQUALLY || kinds.has(finding.what)) return [];
    kinds.add(finding.what);
    return [finding];
  });
}

/** From this agreement on, nobody asks whether everything came late. */
const SURELY = 0.8;
/** By so much better must it agree some beats later. */
const BETTER = 0.2;

/**
 * The same rounds as they agree best, all limbs some beats earlier or later.
 * @returns null where they agree best as they are.
 */
export function shiftedWhole(
  strokes: readonly RoundStrokes[],
  rounds: readonly HeardRound[],
  task: LoopTask,
  isAlongClick: boolean,
): { readonly beats: number; readonly rounds: readonly HeardRound[] } | null {
  const agreementIn = (all: readonly HeardRound[]) =>
    agreementOf({
      pairs: all.flatMap(({ match }) => match.pairs),
      missed: all.flatMap(({ match }) => match.missed),
      extra: all.flatMap(({ match }) => match.extra),
    });
  const asked = agreementIn(rounds);
  if (asked >= SURELY) return null;
  const tried = shifts(task, new Set(task.strokes.map(({ voice }) => voice))).map((beats) => {
    const moved = strokes.map((round) => hearRound(round, task, isAlongClick, { beats }));
    return { beats, rounds: moved, agreement: agreementIn(moved) };
  });
  const best = tried.toSorted((a, b) => b.agreement - a.agreement)[0];
  return best && best.agreement >= Math.max(SURELY, asked + BETTER) ? best : null;
}

/** Strokes of a part that is told as another one are not told as missing or too many. */
export function withoutVoices(match: Match, voices: ReadonlySet<Voice>): Match {
  const surfaces = new Set([...voices].map(surfaceOf));
  return matchOf(match, (voice) => !surfaces.has(surfaceOf(voice)));
}
