import { Hertz, LeadDb, Seconds, seededRandom } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { centroidHz, magnitudeAt } from '../../test/signals.ts';
import { soundFont } from '../../test/soundfont.ts';
import { STROKE_OF, strokeLevelLufs } from '../../test/sounds.ts';
import { createKit } from '../kit/kit.ts';
import { PLAIN_STROKE_LUFS } from '../kit/measured-sound.ts';
import type { SoundName } from '../kit/sound.ts';
import { render } from '../render/render.ts';
import { loadSoundFontKit } from './soundfont-kit.ts';

const RATE = Hertz(22050);

/** A tone with noise that dies in a quarter of a second, after ten milliseconds of silence. */
function recording(frequencyHz: number): Float32Array {
  const random = seededRandom(frequencyHz);
  return Float32Array.from({ length: 8000 }, (_, i) => {
    if (i < 220) return 0;
    const decay = 10 ** (-3 * ((i - 220) / 5500));
    return decay * (0.6 * Math.sin((2 * Math.PI * frequencyHz * i) / RATE) + 0.3 * (2 * random.next() - 1));
  });
}

const file = soundFont(
  [
    { key: 51, samples: recording(3000) },
    { key: 36, samples: recording(80) },
    { key: 38, samples: recording(400) },
  ],
  RATE,
);
const kit = loadSoundFontKit(file, { sampleRateHz: RATE });

function strike(name: SoundName, levelDb: number) {
  const strokes = [{ ...STROKE_OF[name], timeSeconds: Seconds(0), levelDb: LeadDb(levelDb) }];
  return render(
    { strokes, durationSeconds: Seconds(0.4) },
    { kit, room: false, picture: false, tail: 'cut' },
  );
}

/** The file with a byte too many, its last recording reaching beyond its end. */
function withHalfASample(): Uint8Array {
  const bytes = Uint8Array.from([...file, 0]);
  const records = Buffer.from(bytes.buffer).indexOf('shdr') + 8;
  // source: SoundFont 2.04, 7.10: records of 46 bytes; `dwEnd` stands at 24, in samples
  new DataView(bytes.buffer).setUint32(records + 46 * 2 + 24, bytes.length, true);
  return bytes;
}

describe('a SoundFont kit', () => {
  it('[SO95] plays the General MIDI keys of its drum set at their pitch', () => {
    // definition: the recordings above, on the keys of the General MIDI percussion map
    for (const [name, frequencyHz] of [
      ['ride', 3000],
      ['bass', 80],
      ['snare', 400],
    ] as const) {
      const { left } = strike(name, 0);
      const own = magnitudeAt(left, frequencyHz, RATE);
      expect(own).toBeGreaterThan(10 * magnitudeAt(left, frequencyHz * 1.2, RATE));
    }
  });

  it('[SO96] has the same levels and touch as the built-in kit', () => {
    for (const levelDb of [-20, -6, 0, 6]) {
      const found = strokeLevelLufs(strike('snare', levelDb), 0);
      expect(Math.abs(found - PLAIN_STROKE_LUFS - levelDb)).toBeLessThan(0.5);
    }
    expect(centroidHz(strike('snare', 0).left, RATE)).toBeGreaterThan(
      centroidHz(strike('snare', -20).left, RATE) * 1.05,
    );
    expect(Math.abs(strike('ride', 0).left[0] as number)).toBeGreaterThan(0);
  });

  it('[SO97] takes from the built-in kit what the file has not', () => {
    const builtIn = createKit({ sampleRateHz: RATE });
    const take = (from: typeof kit) => from.sound('click-beat').layers[0]?.takes[0]?.samples;
    expect(take(kit)).toEqual(take(builtIn));
  });

  it('[SO98] [SO4000] tells what is wrong with a file, one of zones without end, too', () => {
    const load = (bytes: Uint8Array, program?: number) => () =>
      loadSoundFontKit(bytes, { sampleRateHz: RATE, ...(program === undefined ? {} : { program }) });
    expect(load(Uint8Array.from([1, 2, 3]))).toThrow(
      expect.objectContaining({ fact: { fact: 'sound-font-no-riff', bytes: 3 } }),
    );
    expect(load(file.slice(0, 300))).toThrow(
      expect.objectContaining({ fact: { fact: 'sound-font-damaged' } }),
    );
    // half a sample at the end of a recording
    expect(load(withHalfASample())).toThrow(
      expect.objectContaining({ fact: { fact: 'sound-font-damaged' } }),
    );
    expect(load(soundFont([{ key: 60, samples: recording(440) }], RATE, 0))).toThrow(
      expect.objectContaining({ fact: { fact: 'sound-font-no-drums', presets: 1 } }),
    );
    const zone = { key: 38, samples: new Float32Array(4) };
    const zones = 8193;
    expect(load(soundFont(Array(zones).fill(zone), RATE))).toThrow(
      expect.objectContaining({ fact: { fact: 'sound-font-too-many-zones', zones, most: zones - 1 } }),
    );
    expect(load(file, 40)).toThrow("At kit program: found 40, expected one of the file's drum sets: 0 Set");
  });
});
