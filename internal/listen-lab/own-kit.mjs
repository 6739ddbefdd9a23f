/**
 * Writes single strokes of the project's own synthesised kit, which no network is trained on, for `bank.py`.
 *
 * Usage: node own-kit.mjs FOLDER RATE_HZ. One file a stroke, KIT_VOICE_LEVEL.f32: mono 32-bit floats, onset first.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { VOICES } from '@shedbook/core';
import { createKit, render } from '@shedbook/sound';

const [folder, rate] = [process.argv[2], Number(process.argv[3])];
const LEVELS_DB = [-18, -12, -6, 0, 6];
mkdirSync(folder, { recursive: true });

function strokeOf(kit, voice, mark, levelDb) {
  const stroke = { voice, articulation: null, mark, timeSeconds: 0, levelDb };
  const { left, right } = render({ strokes: [stroke], durationSeconds: 3 }, { kit });
  return Float32Array.from(left, (sample, i) => (sample + right[i]) / 2);
}

for (const seed of ['one', 'two', 'three']) {
  const kit = createKit({ sampleRateHz: rate, seed });
  for (const voice of [...VOICES, 'click']) {
    for (const [index, levelDb] of LEVELS_DB.entries()) {
      const samples = strokeOf(kit, voice, 'gxX'[index % 3], levelDb);
      writeFileSync(join(folder, `own-${seed}_${voice}_${index}.f32`), Buffer.from(samples.buffer));
    }
  }
}
