/**
 * A straight feel where the lesson swings: the off-beats in the middle of their beats.
 *
 * Conventions: phases as shares of a beat, 0.5 in the middle; 2:1 swing is 2/3.
 */
import { beatLength, groupBy, isDotted, type Voice } from '@shedbook/core';
import { median } from '@shedbook/signal';
import { askedPhase, type LoopTask, type TaskStroke } from '../loop/task.ts';
import type { Due, PhaseOf } from '../take/due.ts';
import { type HeardRound, latenessIn, latenessOfVoices } from '../take/hearing.ts';
import { surfaceOf } from '../take/match.ts';
import type { Finding } from '../verdict/finding.ts';

const STRAIGHT = 0.5;
/** An off-beat later than this swings. */
const SWINGS = 0.57;
/** Off-beats are looked for so far before and behind their place, as shares of a beat. */
const BEFORE = 0.28;
const BEHIND = 0.12;
/** So many off-beats, and this share of those that were due, tell a feel. */
const FEWEST = 4;
const MOST = 0.5;

/** Whether a beat is one of three parts by its meter among others that are not: no feel moves them. */
function isThreeAmongOthers({ meter }: LoopTask, beat: number): boolean {
  return !meter.compound && isDotted(beatLength(meter, beat - 1));
}

/** Whether a stroke is a swung off-beat: one that has the middle of its beat to itself. */
function isOffBeat(task: LoopTask, stroke: TaskStroke): boolean {
  const { voice, written, slots } = stroke;
  if (isThreeAmongOthers(task, written.beat)) return false;
  if (slots > 3 || written.slot !== slots || askedPhase(task, stroke) < SWINGS) return false;
  return !task.strokes.some(
    (other) =>
      other.voice === voice &&
      other.written.bar === written.bar &&
      other.written.beat === written.beat &&
      other.written.slot === 2 &&
      slots === 3,
  );
}

/** Where in its beat each off-beat of a round was played, with its place asked. */
function phasesIn(
  round: HeardRound,
  task: LoopTask,
): readonly { readonly due: Due; readonly phase: number | null }[] {
  const whole = latenessIn(round);
  const byVoice = latenessOfVoices(round);
  // a voice that is early on its beats too is early, and not straight
  const onBeat = new Set(task.strokes.flatMap(({ voice, written }) => (written.slot === 1 ? [voice] : [])));
  const at = (due: Due) => (onBeat.has(due.voice) ? byVoice(due) : whole(due));
  return round.due
    .filter(({ asked }) => isOffBeat(task, asked))
    .map((due) => {
      const expected = due.seconds + at(due);
      const near = round.strokes
        .filter(({ voice }) => surfaceOf(voice) === surfaceOf(due.voice))
        .map(({ seconds }) => (seconds - expected) / due.beatSeconds)
        .filter((away) => away > -BEFORE && away < BEHIND);
      const nearest = near.toSorted((a, b) => Math.abs(a + 1 / 12) - Math.abs(b + 1 / 12))[0];
      return { due, phase: nearest === undefined ? null : askedPhase(task, due.asked) + nearest };
    });
}

/** The voices that play their off-beats straight, and those that have any. */
export function straightVoices(
  rounds: readonly HeardRound[],
  task: LoopTask,
): { readonly straight: readonly Voice[]; readonly all: readonly Voice[] } {
  const phases = rounds.flatMap((round) => phasesIn(round, task));
  const byVoice = groupBy(phases, ({ due }) => due.voice);
  const straight = [...byVoice].filter(([, own]) => {
    const found = own.flatMap(({ phase }) => phase ?? []);
    if (found.length < FEWEST || found.length < MOST * own.length) return false;
    const asked = median(own.map(({ due }) => askedPhase(task, due.asked)));
    return median(found) < (STRAIGHT + asked) / 2;
  });
  return { straight: straight.map(([voice]) => voice), all: [...byVoice.keys()] };
}

/** The off-beats of some voices in the middle of their beats. */
export function straightPhase(task: LoopTask, voices: readonly Voice[]): PhaseOf {
  return (stroke, phase) => (voices.includes(stroke.voice) && isOffBeat(task, stroke) ? STRAIGHT : phase);
}

/** The finding, by itself where all that swings is straight, else voice by voice. */
export function straightFindings(straight: readonly Voice[], all: readonly Voice[]): readonly Finding[] {
  if (straight.length === 0) return [];
  if (straight.length === all.length) return [{ what: 'straight-feel', strength: 1 }];
  return straight.map((voice) => ({ what: 'straight-feel', voice, strength: 1 }));
}
