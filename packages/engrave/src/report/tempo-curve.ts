/** Tempo over time, bar by bar, with the tempo that was asked as a dashed line. */

import type { FullReport } from '@shedbook/core';
import type { Box } from './ladder.ts';
import { COLOURS } from './look.data.ts';
import type { PictureWords } from './picture-words.ts';
import { element, label, line } from './svg.ts';

/** The curve shows at least this much around its middle, so that a steady take looks steady: 6 %. */
const LEAST_SPAN = 0.06;

/** The bounds of what is shown, in quarter notes a minute. */
function bounds({ tempo, asked }: FullReport): { readonly low: number; readonly high: number } {
  const values = tempo.map(({ bpm }) => bpm);
  const near = values.every((bpm) => Math.abs(bpm / asked.bpm - 1) < 0.15) ? [...values, asked.bpm] : values;
  const [low, high] = [Math.min(...near), Math.max(...near)];
  const middle = (low + high) / 2;
  const half = Math.max((high - low) / 2, LEAST_SPAN * middle) * 1.15;
  return { low: middle - half, high: middle + half };
}

/** The curve in a box. */
export function drawTempo(report: FullReport, words: PictureWords, { x, y, width, height }: Box): string {
  const { tempo, asked } = report;
  const title = label(words.tempo, x, y + 14, {
    'font-size': 16,
    'font-weight': 600,
    fill: COLOURS.ink,
  });
  const first = tempo[0];
  if (!first) return title;
  const { low, high } = bounds(report);
  const inner = { left: x + 40, top: y + 34, width: width - 48, height: height - 62 };
  const span = Math.max(1e-3, (tempo.at(-1)?.timeSeconds ?? 0) - first.timeSeconds);
  const atX = (seconds: number) => inner.left + ((seconds - first.timeSeconds) / span) * inner.width;
  const atY = (bpm: number) => inner.top + ((high - bpm) / (high - low)) * inner.height;
  const small = { 'font-size': 11, fill: COLOURS.soft };
  const step = [1, 2, 5, 10, 20, 50].find((size) => (high - low) / size <= 6) ?? 100;
  const ticks = Array.from({ length: Math.floor(high / step) - Math.ceil(low / step) + 1 }, (_, i) => {
    const bpm = (Math.ceil(low / step) + i) * step;
    return (
      line(inner.left, atY(bpm), inner.left + inner.width, atY(bpm), {
        stroke: COLOURS.faint,
        'stroke-width': 0.6,
      }) + label(words.bpm({ bpm }), inner.left - 8, atY(bpm) + 4, { ...small, 'text-anchor': 'end' })
    );
  });
  const wanted =
    asked.bpm > low && asked.bpm < high
      ? line(inner.left, atY(asked.bpm), inner.left + inner.width, atY(asked.bpm), {
          ...{ stroke: COLOURS.accent, 'stroke-width': 1.6, 'stroke-dasharray': '7 5' },
        }) +
        label(words.asked, inner.left + inner.width, atY(asked.bpm) - 5, {
          ...{ 'font-size': 11, fill: COLOURS.accent, 'text-anchor': 'end' },
        })
      : '';
  const points = tempo.map(({ timeSeconds, bpm }) => `${atX(timeSeconds).toFixed(1)},${atY(bpm).toFixed(1)}`);
  const curve = element('polyline', {
    ...{ points: points.join(' '), fill: 'none', stroke: COLOURS.ink, 'stroke-width': 2 },
    'stroke-linejoin': 'round',
  });
  const ends = [first.timeSeconds, first.timeSeconds + span].map((seconds, i) =>
    label(words.seconds({ seconds }), atX(seconds), inner.top + inner.height + 18, {
      ...small,
      'text-anchor': i === 0 ? 'start' : 'end',
    }),
  );
  return [title, ...ticks, wanted, curve, ...ends].join('');
}
