/**
 * How the product's own recordings are heard and judged: exercises of every demo lesson as the page plays them, in loop and
 * in four and two, dry and with the room, on the built-in kit.
 *
 * Conventions: an exercise is played in one of the four ways, the next one in the next; WHOLE=1 plays each in all of them, and
 * SOUND_FONT=FILE on a SoundFont's kit. Balance is the distance of a voice's level from the median of what is written, in dB.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { parseLesson, perform } from '@shedbook/core';
import { judge } from '@shedbook/judge';
import { listen } from '@shedbook/listen';
import { median } from '@shedbook/signal';
import { createKit, loadSoundFontKit, render } from '@shedbook/sound';
import { RATE } from './takes.mjs';

export const name = "listen: the product's own recordings";

const LOOP_BARS = 8;
const LOOP = {
  name: 'loop',
  sections: [{ play: /** @type {const} */ ('pattern'), bars: LOOP_BARS, ending: null }],
  repeat: 1,
  countInBars: 1,
};
/** A balance this far off is told, dB. */
const OFF_DB = 1.5;
const LEVEL = 'intermediate';
const DEMO = new URL('../demo/', import.meta.url);

function kitOf() {
  const file = process.env.SOUND_FONT;
  return file
    ? loadSoundFontKit(readFileSync(file), { sampleRateHz: RATE })
    : createKit({ sampleRateHz: RATE });
}

/** Every exercise of the demo in each of the ways that it is to be played in. */
function tasks() {
  const files = readdirSync(DEMO).filter((file) => file.endsWith('.lesson.yaml'));
  return files
    .flatMap((file) => {
      const { lesson } = parseLesson(readFileSync(new URL(file, DEMO), 'utf8'), file);
      if (!lesson) throw new Error(`${file} cannot be read`);
      return lesson.exercises.map(({ number }) => ({ lesson, exercise: number }));
    })
    .flatMap(({ lesson, exercise }, turn) => {
      const fourAndTwo = lesson.forms.find((form) => form.name === 'four and two');
      const ways = [LOOP, fourAndTwo ?? LOOP].flatMap((form) =>
        [false, true].map((room) => ({ form, room })),
      );
      const wanted = process.env.WHOLE ? ways : [ways[turn % ways.length]];
      return wanted.flatMap((way) =>
        way ? [{ asked: { lesson, exercise, form: way.form }, room: way.room }] : [],
      );
    });
}

/** Distances of voices from what is written, in dB. */
function balanceErrors(report, { lesson }, strokes) {
  const levelOf = (voice) =>
    median(strokes.filter((stroke) => stroke.voice === voice).map(({ levelDb }) => levelDb));
  return Object.entries(report.balanceDb)
    .filter(([voice, db]) => voice !== lesson.lead && Number.isFinite(db))
    .map(([voice, db]) => Math.abs(db - (levelOf(voice) - levelOf(lesson.lead))));
}

/** Rows of the table. */
export async function run() {
  const kit = kitOf();
  const sum = { takes: 0, refused: 0, written: 0, missed: 0, extra: 0, praised: 0 };
  const balance = [];
  for (const { asked, room } of tasks()) {
    const performance = perform(asked.lesson, asked);
    const { left, right } = render(performance, { kit, room });
    const listened = listen(
      left.map((sample, i) => (sample + (right[i] ?? 0)) / 2),
      RATE,
      asked,
    );
    sum.takes += 1;
    sum.written += performance.strokes.filter(({ voice }) => voice !== 'click').length;
    sum.praised += judge(asked, listened, LEVEL).verdict.is === 'clean' ? 1 : 0;
    if (!listened.report) {
      sum.refused += 1;
      continue;
    }
    sum.missed += listened.report.missed.length;
    sum.extra += listened.report.strokes.filter((stroke) => !stroke.written).length;
    balance.push(...balanceErrors(listened.report, asked, performance.strokes));
  }
  const share = (count, of) => ({ value: (100 * count) / Math.max(1, of), unit: `% of ${of}` });
  return [
    { what: 'recordings refused', ...share(sum.refused, sum.takes) },
    { what: 'written strokes missed', ...share(sum.missed, sum.written) },
    { what: 'strokes invented', ...share(sum.extra, sum.written) },
    {
      what: `voices over ${OFF_DB} dB from what is written`,
      ...share(balance.filter((db) => db > OFF_DB).length, balance.length),
    },
    { what: 'the middle distance from what is written', value: median(balance), unit: 'dB' },
    { what: 'first sentences that are a praise', ...share(sum.praised, sum.takes) },
  ];
}
