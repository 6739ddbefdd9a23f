/**
 * Prints how the product's own recordings are heard: exercises of every demo lesson, as the page plays them.
 *
 * Usage: node model.mjs [SOUNDFONT]   (build the packages first; NETWORK=FILE and SHIPPED as in evaluate.mjs)
 *
 * Each exercise is rendered in loop, dry and in the room, by the built-in kit, and by a SoundFont's where one is named.
 * Told are what was missed or invented, and each voice's balance where it is over 1.5 dB from the median of its strokes.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { parseLesson, perform } from '@shedbook/core';
import { listen, StrokeNetwork, TakeListener, unpackWeights } from '@shedbook/listen';
import { median } from '@shedbook/signal';
import { createKit, loadSoundFontKit, render } from '@shedbook/sound';

const RATE = 44_100;
const BARS = 16;
const packed = (file) => /'([A-Za-z0-9+/=]+)'/.exec(readFileSync(file, 'utf8'))[1];
const network = process.env.NETWORK
  ? new StrokeNetwork(unpackWeights(packed(process.env.NETWORK)))
  : undefined;
const kits = { 'built in': createKit({ sampleRateHz: RATE }) };
if (process.argv[2]) kits.SoundFont = loadSoundFontKit(readFileSync(process.argv[2]), { sampleRateHz: RATE });

function heard(mono, asked) {
  if (!network) return listen(mono, RATE, asked);
  const listener = new TakeListener(RATE, { network });
  listener.push(mono);
  return listener.finish(asked);
}

/** How often each voice is in a list. */
function counted(list) {
  const times = {};
  for (const { voice } of list) times[voice] = (times[voice] ?? 0) + 1;
  return times;
}

const sum = { refused: 0, missed: 0, extra: 0, written: 0, takes: 0 };
const folder = new URL('../../demo/', import.meta.url);
for (const file of readdirSync(folder).filter((name) => name.endsWith('.lesson.yaml'))) {
  const { lesson } = parseLesson(readFileSync(new URL(file, folder), 'utf8'), file);
  const numbers = (process.env.EXERCISES ?? '2,7,11').split(',').map(Number);
  for (const exercise of numbers.filter((n) => n <= lesson.exercises.length)) {
    const section = { play: 'pattern', bars: BARS, ending: null };
    const form = { name: 'loop', sections: [section], repeat: 1, countInBars: 1 };
    const asked = { lesson, exercise, form };
    const performance = perform(lesson, asked);
    for (const [name, kit] of Object.entries(kits)) {
      for (const room of [true, false]) {
        const { left, right } = render(performance, { kit, room });
        const { report, refusal } = heard(
          left.map((sample, i) => (sample + right[i]) / 2),
          asked,
        );
        const written = performance.strokes.filter(({ voice }) => voice !== 'click').length;
        sum.takes += 1;
        sum.written += written;
        const where = `${file} ${exercise} ${name}${room ? ' in the room' : ' dry'}`;
        if (!report) {
          sum.refused += 1;
          console.log(`${where}: refused, ${refusal.fact}`);
          continue;
        }
        const extra = report.strokes.filter((stroke) => !stroke.written);
        sum.missed += report.missed.length;
        sum.extra += extra.length;
        const count = (list) =>
          Object.entries(counted(list))
            .map(([voice, times]) => `${voice} ${times}`)
            .join(', ');
        const level = (voice) =>
          median(
            performance.strokes.filter((stroke) => stroke.voice === voice).map(({ levelDb }) => levelDb),
          );
        const out = Object.entries(report.balanceDb)
          .map(([voice, db]) => [voice, db - (level(voice) - level(lesson.lead))])
          .filter(([, db]) => Math.abs(db) > 1.5)
          .map(([voice, db]) => `${voice} ${db.toFixed(1)} dB`);
        if (report.missed.length + extra.length + out.length > 0)
          console.log(
            `${where}: of ${written} missed ${report.missed.length} (${count(report.missed)}), invented ${extra.length} (${count(extra)}); balance ${out.join(', ')}`,
          );
      }
    }
  }
}
console.log(
  `${sum.takes} takes, ${sum.refused} refused; of ${sum.written} strokes ${sum.missed} missed, ${sum.extra} invented`,
);
