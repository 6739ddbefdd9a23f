/** The parts of a drum set, those who play them and what they play, in German. */
import type * as english from '../english/drum-set.ts';
import type { Tongue } from '../language/tongue.ts';
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
  'tom-floor': 'zweites Standtom',
  splash: 'Splash-Becken',
  china: 'China-Becken',
  cowbell: 'Kuhglocke',
  clap: 'Klatschen',
  click: 'Klick',
});

/** Voices with their article: dative after "vor", "nach" and "neben". */
export const theVoices: Tongue['theVoices'] = {
  nominative: {
    ride: 'das Ride',
    hihat: 'die Hi-Hat',
    'hihat-open': 'die offene Hi-Hat',
    'hihat-foot': 'der Hi-Hat-Fuß',
    bass: 'die Bassdrum',
    snare: 'die Snare',
    sidestick: 'der Sidestick',
    rimshot: 'der Rimshot',
    crash: 'das Crash',
    'tom-high': 'das hohe Tom',
    'tom-mid': 'das mittlere Tom',
    'tom-low': 'das tiefe Tom',
    'tom-floor': 'das zweite Standtom',
    splash: 'das Splash-Becken',
    china: 'das China-Becken',
    cowbell: 'die Kuhglocke',
    clap: 'das Klatschen',
    click: 'der Klick',
  },
  dative: {
    ride: 'dem Ride',
    hihat: 'der Hi-Hat',
    'hihat-open': 'der offenen Hi-Hat',
    'hihat-foot': 'dem Hi-Hat-Fuß',
    bass: 'der Bassdrum',
    snare: 'der Snare',
    sidestick: 'dem Sidestick',
    rimshot: 'dem Rimshot',
    crash: 'dem Crash',
    'tom-high': 'dem hohen Tom',
    'tom-mid': 'dem mittleren Tom',
    'tom-low': 'dem tiefen Tom',
    'tom-floor': 'dem zweiten Standtom',
    splash: 'dem Splash-Becken',
    china: 'dem China-Becken',
    cowbell: 'der Kuhglocke',
    clap: 'dem Klatschen',
    click: 'dem Klick',
  },
};

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
  'both hands': 'beide Hände',
});

/** How a limb plays. */
export const how = translation<typeof english.how>()({
  'heel down': 'Ferse unten',
  'heel up': 'Ferse oben',
  tip: 'Spitze',
  shoulder: 'Schulter',
  centre: 'Mitte',
  edge: 'Rand',
  bow: 'Fläche',
  bell: 'Kuppe',
  'low stroke': 'Stock tief',
  'half stroke': 'Stock halbhoch',
  'full stroke': 'Stock hoch',
});

/** What happens in a slot. */
export const marks = translation<typeof english.marks>()({
  stroke: 'Schlag',
  accent: 'Akzent',
  ghost: 'Ghost Note',
  flam: 'Flam',
  drag: 'Drag',
  buzz: 'Buzz',
  tap: 'Besenschlag',
  sweep: 'Wischen',
  bell: 'Kuppe',
  open: 'offen',
  splash: 'Splash',
  sidestick: 'Sidestick',
  rimshot: 'Rimshot',
  rest: 'Pause',
  held: 'gehalten',
  accented: '{$mark} mit Akzent',
});
