/**
 * How what was asked may be read so that it explains what was played: some beats late, in another feel, another exercise.
 * Nothing is told as missing that such a reading explains.
 */
import type { Voice } from '@shedbook/core';
import type { LoopTask } from '../loop/task.ts';
import { type HeardRound, hearRound, type RoundStrokes, wholeMatch } from '../take/hearing.ts';
import type { Match } from '../take/match.ts';
import type { Finding } from '../verdict/finding.ts';
import { exchangedVoices } from './exchanged.ts';
import { feelFindings, feelHeard } from './feel.ts';
import { type Known, without } from './known.ts';
import { playedBars } from './other-bars.ts';
import { ownVoices, partFindings, shiftedWhole, withoutVoices } from './own-part.ts';

/** Heard, and what is left to be told of it. */
export interface Reading {
  readonly rounds: readonly HeardRound[];
  readonly findings: readonly Finding[];
  /** Voices that play each other's part, so that their levels are each other's. */
  readonly exchanged: readonly Voice[];
  /** Whether the bars are those of the report: else they came in another order than the click has them. */
  readonly isInOrder: boolean;
}

const NONE: readonly Voice[] = [];

/** Where everything comes some beats late: a fault beside a click; else only where the take was cut. */
function readShifted(
  strokes: readonly RoundStrokes[],
  rounds: readonly HeardRound[],
  task: LoopTask,
  known: Known,
): Reading {
  const moved = shiftedWhole(strokes, rounds, task, known.isAlongClick);
  if (!moved) return { rounds, findings: [], exchanged: NONE, isInOrder: true };
  const finding: Finding = { what: 'shifted', beats: moved.beats, strength: 2 };
  const findings = known.isAlongClick ? [finding] : [];
  return { rounds: moved.rounds, findings, exchanged: NONE, isInOrder: true };
}

/** Rounds in the feel in which they were played: whoever swings is even where a straight page has them uneven. */
export function inTheirFeel(
  strokes: readonly RoundStrokes[],
  rounds: readonly HeardRound[],
  { task, isAlongClick }: Known,
): readonly HeardRound[] {
  const heard = feelHeard(rounds, task);
  return heard ? strokes.map((round) => hearRound(round, task, isAlongClick, heard)) : rounds;
}

function readFeel(strokes: readonly RoundStrokes[], before: Reading, task: LoopTask, known: Known): Reading {
  const heard = feelHeard(before.rounds, task);
  if (!heard) return before;
  const { phaseOf } = heard;
  return {
    ...before,
    rounds: strokes.map((round) => hearRound(round, task, known.isAlongClick, { phaseOf })),
    findings: [...before.findings, ...feelFindings(heard)],
  };
}

function hearAll(rounds: readonly RoundStrokes[], task: LoopTask): readonly HeardRound[] {
  return rounds.map((round) => hearRound(round, task, true));
}

/** The rounds as they are best read. */
export function readRounds(
  strokes: readonly RoundStrokes[],
  asWritten: readonly HeardRound[],
  task: LoopTask,
  known: Known,
): Reading {
  const exchange = exchangedVoices(strokes, asWritten, task, known.isAlongClick);
  if (exchange) return { ...exchange, exchanged: exchange.voices, isInOrder: true };
  const bars = known.isAlongClick ? playedBars(strokes, asWritten, task, known.kind) : null;
  if (bars) {
    const before = { rounds: hearAll(bars, task), findings: [], exchanged: NONE, isInOrder: false };
    return readFeel(bars, before, task, known);
  }
  return readFeel(strokes, readShifted(strokes, asWritten, task, known), task, known);
}

/** What is left once it is said what was played instead of the exercise. */
export interface PartReading {
  readonly findings: readonly Finding[];
  readonly match: Match;
  /** Voices that are told already. */
  readonly out: ReadonlySet<Voice>;
}

/** Reads the exercise's own part. */
export function readPart(reading: Reading, task: LoopTask, known: Known): PartReading {
  const own = ownVoices(task);
  const { kind, isAlongClick, isMine } = known;
  const others = () => known.others().map((other) => ({ ...other, task: without(other.task, known.untold) }));
  const { rather } = known;
  const read =
    own.size === 0 ? [] : partFindings(reading.rounds, { task, others, kind, isAlongClick, isMine });
  const isTold = read.length > 0 || rather === null || own.size === 0;
  const found: readonly Finding[] = isTold
    ? read
    : [{ what: 'other-exercise', exercise: rather, strength: 1 }];
  const match = wholeMatch(reading.rounds);
  if (found.length === 0) return { findings: found, match, out: new Set<Voice>() };
  // what the named exercise plays is told with it
  const named = others().filter(({ exercise }) => found.some((one) => one.exercise === exercise));
  const out = new Set([...own, ...named.flatMap((other) => [...ownVoices(other.task)])]);
  return { findings: found, match: withoutVoices(match, out), out };
}
