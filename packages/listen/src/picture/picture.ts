/**
 * The report as a picture: a printed page that stands alone, for the student's folder or the practice page.
 *
 * Conventions: one SVG document, no scripts, no fonts inside; ink on paper and one accent, so that it can be
 * printed in one colour too.
 */

import { remarksOn } from '../remarks/remarks.ts';
import { type SayOptions, SENTENCES, sayRemark } from '../remarks/say.ts';
import { unheardSentences } from '../remarks/unheard.ts';
import { wordsOf } from '../remarks/words.ts';
import type { FullReport } from '../report/take-report.ts';
import { drawLadder } from './ladder.ts';
import { COLOURS, FONT, PAGE } from './look.data.ts';
import { type Drawn, drawRows } from './staff-rows.ts';
import { element, escapeXml, label, wrapWords } from './svg.ts';
import { drawTable } from './table.ts';
import { drawTempo } from './tempo-curve.ts';

const TITLE_LINE = 34;
const SENTENCE_LINE = 28;
const SENTENCE_CHARACTERS = 76;
const SMALL_CHARACTERS = 110;
const GRAPHS_HEIGHT = 250;

/** For whom, in which language, and what the page is called. */
export interface PictureOptions extends SayOptions {
  readonly title: string;
}

function drawSentences(report: FullReport, options: PictureOptions, top: number): Drawn {
  const remarks = remarksOn(report, options.level).slice(0, SENTENCES);
  const lines = remarks.flatMap((remark, i) =>
    wrapWords(sayRemark(remark, options.language), SENTENCE_CHARACTERS).map((text) => ({
      text,
      first: i === 0,
    })),
  );
  const svg = lines.map(({ text, first }, i) =>
    label(text, PAGE.margin, top + i * SENTENCE_LINE + 20, {
      'font-size': 19,
      'font-weight': first ? 600 : 400,
      fill: COLOURS.ink,
    }),
  );
  return { svg: svg.join(''), height: lines.length * SENTENCE_LINE + 14 };
}

function drawHeader(report: FullReport, { title, language }: PictureOptions, top: number): Drawn {
  const words = wordsOf(language);
  const { alignment, swingRatio, asked } = report;
  const swing = swingRatio && asked.swingRatio !== null ? words.number(swingRatio.median, 2) : null;
  const summary = words.report.summary(
    words.number(alignment.bpm, 1),
    words.number(alignment.startSeconds, 1),
    swing,
  );
  const svg = [
    label(title, PAGE.margin, top + TITLE_LINE, { 'font-size': 27, 'font-weight': 600, fill: COLOURS.ink }),
    label(summary, PAGE.margin, top + TITLE_LINE + 24, { 'font-size': 14, fill: COLOURS.soft }),
  ];
  return { svg: svg.join(''), height: TITLE_LINE + 44 };
}

function drawNotHeard(report: FullReport, { language }: PictureOptions, top: number): Drawn {
  const lines = unheardSentences(report, language).flatMap((sentence) =>
    wrapWords(sentence, SMALL_CHARACTERS),
  );
  const svg = lines.map((text, i) =>
    label(text, PAGE.margin, top + i * 18 + 14, { 'font-size': 13, fill: COLOURS.soft }),
  );
  return { svg: svg.join(''), height: lines.length * 18 };
}

function drawGraphs(report: FullReport, options: PictureOptions, top: number): Drawn {
  const words = wordsOf(options.language);
  const half = (PAGE.width - 2 * PAGE.margin) / 2;
  const box = { y: top, height: GRAPHS_HEIGHT };
  const ladder = drawLadder(report, words, { ...box, x: PAGE.margin, width: half });
  const tempo = drawTempo(report, words, { ...box, x: PAGE.margin + half + 12, width: half - 12 });
  return { svg: ladder + tempo, height: GRAPHS_HEIGHT + 16 };
}

/** The page as SVG text. */
export function drawReport(report: FullReport, options: PictureOptions): string {
  const words = wordsOf(options.language);
  const parts = [
    (top: number) => drawHeader(report, options, top),
    (top: number) => drawSentences(report, options, top),
    (top: number) => drawRows(report, words, top),
    (top: number) => drawTable(report, words, top + 14),
    (top: number) => drawGraphs(report, options, top + 14),
    (top: number) => drawNotHeard(report, options, top),
  ];
  let top: number = PAGE.margin / 2;
  const drawn: string[] = [];
  for (const part of parts) {
    const { svg, height } = part(top);
    drawn.push(svg);
    top += height + 10;
  }
  const height = top + PAGE.margin / 2;
  const page = element('rect', { width: PAGE.width, height, fill: COLOURS.paper });
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      ...{ width: PAGE.width, height, viewBox: `0 0 ${PAGE.width} ${Math.round(height)}` },
      ...{ 'font-family': FONT, role: 'img' },
    },
    element('title', {}, escapeXml(options.title)),
    page,
    ...drawn,
  );
}
