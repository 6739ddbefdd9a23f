/**
 * A take beside what was asked: for each round how late it is as a whole, and which stroke is which.
 */
import { groupBy, type Voice } from '@shedbook/core';
import type { LoopTask } from '../loop/task.ts';
import { type Due, dueIn, type PhaseOf, shifted } from './due.ts';
import { type Lateness, latenessOf } from './lateness.ts';
import { agreementOf, type LatenessAt, type Match, matchStrokes, surfaceOf } from './match.ts';
import type { Played, PlayedBar, PlayedStroke } from './played.ts';
import { strokeKey } from './stroke-key.ts';
import { type VoiceLateness, voiceLateness } from './voice-lateness.ts';

/** One time through the form, matched. */
export interface HeardRound {
  readonly bars: readonly PlayedBar[];
  readonly due: readonly Due[];
  readonly strokes: readonly PlayedStroke[];
  readonly lateness: Lateness;
  /** Of voices that are late or early by themselves, beside that of the whole. */
  readonly byVoice: VoiceLateness;
  readonly match: Match;
}

/** How what was asked is taken: some beats later, or with strokes elsewhere in their beats. */
export interface Reading {
  readonly beats?: number;
  readonly phaseOf?: PhaseOf;
}

/** A round with its bars, and the strokes that lie in them. */
export interface RoundStrokes {
  readonly bars: readonly PlayedBar[];
  readonly strokes: readonly PlayedStroke[];
}

/** Half of the shortest slot before a bar line, as far as a triplet's, a stroke belongs to the bar after it. */
const FARTHEST_EDGE_SLOTS = 3;
/** A round may be early or late as a whole by so much. */
const NEAR_BEATS = 0.45;

/** A take cut into its rounds. */
export function roundsOf(played: Played, task: LoopTask): readonly RoundStrokes[] {
  const rounds = [...groupBy(played.bars, ({ round }) => round).values()];
  return rounds.map((bars) => {
    const { from, to, beatSeconds } = edgesOf(bars, task);
    const near = NEAR_BEATS * beatSeconds;
    const strokes = played.strokes.filter(({ seconds }) => seconds >= from - near && seconds < to + near);
    return { bars, strokes };
  });
}

/** From where to where the strokes of a round lie that is exactly in time. */
function edgesOf(bars: readonly PlayedBar[], { beats, strokes }: LoopTask) {
  const first = bars[0] as PlayedBar;
  const last = bars.at(-1) as PlayedBar;
  const beatSeconds = first.barSeconds / beats.length;
  const slots = strokes.reduce((most, stroke) => Math.max(most, stroke.slots), FARTHEST_EDGE_SLOTS);
  const edge = beatSeconds / (2 * slots);
  return { from: first.startSeconds - edge, to: last.startSeconds + last.barSeconds - edge, beatSeconds };
}

/** The lateness of a round at what was due. */
export function latenessIn({ bars, lateness }: Pick<HeardRound, 'bars' | 'lateness'>): LatenessAt {
  const start = bars[0]?.startSeconds ?? 0;
  return (due) => lateness.seconds + lateness.slope * (due.seconds - start);
}

/** The lateness of a round at what was due, that of its voice by itself with it. */
export function latenessOfVoices(round: Pick<HeardRound, 'bars' | 'lateness' | 'byVoice'>): LatenessAt {
  const whole = latenessIn(round);
  return (due) => whole(due) + (round.byVoice.get(surfaceOf(due.voice)) ?? 0);
}

/** Whether a stroke lies in a bar in which the student only listens. */
function isInRest({ bars }: RoundStrokes, { plays }: LoopTask, { seconds }: PlayedStroke): boolean {
  const bar = bars.findLast(({ startSeconds }) => startSeconds <= seconds);
  return bar !== undefined && plays[bar.bar - 1] === 'rest';
}

/** A round beside what was asked of some voices. */
export function hearRound(
  round: RoundStrokes,
  task: LoopTask,
  isAlongClick: boolean,
  { beats = 0, phaseOf }: Reading = {},
): HeardRound {
  const { bars } = round;
  const written = dueIn(bars, task, phaseOf);
  const moved = beats === 0 ? written : shifted(written, beats, bars);
  // without a click nobody knows where the form began: what agrees some beats later is written there
  const due =
    beats === 0 || isAlongClick
      ? moved
      : moved.map((one) => ({ ...one, writtenSeconds: one.writtenSeconds + beats * one.beatSeconds }));
  const lateness = latenessOf(due, round.strokes, { isAlongClick, bars });
  const edges = edgesOf(bars, task);
  const plain = latenessIn({ bars, lateness });
  const byVoice = voiceLateness(due, round.strokes, plain);
  const own = (voice: Voice) => byVoice.get(surfaceOf(voice)) ?? 0;
  const late = (seconds: number, voice: Voice) =>
    lateness.seconds + lateness.slope * (seconds - edges.from) + own(voice);
  const inside = round.strokes.filter(
    ({ seconds, voice }) =>
      seconds >= edges.from + late(edges.from, voice) && seconds < edges.to + late(edges.to, voice),
  );
  const whole = matchStrokes(due, inside, latenessOfVoices({ bars, lateness, byVoice }));
  // what is heard while somebody else has the turn belongs to nobody
  const nobodys = new Set(whole.extra.filter((stroke) => isInRest(round, task, stroke)));
  const isUntold = ({ voice, asked }: Due) => task.covered?.has(strokeKey(voice, asked.written)) ?? false;
  const cut = new Set(
    whole.missed.filter((one) => isUntold(one) || isCut(one, late(one.seconds, one.voice), edges)),
  );
  return {
    bars,
    due: due.filter((one) => !cut.has(one)),
    strokes: inside.filter((stroke) => !nobodys.has(stroke)),
    lateness,
    byVoice,
    match: {
      pairs: whole.pairs,
      missed: whole.missed.filter((one) => !cut.has(one)),
      extra: whole.extra.filter((stroke) => !nobodys.has(stroke)),
    },
  };
}

/** A performance this late, in seconds, may lie partly outside its round as it was cut out. */
const OUTSIDE_SECONDS = 0.06;

/** Whether a stroke of a late performance would lie at the very edge of its round or outside: nobody knows of it. */
function isCut(
  { seconds, reachSeconds }: Due,
  late: number,
  { from, to }: { from: number; to: number },
): boolean {
  if (Math.abs(late) < OUTSIDE_SECONDS) return false;
  return late > 0 ? seconds + late > to - reachSeconds : seconds + late < from + reachSeconds;
}

/** All rounds as one match. */
export function wholeMatch(rounds: readonly HeardRound[]): Match {
  return {
    pairs: rounds.flatMap(({ match }) => match.pairs),
    missed: rounds.flatMap(({ match }) => match.missed),
    extra: rounds.flatMap(({ match }) => match.extra),
  };
}

/** A match of some voices only. */
export function matchOf({ pairs, missed, extra }: Match, isOf: (voice: Voice) => boolean): Match {
  return {
    pairs: pairs.filter(({ due }) => isOf(due.voice)),
    missed: missed.filter(({ voice }) => isOf(voice)),
    extra: extra.filter(({ voice }) => isOf(voice)),
  };
}

/** Agreement of all rounds, 0 to 1. */
export function agreementIn(rounds: readonly HeardRound[]): number {
  return agreementOf(wholeMatch(rounds));
}
