/** The balance ladder: how loud each voice is, as asked and as played, loudest on top. */
import { type FullReport, isGuess, type Voice } from '@shedbook/core';
import { COLOURS } from './look.data.ts';
import type { PictureWords } from './picture-words.ts';
import { element, label, line } from './svg.ts';

const STEP_DB = 6;
/** Names are at least this far apart, in pixels. */
const NAME_GAP = 15;

/** Where a part of the picture lies, in pixels. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Moves names apart from the top down, in order. */
function spreadOut(ys: readonly number[]): readonly number[] {
  const order = ys.map((y, i) => ({ y, i })).toSorted((a, b) => a.y - b.y);
  const placed = [...ys];
  let least = Number.NEGATIVE_INFINITY;
  for (const { y, i } of order) {
    placed[i] = Math.max(y, least);
    least = placed[i]! + NAME_GAP;
  }
  return placed;
}

/** The ladder in a box. */
export function drawLadder(report: FullReport, words: PictureWords, { x, y, width, height }: Box): string {
  const { balanceDb, lessonBalanceDb } = report;
  const leadAsked = lessonBalanceDb[report.lead] ?? 0;
  const voices = (Object.keys(balanceDb) as Voice[]).flatMap((voice) => {
    const asked = lessonBalanceDb[voice];
    return asked === undefined || isGuess(report, voice)
      ? []
      : [{ voice, asked: asked - leadAsked, played: balanceDb[voice]! }];
  });
  const levels = voices.flatMap(({ asked, played }) => [asked, played]);
  const top = STEP_DB * Math.ceil(Math.max(0, ...levels) / STEP_DB);
  const bottom = Math.min(top - 2 * STEP_DB, STEP_DB * Math.floor(Math.min(0, ...levels) / STEP_DB));
  const inner = { top: y + 44, height: height - 60 };
  const at = (db: number) => inner.top + ((top - db) / (top - bottom)) * inner.height;
  const [left, right] = [x + 52, x + width - 112];
  const small = { 'font-size': 11, fill: COLOURS.soft };
  const rungs = Array.from({ length: (top - bottom) / STEP_DB + 1 }, (_, i) => {
    const db = top - i * STEP_DB;
    return (
      line(left - 8, at(db), right + 8, at(db), { stroke: COLOURS.faint, 'stroke-width': 0.6 }) +
      label(words.decibels({ db }), left - 14, at(db) + 4, {
        ...small,
        'text-anchor': 'end',
      })
    );
  });
  const names = spreadOut(voices.map(({ played }) => at(played)));
  const marks = voices.map(({ voice, asked, played }, i) =>
    [
      line(left + 18, at(asked), right - 18, at(played), { stroke: COLOURS.ink, 'stroke-width': 1.2 }),
      element('circle', {
        ...{ cx: left + 18, cy: at(asked), r: 5 },
        ...{ fill: COLOURS.paper, stroke: COLOURS.ink, 'stroke-width': 1.5 },
      }),
      element('circle', { cx: right - 18, cy: at(played), r: 5.5, fill: COLOURS.ink }),
      label(words.voices[voice], right + 14, names[i]! + 4, { 'font-size': 13, fill: COLOURS.ink }),
    ].join(''),
  );
  const head = { ...small, 'text-anchor': 'middle' };
  return [
    label(words.balance, x, y + 14, { 'font-size': 16, 'font-weight': 600, fill: COLOURS.ink }),
    label(words.asked, left + 18, y + 32, head),
    label(words.played, right - 18, y + 32, head),
    ...rungs,
    ...marks,
  ].join('');
}
