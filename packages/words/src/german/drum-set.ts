/** The parts of a drum set, those who play them and what they play, in German. */
import type * as english from '../english/drum-set.ts';
import { translation } from '../message/translated.ts';

/** Voices, and the click. */
export const voices = translation<typeof english.voices>()({
  ride: 'Ride',
  hihat: 'Hi-Hat',
  'hihat-open': 'offene Hi-Hat',
  'hihat-foot': 'Hi-Hat-Fuß',
  bass: 'Bassdrum',
  snare: 'Snare',
  sidestick: 'Sidestick',
  rimshot: 'Rimshot',
  crash: 'Crash',
  'tom-high': 'hohes Tom',
  'tom-mid': 'mittleres Tom',
  'tom-low': 'tiefes Tom',
  click: 'Klick',
});

/** Limbs by their job. */
export const limbs = translation<typeof english.limbs>()({
  'lead hand': 'führende Hand',
  'other hand': 'andere Hand',
  'lead foot': 'führender Fuß',
  'other foot': 'anderer Fuß',
});

/** Limbs by their side. */
export const sides = translation<typeof english.sides>()({
  'right hand': 'rechte Hand',
  'left hand': 'linke Hand',
  'right foot': 'rechter Fuß',
  'left foot': 'linker Fuß',
});

/** What happens in a slot. */
export const marks = translation<typeof english.marks>()({
  stroke: 'Schlag',
  accent: 'Akzent',
  ghost: 'Ghost Note',
  flam: 'Flam',
  drag: 'Drag',
  buzz: 'Buzz',
  bell: 'Kuppe',
  open: 'offen',
  splash: 'Splash',
  sidestick: 'Sidestick',
  rimshot: 'Rimshot',
  rest: 'Pause',
  accented: '{$mark} mit Akzent',
});
