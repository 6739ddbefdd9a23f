/** The table of voices: heard, added, lateness, spread. */
import { type FullReport, isGuess, type Voice, type VoiceReport } from '@shedbook/core';
import { COLOURS, PAGE } from './look.data.ts';
import type { PictureWords } from './picture-words.ts';
import type { Drawn } from './staff-rows.ts';
import { label, line } from './svg.ts';

const ROW = 26;
const COLUMNS = [0, 150, 270, 350, 500, 600] as const;
const WIDTH = 700;

function cellsOf(voice: Voice, of: VoiceReport, report: FullReport, words: PictureWords): readonly string[] {
  if (isGuess(report, voice)) return [words.voices[voice], ...COLUMNS.slice(1).map(() => '–')];
  const level = report.balanceDb[voice];
  return [
    words.voices[voice],
    words.heardOf({ hits: of.hits, due: of.hits + of.missed }),
    of.extra === 0 ? '–' : `${of.extra}`,
    of.hits > 0 ? words.lateness(of.offsetMs.median) : '–',
    of.hits > 0 ? words.spreadMs({ ms: of.offsetMs.spread }) : '–',
    level === undefined ? '–' : words.decibels({ db: level }),
  ];
}

/** The table, from `top` on. */
export function drawTable(report: FullReport, words: PictureWords, top: number): Drawn {
  const { voice, heard, extra, time, spread, level } = words;
  const voices = Object.entries(report.voices) as [Voice, VoiceReport][];
  const rows = [
    [voice, heard, extra, time, spread, level],
    ...voices.map(([name, of]) => cellsOf(name, of, report, words)),
  ];
  const svg = rows.map((cells, row) => {
    const y = top + row * ROW + 16;
    const look = row === 0 ? { 'font-size': 12, fill: COLOURS.soft } : { 'font-size': 15, fill: COLOURS.ink };
    const rule = line(PAGE.margin, y + 9, PAGE.margin + WIDTH, y + 9, {
      stroke: COLOURS.faint,
      'stroke-width': row === 0 ? 1 : 0.5,
    });
    return cells.map((cell, i) => label(cell, PAGE.margin + (COLUMNS[i] ?? 0), y, look)).join('') + rule;
  });
  return { svg: svg.join(''), height: rows.length * ROW + 14 };
}
