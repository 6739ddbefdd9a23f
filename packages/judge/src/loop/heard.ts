/**
 * What was heard of each time through the loop, taken out of a take's report.
 *
 * Conventions: bars from 1, counted from the start of the loop. A report counts bars through the whole take.
 */
import type { ReportStroke, TakeReport, Voice, WrittenPlace } from '@shedbook/core';

/** A stroke that was heard where one is written. */
export interface HeardStroke {
  readonly voice: Voice;
  readonly written: WrittenPlace;
  /** Lateness against the pulse; negative is early. */
  readonly offsetMs: number;
  readonly levelDb: number;
  /** 0 to 1. */
  readonly confidence: number;
}

/** A stroke that was heard where none is written, and the written stroke nearest to it in time. */
export interface ExtraStroke {
  readonly voice: Voice;
  readonly near: WrittenPlace;
  readonly confidence: number;
}

/** What was heard of one time through the loop. */
export interface HeardLoop {
  readonly bpm: number;
  /** Voices that can be judged; others were not heard or not listened for. */
  readonly voices: readonly Voice[];
  readonly strokes: readonly HeardStroke[];
  readonly missed: readonly (WrittenPlace & { readonly voice: Voice })[];
  readonly extra: readonly ExtraStroke[];
}

type Placed = ReportStroke & { readonly written: WrittenPlace };

function nearest(placed: readonly Placed[], timeSeconds: number): Placed | null {
  let best: Placed | null = null;
  for (const stroke of placed) {
    const away = Math.abs(stroke.timeSeconds - timeSeconds);
    if (!best || away < Math.abs(best.timeSeconds - timeSeconds)) best = stroke;
  }
  return best;
}

/** The loop that a bar of the take lies in, from 0, and the place inside it. */
function inLoop<P extends WrittenPlace>(place: P, bars: number): readonly [number, P] {
  const loop = Math.floor((place.bar - 1) / bars);
  return [loop, { ...place, bar: place.bar - loop * bars }];
}

interface OpenLoop {
  readonly strokes: HeardStroke[];
  readonly missed: (WrittenPlace & { readonly voice: Voice })[];
  readonly extra: ExtraStroke[];
}

function sortStrokes(report: TakeReport, bars: number, loopAt: (index: number) => OpenLoop): void {
  const placed = report.strokes.filter((stroke): stroke is Placed => stroke.written !== null);
  for (const stroke of report.strokes) {
    const { voice, levelDb, confidence } = stroke;
    const anchor = stroke.written ?? nearest(placed, stroke.timeSeconds)?.written;
    if (!anchor) continue;
    const [index, written] = inLoop(anchor, bars);
    if (stroke.written === null) loopAt(index).extra.push({ voice, near: written, confidence });
    else loopAt(index).strokes.push({ voice, written, offsetMs: stroke.offsetMs ?? 0, levelDb, confidence });
  }
}

/**
 * A take cut into its loops.
 * @param bars bars in a loop
 * @returns one entry for each loop that anything was heard or missed in, in order.
 */
export function splitLoops(report: TakeReport, bars: number): readonly HeardLoop[] {
  const loops = new Map<number, OpenLoop>();
  const loopAt = (index: number) => {
    const loop = loops.get(index) ?? { strokes: [], missed: [], extra: [] };
    loops.set(index, loop);
    return loop;
  };
  sortStrokes(report, bars, loopAt);
  for (const each of report.missed) {
    const [index, { voice, bar, beat, slot }] = inLoop(each, bars);
    loopAt(index).missed.push({ voice, bar, beat, slot });
  }
  const voices = Object.keys(report.voices) as Voice[];
  return [...loops]
    .toSorted(([a], [b]) => a - b)
    .map(([, loop]) => ({ bpm: report.alignment.bpm, voices, ...loop }));
}
