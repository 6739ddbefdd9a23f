/**
 * The take on staves: every stroke at its displacement from the place where it is written.
 *
 * Conventions: time runs to the right, each bar as wide as any other; lateness is drawn larger than time
 * (PIXELS_PER_MS), since it could not be seen otherwise. Written places are faint, strokes ink; what is missing or
 * not written is in the accent colour and marked by its form too.
 */
import { type FullReport, STAFF_POSITIONS, type Voice } from '@shedbook/core';
import { noteHead } from './head.ts';
import { COLOURS, FARTHEST_MS, PAGE, PIXELS_PER_MS, STAFF_SPACE } from './look.data.ts';
import type { PictureWords } from './picture-words.ts';
import { element, label, line } from './svg.ts';

/** Bars in a row, and rows at most: more of the same shows no more. */
const BARS_IN_ROW = 4;
const MOST_ROWS = 8;
const ROW_HEIGHT = 126;
/** From the top of a row to the top line of its staff. */
const STAFF_TOP = 42;
const FIRST_HEAD = 16;
/** The staff's middle line, in lines and spaces from the bottom one. */
const MIDDLE_LINE = 4;
/** Stems: so far beside the middle of a head, and so far beyond the staff. Hands up, feet down. */
const STEM_SIDE = 4.6;
const STEM_BEYOND = 14;

interface Mark {
  readonly voice: Voice;
  readonly bar: number;
  /** Written place as a share of the bar; the place where it sounded for what is not written. */
  readonly share: number;
  readonly kind: 'stroke' | 'missed' | 'extra';
  readonly offsetMs: number;
}

/** Bar lines of the take in seconds, the last one too. */
function barLines({ tempo, asked }: FullReport): readonly number[] {
  const starts = tempo.map((point) => point.timeSeconds);
  const last = tempo.at(-1);
  return last ? [...starts, last.timeSeconds + (60 / last.bpm) * asked.quartersInBar] : starts;
}

/** Every mark of the take with its bar. */
function marksOf(report: FullReport): readonly Mark[] {
  const lines = barLines(report);
  const placed = (voice: Voice, seconds: number, kind: Mark['kind'], offsetMs: number): Mark[] => {
    // A stroke on the bar line belongs after it, whatever rounding does.
    const bar = lines.findLastIndex((start) => start <= seconds + 0.004);
    if (bar < 0 || bar + 1 >= lines.length) return [];
    const share = (seconds - lines[bar]!) / (lines[bar + 1]! - lines[bar]!);
    return [{ voice, bar, share, kind, offsetMs }];
  };
  return [
    ...report.strokes.flatMap(({ voice, timeSeconds, offsetMs }) =>
      offsetMs === null
        ? placed(voice, timeSeconds, 'extra', 0)
        : placed(voice, timeSeconds - offsetMs / 1000, 'stroke', offsetMs),
    ),
    ...report.missed.flatMap(({ voice }, i) => placed(voice, report.missedSeconds[i]!, 'missed', 0)),
  ];
}

const barWidth = (PAGE.width - 2 * PAGE.margin) / BARS_IN_ROW;

function drawMark(mark: Mark, x: number, staffBottom: number): string {
  const y = staffBottom - (STAFF_POSITIONS[mark.voice] * STAFF_SPACE) / 2;
  if (mark.kind === 'missed') return noteHead(mark.voice, x, y, { colour: COLOURS.accent, outline: true });
  if (mark.kind === 'extra') {
    const plus = label('+', x, y - 6, { 'font-size': 13, 'text-anchor': 'middle', fill: COLOURS.accent });
    return noteHead(mark.voice, x, y, { colour: COLOURS.accent }) + plus;
  }
  const shift = Math.max(-FARTHEST_MS, Math.min(FARTHEST_MS, mark.offsetMs)) * PIXELS_PER_MS;
  const isFoot = STAFF_POSITIONS[mark.voice] < MIDDLE_LINE - 2;
  const end = isFoot ? staffBottom + STEM_BEYOND : staffBottom - 4 * STAFF_SPACE - STEM_BEYOND;
  const stemX = x + shift + (isFoot ? -STEM_SIDE : STEM_SIDE);
  const stem = line(stemX, y, stemX, end, { stroke: COLOURS.ink, 'stroke-width': 1 });
  const way = line(x, y, x + shift, y, { stroke: COLOURS.ink, 'stroke-width': 0.8 });
  return (
    noteHead(mark.voice, x, y, { colour: COLOURS.faint }) +
    way +
    stem +
    noteHead(mark.voice, x + shift, y, { colour: COLOURS.ink })
  );
}

function drawStaff(bars: number, top: number): string {
  const right = PAGE.margin + bars * barWidth;
  const bottom = top + 4 * STAFF_SPACE;
  const thin = { stroke: COLOURS.soft, 'stroke-width': 0.6 };
  const lines = [0, 1, 2, 3, 4].map((i) => {
    const y = top + i * STAFF_SPACE;
    return line(PAGE.margin, y, right, y, thin);
  });
  const barLinesDrawn = Array.from({ length: bars + 1 }, (_, i) => {
    const x = PAGE.margin + i * barWidth;
    return line(x, top, x, bottom, { stroke: COLOURS.ink, 'stroke-width': 1 });
  });
  return lines.join('') + barLinesDrawn.join('');
}

function drawCounting(report: FullReport, bars: readonly number[], top: number): string {
  const { beatsInBar, beats = Array.from({ length: beatsInBar }, (_, beat) => beat / beatsInBar) } =
    report.asked;
  const y = top + 4 * STAFF_SPACE + 31;
  const small = { 'font-size': 11, fill: COLOURS.soft, 'text-anchor': 'middle' };
  return bars
    .flatMap((bar, index) => {
      const left = PAGE.margin + index * barWidth;
      const number = report.playedBars[bar];
      const name =
        number == null ? '' : label(`${number}`, left + 3, top - 20, { 'font-size': 11, fill: COLOURS.soft });
      const counts = beats.map((share, beat) =>
        label(`${beat + 1}`, left + FIRST_HEAD + share * (barWidth - FIRST_HEAD), y, small),
      );
      return [name, ...counts];
    })
    .join('');
}

function drawRow(report: FullReport, marks: readonly Mark[], bars: readonly number[], top: number): string {
  const staffTop = top + STAFF_TOP;
  const bottom = staffTop + 4 * STAFF_SPACE;
  // What is not written comes last, on top.
  const own = marks
    .filter((mark) => bars.includes(mark.bar))
    .toSorted((a, b) => Number(a.kind === 'extra') - Number(b.kind === 'extra'));
  const drawn = own.map((mark) => {
    const left = PAGE.margin + bars.indexOf(mark.bar) * barWidth;
    return drawMark(mark, left + FIRST_HEAD + mark.share * (barWidth - FIRST_HEAD), bottom);
  });
  return drawStaff(bars.length, staffTop) + drawCounting(report, bars, staffTop) + drawn.join('');
}

function drawLegend(words: PictureWords, top: number): string {
  const y = top + 8;
  const ms = 20;
  const text = { 'font-size': 12, fill: COLOURS.soft };
  const at = (x: number) => PAGE.margin + x;
  const shift = ms * PIXELS_PER_MS;
  return [
    noteHead('snare', at(6), y, { colour: COLOURS.faint }),
    line(at(6), y, at(6) + shift, y, { stroke: COLOURS.ink, 'stroke-width': 0.8 }),
    noteHead('snare', at(6) + shift, y, { colour: COLOURS.ink }),
    label(words.displacement({ ms }), at(32), y + 4, text),
    noteHead('snare', at(280), y, { colour: COLOURS.accent, outline: true }),
    label(words.missedMark, at(294), y + 4, text),
    noteHead('snare', at(400), y, { colour: COLOURS.accent }),
    label('+', at(400), y - 7, { 'font-size': 13, 'text-anchor': 'middle', fill: COLOURS.accent }),
    label(words.extraMark, at(414), y + 4, text),
  ].join('');
}

/** A part of the picture and how tall it is. */
export interface Drawn {
  readonly svg: string;
  /** Pixels. */
  readonly height: number;
}

/** The rows with their legend, from `top` on. */
export function drawRows(report: FullReport, words: PictureWords, top: number): Drawn {
  const marks = marksOf(report);
  const shown = Math.min(report.tempo.length, MOST_ROWS * BARS_IN_ROW);
  const rows = Array.from({ length: Math.ceil(shown / BARS_IN_ROW) }, (_, row) =>
    Array.from(
      { length: Math.min(BARS_IN_ROW, shown - row * BARS_IN_ROW) },
      (_unused, i) => row * BARS_IN_ROW + i,
    ),
  );
  const svg = rows.map((bars, row) => drawRow(report, marks, bars, top + row * ROW_HEIGHT)).join('');
  const height = rows.length * ROW_HEIGHT + 26;
  const more = report.tempo.length - shown;
  const rest =
    more > 0
      ? label(words.moreBars({ bars: more }), PAGE.width - PAGE.margin, top + height - 14, {
          'font-size': 12,
          fill: COLOURS.soft,
          'text-anchor': 'end',
        })
      : '';
  return { svg: element('g', {}, svg, drawLegend(words, top + height - 26), rest), height };
}
