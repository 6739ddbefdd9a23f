/** Good files of every kind that is read, and how each is changed. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { defaultForm, parseLesson, perform } from '@shedbook/core';
import { writeMidi, writeMusicXml, writeMxl } from '@shedbook/exchange';
import { encodeFlac, encodeMp3, encodeOgg, encodeWav } from '@shedbook/sound';
import { strToU8 } from 'fflate';
import {
  changeBytes,
  changeMidi,
  changeOgg,
  changeRiff,
  changeStream,
  changeTextBytes,
  changeWebm,
  changeZip,
  grow,
} from './mutate.mjs';
import { chance } from './random.mjs';
import { smallSoundFont } from './sound-font.mjs';

const LESSON = `title: First swing
by: Oda Lindqvist-Reyes
meter: 4/4
tempo: {start: 80, goal: 120, step: 8}
feel: triplet
groove:
  ride: "x.. x.x x.. x.x"
  hihat-foot: {pattern: "... x.. ... x..", level: -6}
  bass: {pattern: "x.. x.. x.. x..", level: feathered}
balance: {snare: -3}
vocabulary: [last triplet, {cell: x.x, name: the skip}, "...", "x.."]
exercises:
  - "..x x.. ... x.x"
  - {pattern: "x.x ..x x.. ...", name: Opener, notes: Softly., sticking: R L R L}
  - pattern: {snare: "x.. ... x.. ...", bass: "... ..x ... ..x"}
forms:
  phrase: {sections: [{pattern: 4}, {time: 2, ending: {voices: crash+bass, beat: 4}}], repeat: 2, countIn: 1}
layers: [ride, [hihat-foot, bass], pattern]
sheet: {paper: A4, counts: true}
practicePage: https://tannery.example/first-swing/
sections:
  - {heading: Three, meter: 3/4, groove: {ride: "x.. x.x x.."}, exercises: ["x.. ..x ..."]}
`;

function log() {
  const entries = Array.from({ length: 6 }, (_, n) => ({
    ...{
      id: `phone ${n}`,
      device: 'phone',
      startedAt: `2026-11-2${n}T18:30:00+01:00`,
      durationSeconds: 90 + n,
    },
    ...{ lesson: 'first-swing', exercise: 'snare ..x x.. ... x.x', form: 'phrase', heardBy: 'ear' },
    loops: [
      { bpm: 80, verdict: 'clean', faults: [] },
      {
        bpm: 88,
        verdict: 'loose',
        faults: [{ kind: 'late', voice: 'snare', place: { bar: 1, beat: 2, slot: 3 }, amount: 31.5 }],
      },
    ],
  }));
  return JSON.stringify({ version: 1, entries, removed: ['phone 9'] }, null, 2);
}

function sound() {
  const left = Float32Array.from(
    { length: 22_050 },
    (_, i) => 0.4 * Math.sin(i / 9) * Math.exp(-(i % 5500) / 900),
  );
  return { left, right: left, sampleRateHz: 44_100 };
}

/** A WebM and an Opus file of FFmpeg's, where there is one. */
function byFfmpeg(wav) {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-hard-'));
  try {
    writeFileSync(join(folder, 'a.wav'), wav);
    return Object.fromEntries(
      ['webm', 'opus'].flatMap((kind) => {
        const out = join(folder, `a.${kind}`);
        const { status } = spawnSync('ffmpeg', [
          '-v',
          'error',
          '-i',
          join(folder, 'a.wav'),
          '-c:a',
          'libopus',
          '-flags',
          '+bitexact',
          out,
        ]);
        return status === 0 ? [[kind, new Uint8Array(readFileSync(out))]] : [];
      }),
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const CHANGES = {
  lesson: changeTextBytes,
  log: changeTextBytes,
  midi: changeMidi,
  musicxml: changeTextBytes,
  mxl: changeZip,
  soundfont: changeRiff,
  wav: changeRiff,
  flac: changeStream,
  mp3: changeStream,
  ogg: changeOgg,
  opus: changeOgg,
  webm: changeWebm,
};

/** A good file of each kind; those that FFmpeg writes only where it is there. */
export async function goodFiles() {
  const { lesson } = parseLesson(LESSON, 'good.lesson.yaml');
  if (!lesson) throw new Error('the good lesson is none');
  const performed = perform(lesson, { exercise: 1, form: defaultForm(lesson), bpm: 90 });
  const score = writeMusicXml(lesson);
  const audio = sound();
  const wav = encodeWav(audio, { format: 'int16' });
  return {
    lesson: strToU8(LESSON),
    log: strToU8(log()),
    midi: writeMidi(performed, { title: lesson.title, meter: lesson.meter }),
    musicxml: strToU8(score),
    mxl: writeMxl(score),
    soundfont: smallSoundFont(),
    wav,
    flac: await encodeFlac(audio, { bits: 16 }),
    mp3: await encodeMp3(audio),
    ogg: await encodeOgg(audio),
    ...byFfmpeg(wav),
  };
}

/** The input of a kind and a seed. */
export function inputOf(good, kind, seed) {
  const random = chance(seed);
  const bytes = new Uint8Array(good[kind]);
  // One in ten is damaged without a thought for its structure.
  return grow(bytes, random.below(10) === 0 ? changeBytes : CHANGES[kind], random);
}
