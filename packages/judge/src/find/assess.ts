/**
 * Everything that is to be said of some rounds, in the order in which a teacher would look: whether anybody played, and
 * what; then what is missing; then time; then loudness.
 */
import { Milliseconds, type Voice } from '@shedbook/core';
import { median } from '@shedbook/signal';
import type { LoopTask } from '../loop/task.ts';
import { type HeardRound, hearRound, matchOf, type RoundStrokes, wholeMatch } from '../take/hearing.ts';
import { surfaceOf } from '../take/match.ts';
import type { PraiseFact } from '../verdict/fact.ts';
import type { Finding } from '../verdict/finding.ts';
import { nobody, unplayed } from './anybody.ts';
import { barFindings } from './bars.ts';
import { ELSEWHERE_MS } from './doubts.ts';
import { type Known, tempoOnLadder, without } from './known.ts';
import { levelFindings } from './levels.ts';
import { isBesideOthers, loudspeakerVoices } from './loudspeaker.ts';
import { machineVoices } from './machine.ts';
import { ownVoices } from './own-part.ts';
import { Places } from './places.ts';
import { praiseOf } from './praise.ts';
import { inTheirFeel, type Reading, readPart, readRounds } from './readings.ts';
import { strokeFindings } from './strokes.ts';
import { timeFindings } from './time.ts';
import { timeRounds } from './timed-round.ts';
import { wrongVoices } from './wrong-voice.ts';

/** Strokes that may be the student's, without those of some voices. */
function heardOf(
  rounds: readonly RoundStrokes[],
  { isHeard, task }: Known,
  voices: ReadonlySet<Voice> = new Set(),
): readonly RoundStrokes[] {
  // a drum on which another voice is told goes on to be heard: only the strokes of the one voice are left out
  const told = new Set(task.strokes.flatMap(({ voice }) => (voices.has(voice) ? [] : [surfaceOf(voice)])));
  const out = new Set([...voices].map(surfaceOf).filter((surface) => !told.has(surface)));
  return rounds.map(({ bars, strokes }) => ({
    bars,
    strokes: strokes.filter(
      ({ voice }) => isHeard(voice) && !voices.has(voice) && !out.has(surfaceOf(voice)),
    ),
  }));
}

/** The voices of which nobody knows whose strokes they are. */
function unknownVoices(rounds: readonly HeardRound[], known: Known): ReadonlySet<Voice> {
  if (known.kind === 'midi') return new Set();
  // what the page plays for a student who leaves it to the page is no doubt about the student
  const hidden = [...known.hidden].filter(known.isMine);
  if (!known.isToldByEar) {
    // the lead voice and the exercise's own are loud: where they can hardly be told, the page's are heard instead
    const loud = new Set([known.task.lead, ...ownVoices(known.task)]);
    const mine = new Set(known.task.strokes.map(({ voice }) => voice));
    const doubted = known.sounding.filter(
      (voice) =>
        mine.has(voice) && loud.has(voice) && known.hard.has(voice) && !isBesideOthers(voice, rounds),
    );
    const machine = known.sounding.length === 0 ? machineVoices(rounds) : [];
    return new Set([...loudspeakerVoices(rounds, known.sounding), ...doubted, ...machine, ...hidden]);
  }
  const pairs = rounds.flatMap(({ match }) => match.pairs);
  const voices = [...new Set(pairs.map(({ due }) => due.voice))];
  const isMostlyUnknown = (voice: Voice) => {
    const own = pairs.filter(({ due }) => due.voice === voice);
    return own.filter(({ stroke }) => stroke.isUnknown).length >= own.length / 2;
  };
  return new Set([...voices.filter(isMostlyUnknown), ...hidden]);
}

function judgedFindings(reading: Reading, task: LoopTask, known: Known): Assessed {
  const { limits, kind, isAlongClick, ladder } = known;
  const part = readPart(reading, task, known);
  const wrong = wrongVoices(part.match, reading.rounds);
  const places = new Places(task);
  // bars that are another exercise's too are told as bars, and the doubt with them; else the exercise is
  const isOther = ({ what }: Finding) => what === 'other-exercise';
  const bars = barFindings(reading.rounds, task, known).filter(
    (one) => !isOther(one) || !part.findings.some(isOther),
  );
  const isInDoubt = bars.some(({ exercise }) => exercise !== undefined);
  const due = reading.rounds.flatMap((round) => round.due).filter(({ voice }) => !part.out.has(voice));
  const strokes = strokeFindings(wrong.match, due, { kind, limits, places, plain: known.plain });
  const timed = timeRounds(
    reading.rounds.map(({ bars: own, match }) => ({
      bars: own,
      match: matchOf(match, (voice) => !part.out.has(voice)),
    })),
    task,
  );
  const time = timeFindings(timed, {
    limits,
    places,
    isAlongClick,
    kind,
    askedBpm: (_, bpm) => (ladder.isTold ? ladder.askedBpm : tempoOnLadder(ladder, bpm)),
  });
  const isExchanged = (voice: Voice) => reading.exchanged.includes(voice);
  const levels = isExchanged(task.lead)
    ? []
    : levelFindings(wholeMatch(reading.rounds), task.lead, limits, kind).filter(
        ({ voice }) => !voice || !isExchanged(voice),
      );
  const isTimed = isAlongClick && timed.some(({ offsets }) => offsets.length > 0);
  const wholeMs = isTimed ? Milliseconds(median(timed.map((round) => round.wholeMs))) : null;
  const isElsewhere = kind === 'audio' && Math.abs(wholeMs ?? 0) > ELSEWHERE_MS;
  const findings = [
    ...reading.findings,
    ...part.findings.filter((one) => !isOther(one) || !isInDoubt),
    ...wrong.findings,
    ...bars,
    ...(isElsewhere ? strokes.filter(({ voice }) => voice && ownVoices(task).has(voice)) : strokes),
    ...[...time, ...levels].filter(({ strength }) => strength >= 1),
  ];
  const doubts = new Set([...known.untold, ...known.doubted]);
  const isJudged = (voice: Voice) => !part.out.has(voice) && !isExchanged(voice);
  return {
    findings,
    praise: praiseOf(wholeMatch(reading.rounds), timed, { task, untold: doubts }),
    wholeMs,
    judged: reading.isInOrder
      ? { rounds: reading.rounds, voices: voicesOf(task).filter(isJudged), places }
      : null,
  };
}

/** What is to be said of some rounds, in no particular order, and what may be praised where nothing is wrong. */
export interface Assessed {
  readonly findings: readonly Finding[];
  readonly praise: readonly PraiseFact[];
  /** How late the playing is as a whole beside the click; null where there is none, or nobody was heard. */
  readonly wholeMs: Milliseconds | null;
  /** Which stroke is which; null where nothing of it was judged at its places. */
  readonly judged: JudgedStrokes | null;
}

/** The rounds as they were judged, and the voices that were judged at their own places. */
export interface JudgedStrokes {
  readonly rounds: readonly HeardRound[];
  readonly voices: readonly Voice[];
  readonly places: Places;
}

function voicesOf({ strokes }: LoopTask): readonly Voice[] {
  return [...new Set(strokes.map(({ voice }) => voice))];
}

function only(finding: Finding): Assessed {
  return { findings: [finding], praise: [], wholeMs: null, judged: null };
}

/** Assesses some rounds. */
export function assess(rounds: readonly RoundStrokes[], known: Known): Assessed {
  const strokes = heardOf(rounds, known, known.shadows);
  if (known.task.strokes.length === 0 || rounds.length === 0)
    return only({ what: 'too-little-heard', strength: 1 });
  if (strokes.every((round) => round.strokes.length === 0)) return only(nobody(known));
  const asWritten = strokes.map((round) => hearRound(round, known.task, known.isAlongClick));
  const unknown = unknownVoices(inTheirFeel(strokes, asWritten, known), known);
  const out = new Set([...unknown, ...known.untold]);
  const task = without(known.task, out);
  const own = ownVoices(known.task);
  const doubts = [
    // the exercise's own voice first
    ...[...unknown].map(
      (voice): Finding => ({ what: 'only-loudspeaker', voice, strength: own.has(voice) ? 1 : 0 }),
    ),
    // the exercise cannot be judged where its own voice could not be told; another limb may go unheard
    ...[...known.untold]
      .filter((voice) => own.has(voice) && !unknown.has(voice))
      .map((voice): Finding => ({ what: 'too-little-heard', voice, strength: 1 })),
    // of another limb nobody knows whether it was played: it is said, and the rest is judged
    ...[...known.unheard]
      .filter((voice) => known.isMine(voice) && !own.has(voice) && !unknown.has(voice))
      .map((voice): Finding => ({ what: 'too-little-heard', voice, strength: 0 })),
  ];
  if (task.strokes.length === 0)
    return only({ what: unknown.size > 0 ? 'only-loudspeaker' : 'too-little-heard', strength: 1 });
  const left = out.size === 0 ? strokes : heardOf(rounds, known, new Set([...out, ...known.shadows]));
  const as = out.size === 0 ? asWritten : left.map((round) => hearRound(round, task, known.isAlongClick));
  if (left.every((round) => round.strokes.length === 0) && unknown.size > 0)
    return only({ what: 'only-loudspeaker', strength: 1 });
  const reading = readRounds(left, as, task, known);
  const { findings, praise, wholeMs, judged } = judgedFindings(reading, task, known);
  const instead = unplayed(reading, findings, known);
  return {
    findings: [...(instead ?? findings), ...doubts],
    praise,
    wholeMs: instead ? null : wholeMs,
    judged: instead ? null : judged,
  };
}
