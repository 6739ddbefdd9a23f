/**
 * The hi-hats: a pair of 14-inch cymbals, closed and open under the stick, and by the foot.
 *
 * Closed cymbals damp each other, so modes live for tenths of a second at most, and chatter where they touch;
 * open ones ring like other cymbals and sizzle. The foot makes a chick: air and metal at once, no stick.
 */

import { seededRandom } from '@shedbook/core';
import { bandPass, dbToGain, highPass, lowPass } from '@shedbook/signal';
import { addBurst } from '../synth/noise.ts';
import type { Plate } from '../synth/plate.ts';
import { type CymbalVoicing, makeCymbal } from './cymbal.ts';
import type { RawSound } from './sound.ts';

const PAIR: Plate = {
  seed: 'hi-hat',
  lowestHz: 230,
  highestHz: 20000,
  spacingHz: [
    [300, 24],
    [2000, 26],
    [6000, 34],
    [12000, 50],
  ],

  levelDb: [
    [200, -15],
    [350, -12],
    [700, -15],
    [1500, -11],
    [3000, -7],
    [5000, -1],
    [8000, 0],
    [12000, 0],
    [17000, -6],
    [20000, -20],
  ],

  t60Seconds: [
    [300, 0.17],
    [1000, 0.17],
    [4000, 0.22],
    [10000, 0.21],
    [16000, 0.15],
  ],
  prompt: [
    [400, 0.8],
    [3000, 0.7],
    [9000, 0.6],
  ],
  riseSeconds: [
    [400, 0.004],
    [9000, 0.006],
  ],
  touch: [
    [300, -0.2],
    [1000, -0.08],
    [4000, 0.08],
    [8000, 0.2],
    [14000, 0.35],
  ],
  unevenness: 1.5,
  variety: 0.42,
};

const CLOSED: CymbalVoicing = {
  plate: PAIR,
  click: { levelDb: 1, t60Seconds: 0.02, riseSeconds: 0.0001, lowHz: 3000, highHz: 13000 },
  drivesDb: [-30, -24, -18, -12, -6, 0, 6, 12],
  takes: 4,
  seconds: 0.5,
  contactSeconds: 0.00015,
  dampedT60Seconds: Number.POSITIVE_INFINITY,
  softT60Seconds: 0.25,
};

/** The shoulder on the edge: it touches for longer, moves both cymbals more, and they answer with a wash of metal. */
const SHOULDER: CymbalVoicing = {
  ...CLOSED,
  plate: {
    ...PAIR,
    seed: 'hi-hat shoulder',
    levelDb: [
      [200, -12],
      [350, -6],
      [700, -6],
      [1500, -4],
      [3000, -2],
      [5000, 0],
      [8000, -1],
      [12000, -3],
      [17000, -10],
      [20000, -24],
    ],
  },
  click: { levelDb: 3, t60Seconds: 0.03, riseSeconds: 0.0002, lowHz: 1800, highHz: 11000 },
  drivesDb: [-30, -20, -10, 0, 10],
  takes: 3,
  contactSeconds: 0.00035,
};

const OPEN: CymbalVoicing = {
  ...CLOSED,
  plate: {
    ...PAIR,
    seed: 'open hi-hat',

    levelDb: [
      [200, -18],
      [350, -10],
      [700, -10],
      [1500, -9],
      [3000, -8],
      [5000, -2],
      [8000, 0],
      [12000, 0],
      [17000, -6],
      [20000, -20],
    ],

    t60Seconds: [
      [300, 2.6],
      [1000, 2.6],
      [4000, 2.4],
      [10000, 2],
      [16000, 1.5],
    ],
    riseSeconds: [
      [400, 0.004],
      [9000, 0.012],
    ],
    prompt: [
      [400, 0.8],
      [3000, 0.5],
      [9000, 0.4],
    ],
  },
  drivesDb: [-24, -14, -4, 8],
  takes: 3,
  seconds: 3,
  softT60Seconds: 2,
};

const CHICK: CymbalVoicing = {
  ...CLOSED,
  plate: {
    ...PAIR,
    seed: 'foot',

    levelDb: [
      [150, -6],
      [220, -1],
      [350, -1],
      [600, -8],
      [1500, -13],
      [3000, -11],
      [5000, -5],
      [9000, -2],
      [13000, 0],
      [17000, -6],
      [20000, -20],
    ],

    t60Seconds: [
      [200, 0.16],
      [1000, 0.14],
      [4000, 0.19],
      [10000, 0.19],
      [16000, 0.14],
    ],

    prompt: [[400, 0.12]],

    riseSeconds: [[400, 0.006]],
  },
  click: { levelDb: -3, t60Seconds: 0.05, riseSeconds: 0.002, lowHz: 1500, highHz: 12000 },
  contactSeconds: 0.0006,
};

const SPLASH: CymbalVoicing = {
  ...OPEN,
  plate: { ...OPEN.plate, seed: 'foot splash', prompt: [[400, 0.2]], riseSeconds: [[400, 0.008]] },
  click: { levelDb: -2, t60Seconds: 0.05, riseSeconds: 0.002, lowHz: 1200, highHz: 11000 },
  contactSeconds: 0.001,
};

/** Where the cymbals touch they chatter: noise that follows the stroke. */
function addChatter(
  sound: RawSound,
  rate: number,
  seed: string,
  levelDb: number,
  t60Seconds: number,
): RawSound {
  for (const { driveDb, takes } of sound.layers) {
    takes.forEach((take, i) => {
      const high = lowPass(15000 * 10 ** (driveDb / 80), 0.6, rate);
      const filters = [highPass(2500, 0.6, rate), bandPass(7500, 0.5, rate), high];
      const gain = dbToGain(levelDb + 0.1 * driveDb);
      addBurst(
        take,
        rate,
        { gain, riseSeconds: 0.003, t60Seconds, filters },
        seededRandom(`${seed} chatter ${i}`),
      );
    });
  }
  return sound;
}

/** The tip on closed hi-hats. */
export function makeClosed(rate: number, seed: string): RawSound {
  return addChatter(makeCymbal(CLOSED, rate, seed), rate, seed, -4, 0.12);
}

/** The shoulder of the stick on the edge of closed hi-hats. */
export function makeClosedShoulder(rate: number, seed: string): RawSound {
  return addChatter(makeCymbal(SHOULDER, rate, seed), rate, seed, -1, 0.18);
}

/** The stick on open hi-hats, ringing until the foot closes them. */
export function makeOpen(rate: number, seed: string): RawSound {
  return addChatter(makeCymbal(OPEN, rate, seed), rate, seed, -5, 0.9);
}

/** The foot closing the hi-hats. */
export function makeChick(rate: number, seed: string): RawSound {
  return addChatter(makeCymbal(CHICK, rate, seed), rate, seed, -4, 0.08);
}

/** The foot striking the hi-hats together and letting go. */
export function makeSplash(rate: number, seed: string): RawSound {
  return addChatter(makeCymbal(SPLASH, rate, seed), rate, seed, -6, 0.8);
}
