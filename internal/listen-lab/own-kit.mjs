/**
 * Writes single strokes of the kit that the product plays, dry and in its room, for `bank.py`.
 *
 * Usage: node own-kit.mjs FOLDER RATE_HZ. One file a stroke, KIT_VOICE_GROUP_LEVEL.f32: mono 32-bit floats, onset first.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { VOICES } from '@shedbook/core';
import { createKit, render } from '@shedbook/sound';

const [folder, rate] = [process.argv[2], Number(process.argv[3])];
const LEVELS_DB = [-20, -10, -3, 5];
/** `set` is the one that everybody hears; `ten` is for measuring alone. */
const SEEDS = ['set', 'one', 'two', 'three', 'four', 'five', 'six', 'ten'];
/** Of more seeds what differs most from one to the next, and what hands and feet of a lesson play. */
const MORE_SEEDS = ['seven', 'eight', 'nine', 'eleven', 'twelve', 'thirteen', 'fourteen', 'fifteen'];
const OFTEN = ['ride', 'hihat', 'hihat-foot', 'bass', 'snare', 'sidestick'];
const ARTICULATIONS = { ride: ['normal', 'bell'], snare: ['normal', 'tap', 'sweep'] };
/** Ways to play, of the seeds that are more. */
const HOW = { ride: 'shoulder', hihat: 'shoulder', bass: 'heel down', snare: 'edge' };
/** The bank has brushes as voices of their own. */
const BRUSHES = ['tap', 'sweep'];
mkdirSync(folder, { recursive: true });

/** What of a voice is written, each as a group of its own. */
function waysOf(voice, seed) {
  const plain = (ARTICULATIONS[voice] ?? ['normal']).map((articulation) => ({ articulation }));
  const how = MORE_SEEDS.includes(seed) ? HOW[voice] : undefined;
  return how ? [...plain, { articulation: 'normal', how: [how] }] : plain;
}

function strokeOf(options, stroke) {
  const { left, right } = render(
    { strokes: [{ ...stroke, timeSeconds: 0 }], durationSeconds: 2.5 },
    { ...options, tail: 'cut' },
  );
  return Float32Array.from(left, (sample, i) => (sample + right[i]) / 2);
}

for (const [turn, seed] of [...SEEDS, ...MORE_SEEDS].entries()) {
  const kit = createKit({ sampleRateHz: rate, seed });
  for (const room of seed === 'set' ? [true, false] : [turn % 2 === 0]) {
    for (const voice of SEEDS.includes(seed) ? [...VOICES, 'click'] : OFTEN) {
      for (const way of waysOf(voice, seed)) {
        const group = way.how?.[0].replace(' ', '-') ?? way.articulation;
        const as = BRUSHES.includes(way.articulation) ? way.articulation : voice;
        for (const [index, levelDb] of LEVELS_DB.entries()) {
          const samples = strokeOf({ kit, room }, { voice, ...way, mark: 'gxX'[index % 3], levelDb });
          const name = `own-${seed}${room ? '' : '-dry'}_${as}_${group}_${index}.f32`;
          writeFileSync(join(folder, name), Buffer.from(samples.buffer));
        }
      }
    }
  }
}
