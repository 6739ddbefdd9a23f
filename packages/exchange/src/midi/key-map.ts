/**
 * Percussion keys and the voices of the drum set.
 *
 * Conventions: keys are 0-based MIDI note numbers.
 * Sources: General MIDI percussion key map for what is written and for 35–59 read; the Groove MIDI Dataset's
 * list of electronic-kit keys (Gillick et al. 2019) for 22, 26 and 58; General MIDI 2 for the metronome keys.
 * Differs from the source: 58 is read as the low tom's rim, as electronic kits send it, not as a vibraslap; the
 * pedal hi-hat (44) is a voice of its own and not one of the closed hi-hats.
 */
import { type Articulation, type SoundingVoice, VOICE_FACTS } from '@shedbook/core';

/** What a key stands for. */
export interface KeyMeaning {
  readonly voice: SoundingVoice;
  readonly articulation: Articulation;
}

/** The first beat and the other beats of a click: high and low wood block, in every General MIDI kit. */
export const CLICK_KEYS = { accent: 76, plain: 77 } as const;

const BELL_KEY = 53;
const OPEN_HIHAT_KEY = 46;

/** The swirl of the brush set of General MIDI 2; in other sets a second snare. */
const BRUSH_SWIRL_KEY = 40;

/** Keys that a way of striking has of its own, or null where it has its voice's. */
const ARTICULATED_KEYS: Readonly<Record<Articulation, number | null>> = {
  normal: null,
  bell: BELL_KEY,
  splash: OPEN_HIHAT_KEY,
  buzz: null,
  tap: null,
  sweep: BRUSH_SWIRL_KEY,
  flam: null,
  drag: null,
};

/** Keys that are read as each voice; the first is the one that is written. */
const KEYS: Readonly<Record<SoundingVoice, readonly number[]>> = {
  ride: [VOICE_FACTS.ride.gmKey, 59],
  hihat: [VOICE_FACTS.hihat.gmKey, 22],
  'hihat-open': [VOICE_FACTS['hihat-open'].gmKey, 26],
  'hihat-foot': [VOICE_FACTS['hihat-foot'].gmKey],
  bass: [VOICE_FACTS.bass.gmKey, 35],
  snare: [VOICE_FACTS.snare.gmKey],
  sidestick: [VOICE_FACTS.sidestick.gmKey],
  rimshot: [VOICE_FACTS.rimshot.gmKey],
  crash: [VOICE_FACTS.crash.gmKey, 57],
  splash: [VOICE_FACTS.splash.gmKey],
  china: [VOICE_FACTS.china.gmKey],
  cowbell: [VOICE_FACTS.cowbell.gmKey],
  clap: [VOICE_FACTS.clap.gmKey],
  'tom-high': [VOICE_FACTS['tom-high'].gmKey, 50],
  'tom-mid': [VOICE_FACTS['tom-mid'].gmKey, 45],
  'tom-low': [VOICE_FACTS['tom-low'].gmKey, 58],
  'tom-floor': [VOICE_FACTS['tom-floor'].gmKey],
  click: [CLICK_KEYS.accent, CLICK_KEYS.plain, 33, 34],
};

function meanings(): ReadonlyMap<number, KeyMeaning> {
  const map = new Map<number, KeyMeaning>([[BELL_KEY, { voice: 'ride', articulation: 'bell' }]]);
  for (const [voice, keys] of Object.entries(KEYS)) {
    for (const key of keys) map.set(key, { voice: voice as SoundingVoice, articulation: 'normal' });
  }
  return map;
}

const MEANINGS = meanings();

/** What a percussion key stands for, or null when it is no voice of the drum set. */
export function keyToVoice(key: number): KeyMeaning | null {
  return MEANINGS.get(key) ?? null;
}

/** The General MIDI key of a stroke: the voice's own, the bell of the ride, an open hi-hat for a foot splash. */
export function voiceToKey(voice: SoundingVoice, articulation: Articulation, accent: boolean): number {
  if (voice === 'click') return accent ? CLICK_KEYS.accent : CLICK_KEYS.plain;
  return ARTICULATED_KEYS[articulation] ?? VOICE_FACTS[voice].gmKey;
}

/** The names of the tracks, one a voice. */
export function trackName(voice: SoundingVoice): string {
  return voice === 'click' ? 'click' : VOICE_FACTS[voice].label;
}

/**
 * What a key stands for in a track with a name: the open hi-hat key in the track of the hi-hat foot is a splash,
 * the swirl in that of the snare a sweep.
 */
export function keyInTrack(key: number, name: string | null): KeyMeaning | null {
  if (key === OPEN_HIHAT_KEY && name === trackName('hihat-foot')) {
    return { voice: 'hihat-foot', articulation: 'splash' };
  }
  if (key === BRUSH_SWIRL_KEY && name === trackName('snare'))
    return { voice: 'snare', articulation: 'sweep' };
  return keyToVoice(key);
}
