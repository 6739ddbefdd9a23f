/** How fast lessons leave and enter by open formats: a sheet of 24 exercises, and a three-minute exercise. */

import { Bpm, perform } from '@shedbook/core';
import {
  importMidi,
  readMidi,
  readMusicXml,
  writeMidi,
  writeMidiSheet,
  writeMusicXml,
  writeMxl,
} from '@shedbook/exchange';
import { median } from '@shedbook/signal';
import { XmlDocument } from 'libxml2-wasm';
import { barsOnce, lessonOf } from './material.mjs';

export const name = 'exchange';

const CELLS = ['...', 'x..', '..x', 'x.x', '.x.', 'X..', '..g', 'f..'];

/** A swing sheet of `count` bars, each with four cells. */
function sheet(count) {
  const bars = Array.from({ length: count }, (_, i) =>
    [0, 1, 2, 3].map((beat) => CELLS[(i * 3 + beat * 5 + (i >> beat)) % CELLS.length]).join(' '),
  );
  const exercises = bars.map((bar) => `  - "${bar}"`);
  return lessonOf(['title: Bench', 'feel: triplet', 'exercises:', ...exercises].join('\n'));
}

/** Median milliseconds of a call, over enough calls to fill about half a second. */
function milliseconds(call) {
  for (let warm = 0; warm < 3; warm += 1) call();
  const times = [];
  const until = performance.now() + 500;
  while (performance.now() < until || times.length < 5) {
    const start = performance.now();
    call();
    times.push(performance.now() - start);
  }
  return median(times);
}

function row(what, call, ratioTo, base) {
  const value = milliseconds(call);
  return { what, value, unit: 'ms', ...(base === undefined ? {} : { ratio: value / base, ratioTo }) };
}

function musicXmlRows(lesson) {
  const text = writeMusicXml(lesson);
  const parse = milliseconds(() => XmlDocument.fromString(text).dispose());
  return [
    row('24 exercises to MusicXML', () => writeMusicXml(lesson)),
    row('the same, compressed', () => writeMxl(text)),
    row('24 exercises from MusicXML', () => readMusicXml(text), 'libxml2 alone', parse),
  ];
}

function midiRows(lesson) {
  const once = barsOnce(1);
  const form = { ...once, repeat: 90, countInBars: 1 };
  const options = { title: lesson.title, meter: lesson.meter };
  const play = () => perform(lesson, { exercise: 1, form, bpm: Bpm(120) });
  const sections = lesson.exercises.map(({ number }) => ({
    name: `${number}`,
    meter: lesson.meter,
    performance: perform(lesson, { exercise: number, form: once }),
  }));
  const performed = play();
  const bytes = writeMidi(performed, options);
  const base = milliseconds(play);
  return [
    row('three minutes to MIDI', () => writeMidi(performed, options), 'performing it', base),
    row('three minutes from MIDI', () => readMidi(bytes), 'performing it', base),
    row('three minutes from MIDI to patterns', () => importMidi(readMidi(bytes)), 'performing it', base),
    row('24 exercises to one MIDI file', () => writeMidiSheet(sections, { title: lesson.title })),
  ];
}

/** Times in milliseconds, each beside what it stands on. */
export async function run() {
  const lesson = sheet(24);
  return [...musicXmlRows(lesson), ...midiRows(lesson)];
}
