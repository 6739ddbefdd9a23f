/**
 * A sound of the kit: one way of striking one instrument, from soft to loud, in several takes.
 *
 * Conventions: layers rise in drive; `driveDb` is the level (dB relative to a plain stroke of the lead voice)
 * whose timbre a layer has; every take of a sound has the same length in samples, and starts at its onset.
 */
import { VOICE_FACTS, VOICES } from '@shedbook/core';

/** Takes at one drive. */
export interface Layer {
  readonly driveDb: number;
  readonly takes: readonly Float32Array[];
}

/** What a kit can play. */
export const SOUND_NAMES = [
  'ride',
  'ride-bell',
  'hihat',
  'hihat-open',
  'hihat-foot',
  'hihat-splash',
  'bass',
  'snare',
  'snare-buzz',
  'snare-tap',
  'snare-sweep',
  'sidestick',
  'rimshot',
  'crash',
  'tom-high',
  'tom-mid',
  'tom-low',
  'tom-floor',
  'splash',
  'china',
  'cowbell',
  'clap',
  'click-accent',
  'click-beat',
  'click-subdivision',
  'bass-heel-down',
  'snare-edge',
  'hihat-shoulder',
  'ride-shoulder',
] as const;
/** Name of a sound of a kit. */
export type SoundName = (typeof SOUND_NAMES)[number];

/** Sounds of what rings on after a stroke: they last for seconds, and take about as long to make as all others. */
export const RINGING_SOUNDS: ReadonlySet<SoundName> = new Set([
  ...VOICES.filter((voice) => VOICE_FACTS[voice].rings),
  'ride-bell',
  'hihat-splash',
  'ride-shoulder',
]);

/** A sound before it is measured. */
export interface RawSound {
  readonly layers: readonly Layer[];
  /** The wash that a stroke adds when the cymbal is ringing already, or empty. */
  readonly wash: readonly Float32Array[];
}

/** What makes a sound: called once for each sample rate, when it is first needed. */
export type SoundMaker = (sampleRateHz: number, seed: string) => RawSound;

/** Every take of every layer padded with silence to one length. */
export function padTakes(layers: readonly Layer[]): readonly Layer[] {
  const length = Math.max(...layers.flatMap((layer) => layer.takes.map((take) => take.length)));
  const pad = (take: Float32Array) => {
    if (take.length === length) return take;
    const padded = new Float32Array(length);
    padded.set(take);
    return padded;
  };
  return layers.map((layer) => ({ driveDb: layer.driveDb, takes: layer.takes.map(pad) }));
}
