/**
 * What was heard of each time through the loop, taken out of a take's report.
 *
 * Conventions: bars from 1, counted from the start of the loop. A report counts bars through the whole take.
 */
import {
  type Bpm,
  LeadDb,
  Milliseconds,
  type ReportStroke,
  type TakeReport,
  type Voice,
  type WrittenPlace,
} from '@shedbook/core';

/** A stroke that was heard where one is written. */
export interface HeardStroke {
  readonly voice: Voice;
  readonly written: WrittenPlace;
  /** Lateness against the pulse; negative is early. */
  readonly offsetMs: Milliseconds;
  readonly levelDb: LeadDb;
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
  readonly bpm: Bpm;
  /** How levels were told, or null where they are not to be judged. */
  readonly levelsBy: 'audio' | 'midi' | null;
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

/**
 * The level of a report's lead voice, in dB: 0 in one whose levels are relative to it; reports that were kept before
 * have those of a recording re full scale.
 */
function leadDbOf({ voices }: TakeReport, lead: Voice): number {
  const of = voices[lead];
  return of && of.hits > 0 ? of.levelDb : 0;
}

function sortStrokes(
  report: TakeReport,
  { bars, lead }: LoopShape,
  loopAt: (index: number) => OpenLoop,
): void {
  const leadDb = leadDbOf(report, lead);
  const placed = report.strokes.filter((stroke): stroke is Placed => stroke.written !== null);
  for (const stroke of report.strokes) {
    const { voice, levelDb, confidence } = stroke;
    const anchor = stroke.written ?? nearest(placed, stroke.timeSeconds)?.written;
    if (!anchor) continue;
    const [index, written] = inLoop(anchor, bars);
    if (stroke.written === null) loopAt(index).extra.push({ voice, near: written, confidence });
    else {
      const offsetMs = stroke.offsetMs ?? Milliseconds(0);
      loopAt(index).strokes.push({ voice, written, offsetMs, levelDb: LeadDb(levelDb - leadDb), confidence });
    }
  }
}

/** How long a loop is, in bars, and the voice that its levels are relative to. */
export interface LoopShape {
  readonly bars: number;
  readonly lead: Voice;
}

/**
 * A take cut into its loops.
 * @returns one entry for each loop that anything was heard or missed in, in order.
 */
export function splitLoops(report: TakeReport, shape: LoopShape): readonly HeardLoop[] {
  const loops = new Map<number, OpenLoop>();
  const loopAt = (index: number) => {
    const loop = loops.get(index) ?? { strokes: [], missed: [], extra: [] };
    loops.set(index, loop);
    return loop;
  };
  sortStrokes(report, shape, loopAt);
  for (const each of report.missed) {
    const [index, { voice, bar, beat, slot }] = inLoop(each, shape.bars);
    loopAt(index).missed.push({ voice, bar, beat, slot });
  }
  const { alignment, take } = report;
  const voices = Object.keys(report.voices) as Voice[];
  return [...loops]
    .toSorted(([a], [b]) => a - b)
    .map(([, loop]) => ({ bpm: alignment.bpm, levelsBy: take.kind, voices, ...loop }));
}
