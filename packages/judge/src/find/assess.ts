/**
 * Everything that is to be said of some rounds, in the order in which a teacher would look: whether anybody played, and
 * what; then what is missing; then time; then loudness.
 */
import { Milliseconds, type Voice } from '@shedbook/core';
import { median } from '@shedbook/signal';
import type { Allowance } from '../level/levels.data.ts';
import type { LoopTask } from '../loop/task.ts';
import {
  type HeardRound,
  hearRound,
  latenessIn,
  matchOf,
  type RoundStrokes,
  wholeMatch,
} from '../take/hearing.ts';
import { type Match, surfaceOf } from '../take/match.ts';
import { spreadOf } from '../take/own-pulse.ts';
import type { PraiseFact } from '../verdict/fact.ts';
import type { Finding } from '../verdict/finding.ts';
import { straightFindings, straightPhase, straightVoices } from './feel.ts';
import { levelFindings } from './levels.ts';
import { loudspeakerVoices } from './loudspeaker.ts';
import { ownVoices, partFindings, shiftedWhole, withoutVoices } from './own-part.ts';
import { Places } from './places.ts';
import { praiseOf } from './praise.ts';
import { SURE, strokeFindings } from './strokes.ts';
import { timeFindings, timeRound } from './time.ts';
import { wrongVoices } from './wrong-voice.ts';

/** What is known beside the strokes. */
export interface Known {
  /** What is asked of the student's own limbs. */
  readonly task: LoopTask;
  /** The other exercises of the lesson; made only where they are asked for. */
  readonly others: () => readonly { readonly exercise: number; readonly task: LoopTask }[];
  readonly limits: Allowance;
  readonly kind: 'audio' | 'midi';
  readonly isAlongClick: boolean;
  /** Whether a voice is the student's. */
  readonly isMine: (voice: Voice) => boolean;
  /** Whether a stroke of a voice may be the student's: theirs, or one that nobody else plays. */
  readonly isHeard: (voice: Voice) => boolean;
  /** Voices that a loudspeaker plays. */
  readonly sounding: readonly Voice[];
  /** Whether the ear itself has told whose each stroke is. */
  readonly isToldByEar: boolean;
  readonly isLoudspeakerHeard: boolean;
  /** Voices that the ear has told to be mostly the loudspeaker's, or nobody's. */
  readonly hidden: ReadonlySet<Voice>;
  /** Voices that the ear could not hear well enough. */
  readonly untold: ReadonlySet<Voice>;
  /** The tempi that a student climbs, and the one that is asked for; quarter notes a minute. */
  readonly ladder: {
    readonly startBpm: number;
    readonly goalBpm: number;
    readonly stepBpm: number;
    readonly askedBpm: number;
    /** Whether one tempo was asked for; else it may be any rung of the ladder. */
    readonly isTold: boolean;
  };
}

/** Heard, and what is left to be told of it. */
interface Reading {
  readonly rounds: readonly HeardRound[];
  readonly findings: readonly Finding[];
}

/** Fewest strokes by which a voice is known to be played, and the share of them that must be written ones. */
const FEWEST = 4;
const MOSTLY = 0.6;
/** Strokes that scatter over more than this share of their reach are there by chance. */
const BY_CHANCE = 0.45;
/** Fewer sounds than this share of what was due, none of them in time, are nobody's playing. */
const FEW_SHARE = 0.3;

/** Whether a voice is played where it is written, and not only struck there by chance. */
function isPlayed(voice: Voice, match: Match, rounds: readonly HeardRound[]): boolean {
  const own = match.pairs.filter(({ due }) => due.voice === voice);
  const extra = match.extra.filter((stroke) => surfaceOf(stroke.voice) === surfaceOf(voice)).length;
  const due = own.length + match.missed.filter((one) => one.voice === voice).length;
  if (own.length < Math.min(FEWEST, due) || own.length < MOSTLY * (own.length + extra)) return false;
  const late = rounds.flatMap((round) => {
    const at = latenessIn(round);
    return round.match.pairs
      .filter((pair) => pair.due.voice === voice)
      .map((pair) => pair.lateSeconds - at(pair.due));
  });
  return spreadOf(late) < BY_CHANCE * median(own.map((pair) => pair.due.reachSeconds));
}

function isAnyPlayed(rounds: readonly HeardRound[]): boolean {
  const match = wholeMatch(rounds);
  const voices = new Set(match.pairs.map(({ due }) => due.voice));
  return [...voices].some((voice) => isPlayed(voice, match, rounds));
}

/** A task without some voices. */
function without(task: LoopTask, voices: ReadonlySet<Voice>): LoopTask {
  return { ...task, strokes: task.strokes.filter(({ voice }) => !voices.has(voice)) };
}

/** Strokes that may be the student's, without those of some voices. */
function heardOf(
  rounds: readonly RoundStrokes[],
  { isHeard }: Known,
  voices: ReadonlySet<Voice> = new Set(),
): readonly RoundStrokes[] {
  const out = new Set([...voices].map(surfaceOf));
  return rounds.map(({ bars, strokes }) => ({
    bars,
    strokes: strokes.filter(({ voice }) => isHeard(voice) && !out.has(surfaceOf(voice))),
  }));
}

/** The voices of which nobody knows whose strokes they are. */
function unknownVoices(rounds: readonly HeardRound[], known: Known): ReadonlySet<Voice> {
  if (known.kind === 'midi') return new Set();
  if (!known.isToldByEar) return loudspeakerVoices(rounds, known.sounding);
  const pairs = rounds.flatMap(({ match }) => match.pairs);
  const voices = [...new Set(pairs.map(({ due }) => due.voice))];
  const isMostlyUnknown = (voice: Voice) => {
    const own = pairs.filter(({ due }) => due.voice === voice);
    return own.filter(({ stroke }) => stroke.isUnknown).length >= own.length / 2;
  };
  return new Set([...voices.filter(isMostlyUnknown), ...known.hidden]);
}

/** Where everything comes some beats late: a fault beside a click; else only where the take was cut. */
function readShifted(
  strokes: readonly RoundStrokes[],
  rounds: readonly HeardRound[],
  task: LoopTask,
  known: Known,
): Reading {
  const moved = shiftedWhole(strokes, rounds, task, known.isAlongClick);
  if (!moved) return { rounds, findings: [] };
  const finding: Finding = { what: 'shifted', beats: moved.beats, strength: 2 };
  return { rounds: moved.rounds, findings: known.isAlongClick ? [finding] : [] };
}

function readStraight(
  strokes: readonly RoundStrokes[],
  before: Reading,
  task: LoopTask,
  known: Known,
): Reading {
  const { straight, all } = straightVoices(before.rounds, task);
  if (straight.length === 0) return before;
  const phaseOf = straightPhase(task, straight);
  return {
    rounds: strokes.map((round) => hearRound(round, task, known.isAlongClick, { phaseOf })),
    findings: [...before.findings, ...straightFindings(straight, all)],
  };
}

/** The rung of the ladder that a round may have been asked at: the tempo asked, or one that it climbs to. */
function rungNear({ askedBpm, goalBpm, stepBpm }: Known['ladder'], playedBpm: number): number {
  if (!(stepBpm > 0) || playedBpm <= askedBpm) return askedBpm;
  const rungs = Math.max(0, Math.floor((goalBpm - askedBpm) / stepBpm));
  const rung = Math.min(rungs, Math.max(0, Math.round((playedBpm - askedBpm) / stepBpm)));
  return askedBpm + rung * stepBpm;
}

/** What is left once it is said what was played instead. */
function readPart(reading: Reading, task: LoopTask, known: Known) {
  const own = ownVoices(task);
  const { kind, isAlongClick, isMine } = known;
  const others = () => known.others().map((other) => ({ ...other, task: without(other.task, known.untold) }));
  const found =
    own.size === 0 ? [] : partFindings(reading.rounds, { task, others, kind, isAlongClick, isMine });
  const match = wholeMatch(reading.rounds);
  return {
    findings: found,
    match: found.length > 0 ? withoutVoices(match, own) : match,
    out: found.length > 0 ? own : new Set<Voice>(),
  };
}

function judgedFindings(reading: Reading, task: LoopTask, known: Known): Assessed {
  const { limits, kind, isAlongClick, ladder } = known;
  const part = readPart(reading, task, known);
  const wrong = wrongVoices(part.match, reading.rounds);
  const places = new Places(task);
  const due = reading.rounds.flatMap((round) => round.due).filter(({ voice }) => !part.out.has(voice));
  const strokes = strokeFindings(wrong.match, due, { kind, limits, places });
  const timed = reading.rounds.map((round) =>
    timeRound({ bars: round.bars, match: matchOf(round.match, (voice) => !part.out.has(voice)) }, task),
  );
  const time = timeFindings(timed, {
    limits,
    places,
    isAlongClick,
    askedBpm: (_, bpm) => (ladder.isTold ? ladder.askedBpm : rungNear(ladder, bpm)),
  });
  const levels = levelFindings(wholeMatch(reading.rounds), task.lead, limits, kind);
  const findings = [
    ...reading.findings,
    ...part.findings,
    ...wrong.findings,
    ...strokes,
    ...[...time, ...levels].filter(({ strength }) => strength >= 1),
  ];
  const isTimed = isAlongClick && timed.some(({ offsets }) => offsets.length > 0);
  return {
    findings,
    praise: praiseOf(wholeMatch(reading.rounds), timed),
    wholeMs: isTimed ? Milliseconds(median(timed.map(({ wholeMs }) => wholeMs))) : null,
  };
}

function nobody(known: Known): Finding {
  return { what: known.isLoudspeakerHeard ? 'only-loudspeaker' : 'nobody-played', strength: 1 };
}

/** Whether anything was played at all; else what is to be said. */
function unplayed(reading: Reading, findings: readonly Finding[], known: Known): readonly Finding[] | null {
  const isOther = findings.some(({ what }) => INSTEAD.has(what));
  if (isOther || isAnyPlayed(reading.rounds)) return null;
  const sure = reading.rounds
    .flatMap(({ strokes }) => strokes)
    .filter(({ confidence }) => confidence >= SURE);
  const due = reading.rounds.reduce((sum, round) => sum + round.due.length, 0);
  if (sure.length < FEW_SHARE * due) return [nobody(known)];
  return known.kind === 'audio' ? [{ what: 'too-little-heard', strength: 1 }] : null;
}

const INSTEAD: ReadonlySet<Finding['what']> = new Set([
  'other-exercise',
  'shifted',
  'straight-feel',
  'wrong-voice',
]);

/** What is to be said of some rounds, in no particular order, and what may be praised where nothing is wrong. */
export interface Assessed {
  readonly findings: readonly Finding[];
  readonly praise: readonly PraiseFact[];
  /** How late the playing is as a whole beside the click; null where there is none, or nobody was heard. */
  readonly wholeMs: Milliseconds | null;
}

function only(finding: Finding): Assessed {
  return { findings: [finding], praise: [], wholeMs: null };
}

/** Assesses some rounds. */
export function assess(rounds: readonly RoundStrokes[], known: Known): Assessed {
  const strokes = heardOf(rounds, known);
  if (known.task.strokes.length === 0 || rounds.length === 0)
    return only({ what: 'too-little-heard', strength: 1 });
  if (strokes.every((round) => round.strokes.length === 0)) return only(nobody(known));
  const asWritten = strokes.map((round) => hearRound(round, known.task, known.isAlongClick));
  const unknown = unknownVoices(asWritten, known);
  const out = new Set([...unknown, ...known.untold]);
  const task = without(known.task, out);
  const loudspeaker = [...unknown].map(
    (voice): Finding => ({ what: 'only-loudspeaker', voice, strength: 0 }),
  );
  if (task.strokes.length === 0)
    return only({ what: unknown.size > 0 ? 'only-loudspeaker' : 'too-little-heard', strength: 1 });
  const own = out.size === 0 ? strokes : heardOf(rounds, known, out);
  const as = out.size === 0 ? asWritten : own.map((round) => hearRound(round, task, known.isAlongClick));
  if (own.every((round) => round.strokes.length === 0) && unknown.size > 0)
    return only({ what: 'only-loudspeaker', strength: 1 });
  const reading = readStraight(own, readShifted(own, as, task, known), task, known);
  const { findings, praise, wholeMs } = judgedFindings(reading, task, known);
  const instead = unplayed(reading, findings, known);
  return {
    findings: [...(instead ?? findings), ...loudspeaker],
    praise,
    wholeMs: instead ? null : wholeMs,
  };
}
