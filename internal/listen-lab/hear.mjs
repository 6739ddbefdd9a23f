/**
 * Prints how well takes are written down without a lesson: the share of bars in which a voice has exactly the strokes
 * that were played, and whether tempo (within 5 %) and meter were found.
 *
 * Usage: node hear.mjs [FOLDER...]   (folders made by takes.py; build the packages first)
 *
 * With NOTES=1 only the true strokes of the folders' takes are taken, as a kit would send them.
 *
 * Folders are heard with the network that learnt the training split alone. The demo's lessons are played first, as notes,
 * each exercise four times by somebody whose strokes scatter by 9 ms and 1.5 dB and whose tempo drifts by up to 3 %.
 * A bar that was heard is the one that begins within 0.4 beats of the bar that was played.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Bpm, isVoice, parseLesson, perform, seededRandom, struckSlots } from '@shedbook/core';
import { StrokeNetwork, TakeListener, transcribeNotes, unpackWeights } from '@shedbook/listen';
import { WEIGHTS } from './held-back.weights.mjs';
import { readWav } from './read-wav.mjs';

const network = new StrokeNetwork(unpackWeights(WEIGHTS));
const NEAR_BEATS = 0.4;
const DEMO = new URL('../../demo/', import.meta.url);

/** Places of a bar, as beat and twelfths of it, in one text. */
const places = (cells) =>
  cells
    .flatMap((cell, beat) =>
      struckSlots(cell).map((slot) => `${beat + 1}:${(slot * 12) / cell.marks.length}`),
    )
    .sort()
    .join(' ');

class Tally {
  counts = {};
  add(key, isRight) {
    this.counts[key] ??= { right: 0, all: 0 };
    this.counts[key].right += isRight ? 1 : 0;
    this.counts[key].all += 1;
  }
  print(title) {
    console.log(title);
    for (const key of Object.keys(this.counts).sort()) {
      const { right, all } = this.counts[key];
      console.log(`  ${key.padEnd(18)}${(right / all).toFixed(3)} of ${all}`);
    }
  }
}

/** Compares what was written down with bars of each voice, `barAt` giving the index of a bar of the truth. */
function compare(tally, heard, { truth, startOf, beatSeconds, beatsInBar }) {
  // A shuffle may be written in 4/4: what is compared is the beat, dotted or not.
  const pulse = heard ? heard.bpm / (heard.meter.compound ? 1.5 : 1) : Number.NaN;
  tally.add('tempo', Math.abs(Math.log((pulse * beatSeconds) / 60)) < 0.05);
  tally.add('meter', heard?.meter.beats.length === beatsInBar);
  for (const [voice, bars] of truth)
    bars.forEach((due, index) => {
      const at = heard
        ? heard.bars.findIndex(
            (bar) => Math.abs(bar.startSeconds - startOf(index)) < NEAR_BEATS * beatSeconds,
          )
        : -1;
      const cells =
        at < 0 ? null : (heard.parts.find((part) => part.voice === voice)?.pattern.bars[at] ?? []);
      const isRight = cells !== null && places(cells) === [...due].sort().join(' ');
      tally.add('bars', isRight);
      tally.add(`bars ${voice}`, isRight);
    });
  if (heard)
    tally.add(
      'no voice invented',
      heard.parts.every(({ voice }) => truth.has(voice)),
    );
}

/** Places of strokes by voice and bar. */
function truthOf(strokes, bars) {
  const truth = new Map();
  for (const { voice, bar, place } of strokes) {
    if (!truth.has(voice))
      truth.set(
        voice,
        Array.from({ length: bars }, () => []),
      );
    truth.get(voice)[bar].push(place);
  }
  return truth;
}

function playDemo(tally, name) {
  const path = new URL(`${name}.lesson.yaml`, DEMO);
  const { lesson } = parseLesson(readFileSync(path, 'utf8'), path.pathname);
  const beatsInBar = lesson.meter.beats.length;
  for (const { number, parts } of lesson.exercises) {
    const random = seededRandom(`hear ${name} ${number}`);
    const scatter = () => Array.from({ length: 12 }, () => random.next()).reduce((a, b) => a + b) - 6;
    const bars = 4 * parts[0].pattern.bars.length;
    const bpm = Bpm(lesson.tempo.startBpm * (0.9 + 0.5 * random.next()));
    const form = {
      name: 'four times',
      sections: [{ play: 'pattern', bars, ending: null }],
      repeat: 1,
      countInBars: 0,
    };
    const { strokes, durationSeconds } = perform(lesson, { exercise: number, form, bpm });
    const drift = 0.06 * (random.next() - 0.5);
    const at = (seconds) => 1.3 + seconds * (1 + (drift * seconds) / durationSeconds / 2);
    const own = strokes.filter(({ voice }) => isVoice(voice));
    const notes = own
      .map(({ voice, timeSeconds, levelDb }) => ({
        voice,
        timeSeconds: at(timeSeconds) + 0.009 * scatter(),
        levelDb: levelDb + 1.5 * scatter(),
      }))
      .toSorted((a, b) => a.timeSeconds - b.timeSeconds);
    const truth = truthOf(
      own.map(({ voice, written, slots }) => ({
        voice,
        bar: written.bar - 1,
        place: `${written.beat}:${((written.slot - 1) * 12) / slots}`,
      })),
      bars,
    );
    const startOf = (bar) => at((bar * durationSeconds) / bars);
    const beatSeconds = at(durationSeconds) - at(0);
    compare(tally, transcribeNotes(notes).transcript, {
      truth,
      startOf,
      beatSeconds: beatSeconds / bars / beatsInBar,
      beatsInBar,
    });
  }
}

function hearFolder({ sound, notes }, folder) {
  for (const file of readdirSync(folder).filter((each) => each.endsWith('.json'))) {
    const take = JSON.parse(readFileSync(join(folder, file), 'utf8'));
    const { beats, strokes } = take.truth;
    const beatsInBar = take.beatsInBar;
    const beatSeconds = (beats.at(-1) - beats[0]) / (beats.length - 1);
    const barOf = ({ ideal, written }) => {
      const beat = beats.findLastIndex((each) => each <= ideal + 0.03 * beatSeconds);
      return Math.floor((beat - (written.beat - 1) + beatsInBar / 2) / beatsInBar);
    };
    const slotsOf = ({ voice, written }) =>
      take.strokes.find(
        (one) =>
          one.voice === voice &&
          one.bar === written.bar &&
          one.beat === written.beat &&
          one.slot === written.slot,
      )?.slots ?? 1;
    const own = strokes
      .filter(({ written }) => written)
      .map((one) => ({
        voice: one.voice,
        bar: barOf(one),
        place: `${one.written.beat}:${((one.written.slot - 1) * 12) / slotsOf(one)}`,
      }));
    const truth = truthOf(own, Math.max(...own.map(({ bar }) => bar)) + 1);
    const startOf = (bar) => beats[Math.min(beats.length - 1, bar * beatsInBar)];
    const due = { truth, startOf, beatSeconds, beatsInBar };
    const sent = strokes.map(({ t, voice, level }) => ({ timeSeconds: t, voice, levelDb: level }));
    const ordered = sent.toSorted((a, b) => a.timeSeconds - b.timeSeconds);
    compare(notes, transcribeNotes(ordered).transcript, due);
    if (!sound) continue;
    const listener = new TakeListener(44_100, { network });
    const samples = readWav(join(folder, file.replace('.json', '.wav')));
    for (let at = 0; at < samples.length; at += 65_536) listener.push(samples.subarray(at, at + 65_536));
    compare(sound, listener.transcribe().transcript, due);
  }
}

for (const name of ['first-swing', 'jazz-waltz', 'shuffle', 'bossa', 'funk']) {
  const tally = new Tally();
  playDemo(tally, name);
  tally.print(`${name}, as notes`);
}
for (const folder of process.argv.slice(2)) {
  const tallies = { notes: new Tally(), sound: process.env.NOTES ? null : new Tally() };
  hearFolder(tallies, folder);
  tallies.notes.print(`${folder}, as notes`);
  tallies.sound?.print(`${folder}, as a recording`);
}
