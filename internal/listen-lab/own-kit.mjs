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
const ARTICULATIONS = { ride: ['normal', 'bell'], 'hihat-foot': ['normal'], snare: ['normal'] };
mkdirSync(folder, { recursive: true });

function strokeOf(options, voice, articulation, mark, levelDb) {
  const stroke = { voice, articulation, mark, timeSeconds: 0, levelDb };
  const { left, right } = render({ strokes: [stroke], durationSeconds: 2.5 }, { ...options, tail: 'cut' });
  return Float32Array.from(left, (sample, i) => (sample + right[i]) / 2);
}

for (const [turn, seed] of SEEDS.entries()) {
  const kit = createKit({ sampleRateHz: rate, seed });
  for (const room of seed === 'set' ? [true, false] : [turn % 2 === 0]) {
    for (const voice of [...VOICES, 'click']) {
      for (const articulation of ARTICULATIONS[voice] ?? ['normal']) {
        for (const [index, levelDb] of LEVELS_DB.entries()) {
          const samples = strokeOf({ kit, room }, voice, articulation, 'gxX'[index % 3], levelDb);
          const name = `own-${seed}${room ? '' : '-dry'}_${voice}_${articulation}_${index}.f32`;
          writeFileSync(join(folder, name), Buffer.from(samples.buffer));
        }
      }
    }
  }
}
