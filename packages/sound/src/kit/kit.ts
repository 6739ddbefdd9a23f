/**
 * A kit: what can be struck, at one sample rate.
 *
 * Conventions: sounds are made when they are first asked for (tenths of a second for a cymbal) and kept; `prepare`
 * makes them ahead, for places where nothing may wait. The same seed gives the same kit, sample for sample.
 */
import type { Hertz } from '@shedbook/core';
import { makeBass, makeBassHeelDown } from './bass.ts';
import { makeBrushTap, makeSweep } from './brush.ts';
import { makeBuzz } from './buzz.ts';
import { makeClap } from './clap.ts';
import { makeClick } from './click.ts';
import { makeCowbell } from './cowbell.ts';
import { makeChina, makeCrash, makeSplashCymbal } from './crash.ts';
import { makeChick, makeClosed, makeClosedShoulder, makeOpen, makeSplash } from './hihat.ts';
import { type MeasuredSound, measureSound } from './measured-sound.ts';
import { makeRide, makeRideBell, makeRideShoulder } from './ride.ts';
import { makeRimShot, makeSideStick, makeSnare, makeSnareEdge } from './snare.ts';
import { SOUND_NAMES, type SoundMaker, type SoundName } from './sound.ts';
import { makeTom } from './toms.ts';

/** A set of sounds at one sample rate. */
export interface Kit {
  readonly sampleRateHz: Hertz;
  readonly seed: string;
  /** The sound of that name, made if it is not there yet. */
  sound(name: SoundName): MeasuredSound;
  /** Makes sounds ahead; all of them where none are named. */
  prepare(names?: readonly SoundName[]): void;
}

/** Which set, and at which rate. */
export interface KitOptions {
  /** 8000 to 192000. */
  readonly sampleRateHz: Hertz;
  /** Another seed is another set of the same make. */
  readonly seed?: number | string;
}

/** What makes each sound of the built-in kit. */
export const BUILT_IN: Readonly<Record<SoundName, SoundMaker>> = {
  ride: makeRide,
  'ride-bell': makeRideBell,
  hihat: makeClosed,
  'hihat-open': makeOpen,
  'hihat-foot': makeChick,
  'hihat-splash': makeSplash,
  bass: makeBass,
  snare: makeSnare,
  'snare-buzz': (rate, seed) => makeBuzz(makeSnare(rate, seed), rate, seed),
  'snare-tap': makeBrushTap,
  'snare-sweep': makeSweep,
  sidestick: makeSideStick,
  rimshot: makeRimShot,
  crash: makeCrash,
  'tom-high': (rate, seed) => makeTom('tom-high', rate, seed),
  'tom-mid': (rate, seed) => makeTom('tom-mid', rate, seed),
  'tom-low': (rate, seed) => makeTom('tom-low', rate, seed),
  'tom-floor': (rate, seed) => makeTom('tom-floor', rate, seed),
  splash: makeSplashCymbal,
  china: makeChina,
  cowbell: makeCowbell,
  clap: makeClap,
  'bass-heel-down': makeBassHeelDown,
  'snare-edge': makeSnareEdge,
  'hihat-shoulder': makeClosedShoulder,
  'ride-shoulder': makeRideShoulder,
  'click-accent': (rate, seed) => makeClick('click-accent', rate, seed),
  'click-beat': (rate, seed) => makeClick('click-beat', rate, seed),
  'click-subdivision': (rate, seed) => makeClick('click-subdivision', rate, seed),
};

/**
 * A kit whose sounds come from makers.
 * @throws RangeError when the sample rate is not 8000 to 192000.
 */
export function kitOf(makers: Readonly<Record<SoundName, SoundMaker>>, options: KitOptions): Kit {
  const { sampleRateHz } = options;
  if (!(sampleRateHz >= 8000 && sampleRateHz <= 192000)) {
    throw new RangeError(
      `At sampleRateHz: found ${sampleRateHz}, expected 8000 to 192000. Is it in kilohertz?`,
    );
  }
  const seed = String(options.seed ?? 'set');
  const made = new Map<SoundName, MeasuredSound>();
  const sound = (name: SoundName) => {
    const known = made.get(name);
    if (known) return known;
    const fresh = measureSound(makers[name](sampleRateHz, seed), sampleRateHz);
    made.set(name, fresh);
    return fresh;
  };
  return { sampleRateHz, seed, sound, prepare: (names = SOUND_NAMES) => names.forEach(sound) };
}

/** The set built in: a synthesised acoustic jazz set. No recording is in it. */
export function createKit(options: KitOptions): Kit {
  return kitOf(BUILT_IN, options);
}
