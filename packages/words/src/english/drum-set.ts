/** The parts of a drum set, those who play them and what they play, in English. */
import type { Articulation, HowWord, Limb, SoundingVoice } from '@shedbook/core';

/** Voices, and the click. */
export const voices = {
  ride: 'ride',
  hihat: 'hi-hat',
  'hihat-open': 'open hi-hat',
  'hihat-foot': 'hi-hat foot',
  bass: 'bass drum',
  snare: 'snare',
  sidestick: 'side stick',
  rimshot: 'rim shot',
  crash: 'crash',
  'tom-high': 'high tom',
  'tom-mid': 'mid tom',
  'tom-low': 'low tom',
  'tom-floor': 'floor tom',
  splash: 'splash cymbal',
  china: 'china cymbal',
  cowbell: 'cowbell',
  clap: 'hand clap',
  click: 'click',
} as const satisfies Readonly<Record<SoundingVoice, string>>;

/** Voices with their article, in English one word for all. */
export const theVoices = Object.fromEntries(
  Object.entries(voices).map(([voice, name]) => [voice, `the ${name}`]),
) as Readonly<Record<SoundingVoice, string>>;

/** Limbs by their job. */
export const limbs = {
  'lead hand': 'lead hand',
  'other hand': 'other hand',
  'lead foot': 'lead foot',
  'other foot': 'other foot',
} as const satisfies Readonly<Record<Limb, string>>;

/** Limbs by their side. */
export const sides = {
  'right hand': 'right hand',
  'left hand': 'left hand',
  'right foot': 'right foot',
  'left foot': 'left foot',
  'both hands': 'both hands',
} as const;

/** How a limb plays. */
export const how = {
  'heel down': 'heel down',
  'heel up': 'heel up',
  tip: 'tip',
  shoulder: 'shoulder',
  centre: 'centre',
  edge: 'edge',
  bow: 'bow',
  bell: 'bell',
  'low stroke': 'low stroke',
  'half stroke': 'half stroke',
  'full stroke': 'full stroke',
} as const satisfies Readonly<Record<HowWord, string>>;

/** What happens in a slot. */
export const marks = {
  stroke: 'stroke',
  accent: 'accent',
  ghost: 'ghost note',
  flam: 'flam',
  drag: 'drag',
  buzz: 'buzz',
  tap: 'brush tap',
  sweep: 'sweep',
  bell: 'bell',
  open: 'open',
  splash: 'splash',
  sidestick: 'side stick',
  rimshot: 'rim shot',
  rest: 'rest',
  held: 'held',
  accented: '{$mark} with accent',
} as const satisfies Readonly<Record<Exclude<Articulation, 'normal'>, string>> &
  Readonly<Record<string, string>>;
