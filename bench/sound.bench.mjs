/**
 * Three minutes of swing with all layers to audio, warm, on one core; beside a plain copy of as many samples and
 * beside fluidsynth rendering the equivalent MIDI in the same run, where it is installed.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Hertz, Lufs, levelDbToVelocity, Seconds, VOICE_FACTS } from '@shedbook/core';
import { createKit, normaliseLoudness, render } from '@shedbook/sound';
import { processorSeconds, quickest, timedSeconds } from './material.mjs';

export const name = 'sound: strokes to audio';

const RATE = Hertz(44_100);
const SECONDS = Seconds(180);
const BPM = 120;
const BEAT = 60 / BPM;
const SOUNDFONTS = ['/usr/share/sounds/sf2/FluidR3_GM.sf2', '/usr/share/sounds/sf2/TimGM6mb.sf2'];
const ROUNDS = 5;

/**
 * Ride, hi-hat foot, feathered bass drum, comping with ghost notes and side stick: level in dB, beats of the bar.
 * @type {readonly (readonly [import('@shedbook/core').Voice, number, readonly number[]])[]}
 */
const PARTS = [
  ['ride', 0, [0, 1, 1 + 2 / 3, 2, 3, 3 + 2 / 3]],
  ['hihat-foot', -6, [1, 3]],
  ['bass', -14, [0, 1, 2, 3]],
  ['snare', -4, [2 / 3, 2]],
  ['snare', -16, [1 / 3, 2 + 2 / 3]],
  ['sidestick', -5, [3 + 1 / 3]],
];

function swing() {
  const strokes = [];
  for (let bar = 0; 4 * bar * BEAT < SECONDS; bar += 1) {
    for (const [voice, levelDb, beats] of PARTS) {
      for (const beat of beats) {
        const timeSeconds = Seconds((4 * bar + beat) * BEAT);
        strokes.push({ voice, articulation: 'normal', mark: 'x', levelDb, timeSeconds });
      }
    }
  }
  return strokes.sort((a, b) => a.timeSeconds - b.timeSeconds);
}

function variableLength(value) {
  const bytes = [value & 127];
  for (let rest = value >> 7; rest > 0; rest >>= 7) bytes.unshift((rest & 127) | 128);
  return bytes;
}

/** A format 0 file, 960 ticks a quarter, jazz set. */
function midiOf(strokes) {
  const ticks = (seconds) => Math.round((seconds / BEAT) * 960);
  const events = strokes.flatMap(({ voice, levelDb, timeSeconds }) => {
    const key = VOICE_FACTS[voice].gmKey;
    const at = ticks(timeSeconds);
    return [
      { at, bytes: [0x99, key, levelDbToVelocity(levelDb)] },
      { at: at + 60, bytes: [0x89, key, 0] },
    ];
  });
  events.sort((a, b) => a.at - b.at);
  const track = [0, 0xff, 0x51, 3, 0x07, 0xa1, 0x20, 0, 0xc9, 32];
  let last = 0;
  for (const { at, bytes } of events) {
    track.push(...variableLength(at - last), ...bytes);
    last = at;
  }
  track.push(0, 0xff, 0x2f, 0);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(track.length);
  const header = Buffer.from('4d546864000000060000000103c04d54726b', 'hex');
  return Buffer.concat([header, length, Buffer.from(track)]);
}

/** Processor time of fluidsynth for the same music, loading its SoundFont left out, in seconds; null without it. */
function fluidsynthSeconds(strokes) {
  const soundFont = SOUNDFONTS.find(existsSync);
  if (!soundFont || spawnSync('fluidsynth', ['--version']).status !== 0) return null;
  const folder = mkdtempSync(join(tmpdir(), 'sound-bench-'));
  const timed = (some, file) => {
    const midi = join(folder, `${file}.mid`);
    const wav = join(folder, `${file}.wav`);
    writeFileSync(midi, midiOf(some));
    const options = ['-q', '-ni', '-r', String(RATE), '-O', 's16', '-F', wav, soundFont, midi];
    const script = 'TIMEFORMAT="%U %S"; time fluidsynth "$@" >/dev/null 2>&1';
    const { stderr } = spawnSync('bash', ['-c', script, 'bash', ...options], { encoding: 'utf8' });
    return timedSeconds(stderr);
  };
  const loading = Math.min(...[1, 2].map(() => timed(strokes.slice(0, 1), 'load')));
  const all = Math.min(...[1, 2].map(() => timed(strokes, 'all')));
  rmSync(folder, { recursive: true });
  return all - loading;
}

/** Rows of the table. */
export async function run() {
  const strokes = swing();
  const kit = createKit({ sampleRateHz: RATE });
  const made = processorSeconds(() => kit.prepare(['ride', 'hihat-foot', 'bass', 'snare', 'sidestick']));
  const piece = { strokes, durationSeconds: SECONDS };
  let audio = render(piece, { kit });
  const dry = quickest(ROUNDS, () => render(piece, { kit, room: false }));
  const whole = quickest(ROUNDS, () => {
    audio = render(piece, { kit });
  });
  const file = quickest(ROUNDS, () => normaliseLoudness(render(piece, { kit }), Lufs(-18)));
  const copy = quickest(ROUNDS, () => [audio.left.slice(), audio.right.slice()]);
  const fluid = fluidsynthSeconds(strokes);
  const rows = [
    { what: 'kit for a swing groove, made once (processor time)', value: made, unit: 's' },
    { what: 'three minutes of swing, dry', value: SECONDS / dry, unit: '× real time' },
    { what: 'three minutes of swing, with room', value: SECONDS / whole, unit: '× real time' },
    { what: '… and loudness measured and set to −18 LUFS', value: SECONDS / file, unit: '× real time' },
    {
      what: '… in processor time',
      value: file,
      unit: 's',
      ratio: file / copy,
      ratioTo: 'a copy of the samples',
    },
  ];
  if (fluid === null) return rows;
  const against = { ratio: fluid / whole, ratioTo: "fluidsynth's speed" };
  return [
    ...rows,
    { what: 'with room, beside fluidsynth with its room', value: whole, unit: 's', ...against },
  ];
}
