/**
 * The report as a picture: a printed page that stands alone, for the student's folder or the practice page.
 *
 * Conventions: one SVG document, no scripts, no fonts inside; ink on paper and one accent, so that it can be
 * printed in one colour too.
 */

import { escapeXml, type FullReport } from '@shedbook/core';
import { drawLadder } from './ladder.ts';
import { COLOURS, FONT, PAGE } from './look.data.ts';
import type { PictureText, PictureWords } from './picture-words.ts';
import { type Drawn, drawRows } from './staff-rows.ts';
import { element, label, wrapWords } from './svg.ts';
import { drawTable } from './table.ts';
import { drawTempo } from './tempo-curve.ts';

const TITLE_LINE = 34;
const SENTENCE_LINE = 28;
const SENTENCE_CHARACTERS = 76;
const SMALL_CHARACTERS = 110;
const GRAPHS_HEIGHT = 250;

function drawSentences(sentences: readonly string[], top: number): Drawn {
  const lines = sentences.flatMap((sentence, i) =>
    wrapWords(sentence, SENTENCE_CHARACTERS).map((text) => ({ text, first: i === 0 })),
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

function drawHeader({ title, summary }: PictureText, top: number): Drawn {
  const svg = [
    label(title, PAGE.margin, top + TITLE_LINE, { 'font-size': 27, 'font-weight': 600, fill: COLOURS.ink }),
    label(summary, PAGE.margin, top + TITLE_LINE + 24, { 'font-size': 14, fill: COLOURS.soft }),
  ];
  return { svg: svg.join(''), height: TITLE_LINE + 44 };
}

function drawNotHeard(unheard: readonly string[], top: number): Drawn {
  const lines = unheard.flatMap((sentence) => wrapWords(sentence, SMALL_CHARACTERS));
  const svg = lines.map((text, i) =>
    label(text, PAGE.margin, top + i * 18 + 14, { 'font-size': 13, fill: COLOURS.soft }),
  );
  return { svg: svg.join(''), height: lines.length * 18 };
}

function drawGraphs(report: FullReport, words: PictureWords, top: number): Drawn {
  const half = (PAGE.width - 2 * PAGE.margin) / 2;
  const box = { y: top, height: GRAPHS_HEIGHT };
  const ladder = drawLadder(report, words, { ...box, x: PAGE.margin, width: half });
  const tempo = drawTempo(report, words, { ...box, x: PAGE.margin + half + 12, width: half - 12 });
  return { svg: ladder + tempo, height: GRAPHS_HEIGHT + 16 };
}

/** The page as SVG text. */
export function drawReport(report: FullReport, text: PictureText): string {
  const { title, sentences, unheard, words } = text;
  const parts = [
    (top: number) => drawHeader(text, top),
    (top: number) => drawSentences(sentences, top),
    (top: number) => drawRows(report, words, top),
    (top: number) => drawTable(report, words, top + 14),
    (top: number) => drawGraphs(report, words, top + 14),
    (top: number) => drawNotHeard(unheard, top),
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
    element('title', {}, escapeXml(title)),
    page,
    ...drawn,
  );
}
