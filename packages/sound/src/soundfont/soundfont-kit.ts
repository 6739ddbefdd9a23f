/**
 * A kit from a SoundFont file, so that a teacher can use any set.
 *
 * Conventions: the drum presets of bank 128; General MIDI percussion keys. The jazz set (program 32) is taken
 * where there is one, otherwise the first. Levels and timbres follow the same scale as the built-in kit: layers
 * are taken at several velocities, whose decibels are those of core's one scale.
 * Source: SoundFont Technical Specification 2.04; General MIDI percussion key map. Files are read by
 * spessasynth_core (Apache-2.0): SoundFont 2, its compressed form (SF3), and DLS.
 */
import { VOICE_FACTS, velocityToLevelDb } from '@shedbook/core';
import { type BasicPreset, type BasicSoundBank, SoundBankLoader } from 'spessasynth_core';
import { makeBuzz } from '../kit/buzz.ts';
import { trimSilence } from '../kit/cymbal.ts';
import { BUILT_IN, type Kit, type KitOptions, kitOf } from '../kit/kit.ts';
import { type Layer, type RawSound, SOUND_NAMES, type SoundMaker, type SoundName } from '../kit/sound.ts';
import { SoundFontError } from './sound-font-fact.ts';
import { playVoices } from './voice.ts';

const VELOCITIES = [8, 20, 36, 54, 72, 90, 108, 127];
const JAZZ_PROGRAM = 32;

/** Zones of a drum set at most: dozens of keys, each of dozens of recordings; all are gone through for every stroke. */
const MOST_ZONES = 8192;

/** Zones that sound in one stroke at most: both sides of some microphones. */
const MOST_VOICES = 16;

/** Keys of each sound, the best first. What a file has none of is taken from the built-in kit. */
const KEYS: Readonly<Record<SoundName, readonly number[]>> = {
  ride: [VOICE_FACTS.ride.gmKey, 59],
  'ride-bell': [53, 51],
  hihat: [VOICE_FACTS.hihat.gmKey],
  'hihat-open': [VOICE_FACTS['hihat-open'].gmKey],
  'hihat-foot': [VOICE_FACTS['hihat-foot'].gmKey, 42],
  'hihat-splash': [46, 44],
  bass: [VOICE_FACTS.bass.gmKey, 35],
  snare: [VOICE_FACTS.snare.gmKey, 40],
  sidestick: [VOICE_FACTS.sidestick.gmKey],
  rimshot: [VOICE_FACTS.rimshot.gmKey, 38],
  crash: [VOICE_FACTS.crash.gmKey, 57],
  'tom-high': [VOICE_FACTS['tom-high'].gmKey, 50],
  'tom-mid': [VOICE_FACTS['tom-mid'].gmKey, 45],
  'tom-low': [VOICE_FACTS['tom-low'].gmKey, 41],
  'tom-floor': [VOICE_FACTS['tom-floor'].gmKey, 43],
  splash: [VOICE_FACTS.splash.gmKey],
  china: [VOICE_FACTS.china.gmKey],
  cowbell: [VOICE_FACTS.cowbell.gmKey],
  clap: [VOICE_FACTS.clap.gmKey],
  'snare-buzz': [],
  'snare-tap': [],
  'snare-sweep': [],
  // General MIDI tells none of these from the plain stroke.
  'bass-heel-down': [VOICE_FACTS.bass.gmKey, 35],
  'snare-edge': [VOICE_FACTS.snare.gmKey, 40],
  'hihat-shoulder': [VOICE_FACTS.hihat.gmKey],
  'ride-shoulder': [VOICE_FACTS.ride.gmKey, 59],
  'click-accent': [],
  'click-beat': [],
  'click-subdivision': [],
};

function readBank(bytes: Uint8Array): BasicSoundBank {
  const start = String.fromCharCode(...bytes.subarray(0, 4));
  if (start !== 'RIFF') {
    throw new SoundFontError({ fact: 'sound-font-no-riff', bytes: bytes.length });
  }
  try {
    return SoundBankLoader.fromArrayBuffer(bytes.slice().buffer);
  } catch {
    // Its reader says why in English, and of its own inside.
    throw new SoundFontError({ fact: 'sound-font-damaged' });
  }
}

/** @throws SoundFontError where going through it for every stroke would not end */
function requireFewZones(preset: BasicPreset): BasicPreset {
  const zones = preset.zones.reduce((sum, { instrument }) => sum + instrument.zones.length, 0);
  if (zones <= MOST_ZONES) return preset;
  throw new SoundFontError({ fact: 'sound-font-too-many-zones', zones, most: MOST_ZONES });
}

function drumPreset(bank: BasicSoundBank, program: number | undefined): BasicPreset {
  const drums = bank.presets.filter((preset) => preset.isDrum);
  const names = drums.map((preset) => `${preset.program} ${preset.name}`).join(', ');
  const first = drums[0];
  if (!first) throw new SoundFontError({ fact: 'sound-font-no-drums', presets: bank.presets.length });
  const wanted = drums.find((preset) => preset.program === (program ?? JAZZ_PROGRAM));
  if (!wanted && program !== undefined) {
    throw new RangeError(`At kit program: found ${program}, expected one of the file's drum sets: ${names}`);
  }
  return requireFewZones(wanted ?? first);
}

function playKey(preset: BasicPreset, keys: readonly number[], rate: number): RawSound | null {
  for (const key of keys) {
    const layers: Layer[] = VELOCITIES.flatMap((velocity) => {
      const voices = preset.getVoiceParameters(key, velocity).slice(0, MOST_VOICES);
      if (voices.length === 0) return [];
      const take = trimSilence(playVoices(voices, { key, velocity }, rate), rate);
      return [{ driveDb: velocityToLevelDb(velocity), takes: [take] }];
    });
    const sounds = layers.some(({ takes }) => takes.some((take) => take.some((sample) => sample !== 0)));
    if (sounds) return { layers, wash: [] };
  }
  return null;
}

/** How a SoundFont becomes a kit. */
export interface SoundFontKitOptions extends KitOptions {
  /** Program number of the drum set; the jazz set (32) or else the first where left out. */
  readonly program?: number;
}

/** What a file has of each sound, at one sample rate: plain data, so that it can be read in a thread of its own. */
export type SoundFontSounds = Readonly<Record<SoundName, RawSound | null>>;

/**
 * Plays every key of a SoundFont's drum set that a kit has a sound for.
 * @param bytes of the file.
 * @throws SoundFontError when the file cannot be used; RangeError when it has no drum set of that program.
 */
export function readSoundFont(
  bytes: Uint8Array,
  { sampleRateHz, program }: SoundFontKitOptions,
): SoundFontSounds {
  const preset = drumPreset(readBank(bytes), program);
  // Several sounds are of the same keys.
  const played = new Map<string, RawSound | null>();
  const soundOf = (name: SoundName) => {
    const keys = KEYS[name].join();
    const known = played.get(keys);
    const sound = known === undefined ? playKey(preset, KEYS[name], sampleRateHz) : known;
    played.set(keys, sound);
    return sound;
  };
  const sounds = SOUND_NAMES.map((name) => [name, soundOf(name)] as const);
  return Object.fromEntries(sounds) as SoundFontSounds;
}

/** A kit of the sounds of a SoundFont that was read at its rate; what the file lacks is the built-in kit's. */
export function soundFontKit(sounds: SoundFontSounds, options: KitOptions): Kit {
  const maker =
    (name: SoundName): SoundMaker =>
    (rate, seed) =>
      sounds[name] ?? BUILT_IN[name](rate, seed);
  const makers = Object.fromEntries(SOUND_NAMES.map((name) => [name, maker(name)])) as Record<
    SoundName,
    SoundMaker
  >;
  const buzz: SoundMaker = (rate, seed) => makeBuzz(makers.snare(rate, seed), rate, seed);
  return kitOf({ ...makers, 'snare-buzz': buzz }, options);
}

/**
 * A kit that plays a SoundFont's drum set.
 * @param bytes of the file.
 * @throws SoundFontError when the file cannot be used; RangeError when it has no drum set of that program.
 */
export function loadSoundFontKit(bytes: Uint8Array, options: SoundFontKitOptions): Kit {
  return soundFontKit(readSoundFont(bytes, options), options);
}
