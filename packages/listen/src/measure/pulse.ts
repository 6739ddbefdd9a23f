/**
 * The take's own pulse: where each quarter note of it lies, from the lead voice's strokes on the beat.
 *
 * Conventions: score position in quarter notes from the first bar that was followed; seconds of the file. The
 * pulse is a line fitted to the strokes of some beats around each place, so one late stroke does not move it but
 * drift and wandering do.
 * Source: locally weighted regression with tricube weights and a robust second pass (W. S. Cleveland, JASA
 * 74(368), 1979).
 */
import { fitLine, median } from '@shedbook/signal';

/** A stroke on a beat. */
export interface PulsePoint {
  readonly quarters: number;
  readonly seconds: number;
  /** 1 for a stroke, less for a place that was only followed. */
  readonly weight: number;
}

/** A pulse over a stretch of score. */
export interface Pulse {
  /** Seconds of a score position. */
  readonly secondsAt: (quarters: number) => number;
  /** Quarter notes a minute at a score position. */
  readonly bpmAt: (quarters: number) => number;
}

/** Quarters on each side that a place of the pulse is fitted from. */
const REACH = 8;
const FEWEST = 6;

function fitAt(points: readonly PulsePoint[], from: number, centre: number): { at: number; slope: number } {
  const near: { x: number; y: number; weight: number }[] = [];
  let reach = REACH;
  for (; reach < 64; reach *= 2) {
    near.length = 0;
    for (let i = Math.max(0, from - 400); i < points.length; i += 1) {
      const point = points[i]!;
      const distance = (point.quarters - centre) / reach;
      if (distance > 1) break;
      if (distance < -1) continue;
      const weight = point.weight * (1 - Math.abs(distance) ** 3) ** 3;
      if (weight > 0) near.push({ x: point.quarters - centre, y: point.seconds, weight });
    }
    if (near.length >= FEWEST) break;
  }
  const first = fitLine(near);
  const errors = near.map((point) => Math.abs(point.y - first.at - first.slope * point.x));
  const limit = 6 * Math.max(0.002, median(errors));
  const robust = near.map((point, i) => ({
    ...point,
    weight: errors[i]! < limit ? point.weight * (1 - (errors[i]! / limit) ** 2) ** 2 : 0,
  }));
  return fitLine(robust);
}

/** The pulse through points in order of score position. */
export function pulseThrough(points: readonly PulsePoint[]): Pulse {
  const first = Math.floor(points[0]?.quarters ?? 0);
  const last = Math.ceil(points.at(-1)?.quarters ?? 0);
  const seconds: number[] = [];
  const slopes: number[] = [];
  let from = 0;
  for (let quarter = first; quarter <= last; quarter += 1) {
    while (from < points.length && points[from]!.quarters < quarter) from += 1;
    const { at, slope } = fitAt(points, from, quarter);
    seconds.push(at);
    slopes.push(slope);
  }
  const locate = (quarters: number) => {
    const index = Math.max(0, Math.min(seconds.length - 1, Math.floor(quarters - first)));
    return { index, rest: quarters - first - index };
  };
  return {
    secondsAt(quarters) {
      const { index, rest } = locate(quarters);
      const here = seconds[index]! + rest * slopes[index]!;
      if (index + 1 >= seconds.length || rest < 0) return here;
      const there = seconds[index + 1]! - (1 - rest) * slopes[index + 1]!;
      return here * (1 - rest) + there * rest;
    },
    bpmAt(quarters) {
      const slope = slopes[locate(quarters).index]!;
      return slope > 0 ? 60 / slope : 0;
    },
  };
}
