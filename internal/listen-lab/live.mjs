/**
 * Prints how soon a live listener says a stroke and how well its marks agree with the report of the same take.
 *
 * Usage: node live.mjs FOLDER...   (folders made by takes.py; build the packages first)
 *
 * A take is handed over in blocks of 128 samples, its bars announced as they truly were. The delay is from a stroke to the
 * end of the block with which it is said: what the listener needs to hear, without the time that it computes. Takes in
 * another form than a loop are left out.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Bpm, Hertz, parseLesson, Seconds } from '@shedbook/core';
import { createLiveListener } from '@shedbook/listen';
import { quantile } from '@shedbook/signal';
import { readWav } from './read-wav.mjs';

const RATE = 44_100;
const BLOCK = 128;
const delaysMs = [];
const counts = { live: 0, report: 0, both: 0 };

const nameOf = (voice, bar, { beat, slot }) => [voice, bar, beat, slot].join(' ');

function measure(file) {
  const take = JSON.parse(readFileSync(file, 'utf8'));
  if (take.form !== 'loop') return;
  const { lesson } = parseLesson(take.lesson, file);
  const { beats, bpm } = take.truth;
  const inBar = take.beatsInBar;
  const sections = [{ play: 'pattern', bars: take.bars, ending: null }];
  const form = { name: 'loop', sections, repeat: 1, countInBars: 0 };
  const listener = createLiveListener(
    { lesson, exercise: 1, form, bpm: Bpm(bpm) },
    { sampleRateHz: Hertz(RATE) },
  );
  for (let beat = 0; beat + inBar < beats.length; beat += inBar)
    listener.bar(Seconds(beats[beat]), Bpm((60 * inBar) / (beats[beat + inBar] - beats[beat])));
  const samples = readWav(file.replace('.json', '.wav'));
  const marked = new Set();
  for (let at = 0; at < samples.length; at += BLOCK)
    for (const { timeSeconds, voice, written } of listener.push(samples.subarray(at, at + BLOCK))) {
      delaysMs.push(1000 * ((at + BLOCK) / RATE - timeSeconds));
      if (written) marked.add(nameOf(voice, written.loop * take.bars + written.bar, written));
    }
  const strokes = listener.finish().report?.strokes.filter(({ written }) => written) ?? [];
  const reported = new Set(strokes.map(({ voice, written }) => nameOf(voice, written.bar, written)));
  counts.live += marked.size;
  counts.report += reported.size;
  counts.both += [...marked].filter((name) => reported.has(name)).length;
}

for (const folder of process.argv.slice(2))
  for (const file of readdirSync(folder).filter((each) => each.endsWith('.json')))
    measure(join(folder, file));
console.log(
  `stroke to mark ${quantile(delaysMs, 0.5).toFixed(1)} ms in the middle, ${quantile(delaysMs, 0.95).toFixed(1)} at 95 %`,
);
console.log(`marks that the report has ${(counts.both / counts.live).toFixed(3)} of ${counts.live}`);
console.log(
  `strokes of the report that were marked ${(counts.both / counts.report).toFixed(3)} of ${counts.report}`,
);
