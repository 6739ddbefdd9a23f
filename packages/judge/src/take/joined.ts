/**
 * Reports of rounds that followed one another, as one report of all of them.
 *
 * Conventions: the reports share one clock and one form; the newest is last. Levels are relative to the lead voice.
 */
import type { FullReport, TakeReport } from '@shedbook/core';

function isFull(report: TakeReport): report is FullReport {
  return 'playedBars' in report;
}

/** A stroke at the edge of a round is in the report of the next one, too. */
const SAME_SECONDS = 0.001;

function withoutDoubles(strokes: TakeReport['strokes']): TakeReport['strokes'] {
  const ordered = strokes.toSorted((a, b) => a.timeSeconds - b.timeSeconds);
  return ordered.filter(
    ({ voice, timeSeconds }, index) =>
      !ordered
        .slice(Math.max(0, index - 8), index)
        .some((each) => each.voice === voice && timeSeconds - each.timeSeconds < SAME_SECONDS),
  );
}

/** One report of several rounds; the newest alone where the others cannot be joined to it. */
export function joinedReports(before: readonly TakeReport[], newest: TakeReport): TakeReport {
  const earlier = before.filter(
    (each): each is FullReport => isFull(each) && each.take.kind === newest.take.kind,
  );
  if (!isFull(newest) || earlier.length === 0) return newest;
  const all = [...earlier, newest];
  const isOnClick = all.every(({ click }) => click !== undefined);
  const { click: _, ...rest } = newest;
  return {
    ...rest,
    strokes: withoutDoubles(all.flatMap(({ strokes }) => strokes)),
    missed: all.flatMap(({ missed }) => missed),
    missedSeconds: all.flatMap(({ missedSeconds }) => missedSeconds),
    tempo: all.flatMap(({ tempo }) => tempo),
    playedBars: all.flatMap(({ playedBars }) => playedBars),
    ...(isOnClick ? { click: all.flatMap(({ click = [] }) => click) } : {}),
    unheard: all.flatMap(({ unheard = [] }) => unheard),
    unknown: all.flatMap(({ unknown = [] }) => unknown),
    covered: all.flatMap(({ covered = [] }) => covered),
  } as FullReport;
}
