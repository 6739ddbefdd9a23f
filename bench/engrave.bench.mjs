/**
 * A sheet of 24 exercises to PDF, against verovio engraving the same tiles alone, and a book of 200, in processor time: the
 * two in turn, the best of each, since what else runs on the machine only ever takes longer.
 */

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { createEngraver, createFonts, FONT_MODULES, layOutSheet, writePdf } from '@shedbook/engrave';
import { SHEET_WORDS } from '@shedbook/words';
import { lessonOf } from './material.mjs';

const require = createRequire(new URL('../packages/engrave/package.json', import.meta.url));
const { enableLog, LOG_OFF, VerovioToolkit } = await import('verovio/esm');
const { default: createModule } = await import('verovio/wasm');

export const name = 'engrave';

const RUNS = 12;
const CELLS = ['x..', '..x', 'x.x', '...', '.x.', 'xxx', '.xx'];

/** 24 bars of four cells, no two alike. */
function lesson() {
  const bars = Array.from({ length: 24 }, (_, i) =>
    [i, 3 * i + 1, 5 * i + 2, i * i].map((n) => CELLS[n % CELLS.length]).join(' '),
  );
  return lessonOf(JSON.stringify({ title: 'Twenty-four', feel: 'triplet', exercises: bars }));
}

/** A book of 200 exercises in eight sections. */
function book() {
  const { exercises } = lesson();
  const bars = exercises.map(({ parts }) => parts[0]?.pattern.bars[0]?.map(({ text }) => text).join(' '));
  const sections = Array.from({ length: 8 }, (_, s) => ({
    heading: `Part ${s + 1}`,
    text: 'Sing each bar before you play it.',
    exercises: Array.from({ length: 25 }, (__, i) => bars[(25 * s + 7 * i) % bars.length]),
  }));
  return lessonOf(JSON.stringify({ title: 'Book', feel: 'triplet', sections }));
}

/** A toolkit that also notes what it was asked to engrave. */
function recording(toolkit, calls) {
  return {
    setOptions: (options) => {
      calls.push({ options });
      toolkit.setOptions(options);
    },
    loadData: (data) => {
      Object.assign(calls.at(-1), { data });
      return toolkit.loadData(data);
    },
    renderToSVG: (page) => toolkit.renderToSVG(page),
    renderToTimemap: (options) => toolkit.renderToTimemap(options),
  };
}

/** Seconds of processor time that a task takes: what else runs on the machine is not counted. */
async function processorSeconds(task) {
  const before = process.cpuUsage();
  await task();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

/** The least that each of some tasks takes, run in turn. */
async function bestSeconds(tasks) {
  const best = tasks.map(() => Number.POSITIVE_INFINITY);
  for (let run = 0; run < RUNS; run += 1)
    for (const [index, task] of tasks.entries())
      best[index] = Math.min(best[index], await processorSeconds(task));
  return best;
}

/** The best of warm runs. */
export async function run() {
  const verovioModule = await createModule();
  enableLog(LOG_OFF, verovioModule);
  const toolkit = new VerovioToolkit(verovioModule);
  const files = Object.entries(FONT_MODULES).map(([weight, file]) => [
    weight,
    new Uint8Array(readFileSync(require.resolve(file))),
  ]);
  const fonts = createFonts(Object.fromEntries(files));
  const page = lesson();
  const calls = [];
  layOutSheet(page, { engraver: createEngraver(recording(toolkit, calls)), fonts, words: SHEET_WORDS.en });
  const alone = () => {
    for (const { options, data } of calls) {
      toolkit.setOptions(options);
      toolkit.loadData(data);
      toolkit.renderToSVG(1);
    }
  };
  const engraver = createEngraver(toolkit);
  // A new engraver each time, since one keeps the tiles that it has drawn.
  const sheet = async () =>
    writePdf(
      layOutSheet(page, { engraver: createEngraver(toolkit), fonts, words: SHEET_WORDS.en }).pages,
      fonts,
    );
  await sheet();
  const [base, whole] = await bestSeconds([alone, sheet]);
  const large = book();
  const printBook = () =>
    writePdf(layOutSheet(large, { engraver, fonts, words: SHEET_WORDS.en }).pages, fonts);
  const bookSeconds = await processorSeconds(printBook);
  const what = `${page.exercises.length} exercises to PDF, warm`;
  return [
    { what: `verovio alone, the same ${calls.length} tiles`, value: base, unit: 's' },
    { what, value: whole, unit: 's', ratioTo: 'verovio alone', ratio: whole / base },
    { what: `${large.exercises.length} exercises in eight sections to PDF`, value: bookSeconds, unit: 's' },
  ];
}
