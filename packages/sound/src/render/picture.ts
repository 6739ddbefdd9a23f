/**
 * Where each instrument stands, heard from the drummer's stool.
 *
 * Conventions: places run from −1 (left) to 1 (right) for a right-handed set; a left-handed one is its mirror.
 * Panning keeps power: the squares of the two gains sum to 1. Differences are of level only, never of time, so
 * that a sum to mono loses less than 1 dB of any instrument.
 */
import type { SetUp } from '@shedbook/core';
import type { SoundName } from '../kit/sound.ts';

/** What stands in one place. */
export const INSTRUMENTS = [
  'ride',
  'hihat',
  'bass',
  'snare',
  'crash',
  'tom-high',
  'tom-mid',
  'tom-low',
  'tom-floor',
  'splash',
  'china',
  'cowbell',
  'clap',
  'click',
] as const;
/** An instrument with a place of its own. */
export type Instrument = (typeof INSTRUMENTS)[number];

/** The instrument that each sound is struck on. */
export const INSTRUMENT_OF: Readonly<Record<SoundName, Instrument>> = {
  ride: 'ride',
  'ride-bell': 'ride',
  hihat: 'hihat',
  'hihat-open': 'hihat',
  'hihat-foot': 'hihat',
  'hihat-splash': 'hihat',
  bass: 'bass',
  snare: 'snare',
  'snare-buzz': 'snare',
  'snare-tap': 'snare',
  'snare-sweep': 'snare',
  sidestick: 'snare',
  rimshot: 'snare',
  crash: 'crash',
  'tom-high': 'tom-high',
  'tom-mid': 'tom-mid',
  'tom-low': 'tom-low',
  'tom-floor': 'tom-floor',
  splash: 'splash',
  china: 'china',
  cowbell: 'cowbell',
  clap: 'clap',
  'bass-heel-down': 'bass',
  'snare-edge': 'snare',
  'hihat-shoulder': 'hihat',
  'ride-shoulder': 'ride',
  'click-accent': 'click',
  'click-beat': 'click',
  'click-subdivision': 'click',
};

const PLACES: Readonly<Record<Instrument, number>> = {
  ride: 0.42,
  hihat: -0.45,
  bass: 0.04,
  snare: -0.14,
  crash: -0.32,
  'tom-high': -0.2,
  'tom-mid': 0.14,
  'tom-low': 0.5,
  'tom-floor': 0.58,
  splash: -0.1,
  china: 0.54,
  cowbell: 0.1,
  clap: 0,
  click: 0,
};

/** Gains of an instrument in the two channels. */
export interface Placing {
  /** Factor of the amplitude. */
  readonly left: number;
  /** Factor of the amplitude. */
  readonly right: number;
}

/** How loud an instrument is in each channel; the middle when there is no picture. */
export function placing(instrument: Instrument, setUp: SetUp, picture: boolean): Placing {
  const mirror = setUp === 'right-handed' ? 1 : -1;
  const place = picture ? PLACES[instrument] * mirror : 0;
  const angle = ((place + 1) * Math.PI) / 4;
  return { left: Math.cos(angle), right: Math.sin(angle) };
}
