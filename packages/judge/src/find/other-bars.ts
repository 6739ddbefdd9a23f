/**
 * Beside a click the bars go on whatever is played: which bar of the exercise each of them was is told by its strokes.
 */
import type { Voice } from '@shedbook/core';
import type { LoopTask } from '../loop/task.ts';
import { dueIn } from '../take/due.ts';
import {
  type HeardRound,
  hearRound,
  latenessIn,
  matchOf,
  type RoundStrokes,
  wholeMatch,
} from '../take/hearing.ts';
import { agreementOf, matchStrokes, surfaceOf } from '../take/match.ts';
import type { PlayedBar } from '../take/played.ts';
import { wayThrough } from './bars.ts';

/** Another bar must agree so well with what was played, and by so much better than the one that was asked. */
const AGREES = { midi: 0.9, audio: 0.8 } as const;
const BETTER = 0.25;
/** Fewer strokes than these make no bar another one. */
const FEWEST = 2;

/** The drums on which the bars of a task are unlike each other. */
function unlikeSurfaces({ strokes, bars }: LoopTask): ReadonlySet<Voice> {
  const surfaces = [...new Set(strokes.map(({ voice }) => surfaceOf(voice)))];
  return new Set(
    surfaces.filter((surface) => {
      const shapes = Array.from({ length: bars }, (_, index) =>
        strokes
          .filter(({ voice, written }) => surfaceOf(voice) === surface && written.bar === index + 1)
          .map(({ written }) => `${written.beat}.${written.slot}`)
          .join(),
      );
      return new Set(shapes).size > 1;
    }),
  );
}

/** Which bar of the task the strokes of a bar are: the one that is asked, or another that they clearly agree with. */
function barOf(
  bar: PlayedBar,
  round: HeardRound,
  { task, surfaces, kind }: { task: LoopTask; surfaces: ReadonlySet<Voice>; kind: 'audio' | 'midi' },
): number {
  const lateness = latenessIn(round);
  const all = Array.from({ length: task.bars }, (_, index) => {
    const due = dueIn([{ ...bar, bar: index + 1 }], task).filter(({ voice }) =>
      surfaces.has(surfaceOf(voice)),
    );
    return { bar: index + 1, due };
  });
  const edge = bar.barSeconds / task.beats.length / 6;
  const late =
    round.lateness.seconds + round.lateness.slope * (bar.startSeconds - (round.bars[0]?.startSeconds ?? 0));
  const from = bar.startSeconds + late - edge;
  const strokes = round.strokes.filter(
    ({ voice, seconds }) =>
      surfaces.has(surfaceOf(voice)) && seconds >= from && seconds < from + bar.barSeconds,
  );
  if (strokes.length < FEWEST) return bar.bar;
  const agreed = all.map(({ bar: at, due }) => ({
    bar: at,
    agreement: agreementOf(matchStrokes(due, strokes, lateness)),
  }));
  const asked = agreed[bar.bar - 1]?.agreement ?? 0;
  const [best] = agreed.toSorted((a, b) => b.agreement - a.agreement);
  return best && best.agreement >= Math.max(AGREES[kind], asked + BETTER) ? best.bar : bar.bar;
}

/**
 * The rounds with the bars that were played; null where they are those that were asked, or all of them in their order:
 * those came late or early.
 */
export function playedBars(
  strokes: readonly RoundStrokes[],
  rounds: readonly HeardRound[],
  task: LoopTask,
  kind: 'audio' | 'midi',
): readonly RoundStrokes[] | null {
  const surfaces = unlikeSurfaces(task);
  if (surfaces.size === 0) return null;
  const found = rounds.map((round) => round.bars.map((bar) => barOf(bar, round, { task, surfaces, kind })));
  if (rounds.every(({ bars }, i) => bars.every(({ bar }, j) => found[i]?.[j] === bar))) return null;
  const { leaps, never } = wayThrough(found.flat(), task);
  if (leaps === 0 && never.length === 0) return null;
  const played = strokes.map((round, i) => ({
    ...round,
    bars: round.bars.map((bar, j) => ({ ...bar, bar: found[i]?.[j] ?? bar.bar })),
  }));
  const match = wholeMatch(played.map((round) => hearRound(round, task, true)));
  const own = matchOf(match, (voice) => surfaces.has(surfaceOf(voice)));
  return agreementOf(own) >= AGREES[kind] ? played : null;
}
