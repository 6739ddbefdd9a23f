/**
 * The voices of a drum set and the limbs that play them.
 *
 * Conventions: voice names are those of lesson files and reports. Limbs are named by their job, so that a
 * left-handed set-up is the mirror image and nothing else changes.
 * Source: General MIDI percussion key map for `gmKey` (channel 10); common practice for limbs.
 */
export const VOICES = [
  'ride',
  'hihat',
  'hihat-open',
  'hihat-foot',
  'bass',
  'snare',
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
] as const;

/** A voice of the drum set. */
export type Voice = (typeof VOICES)[number];

/** The voices that carry time, the likelier first. Source: common practice. */
export const TIME_VOICES = ['ride', 'hihat', 'hihat-open'] as const satisfies readonly Voice[];

/** A voice of the drum set, or the click of a count-in or metronome. */
export type SoundingVoice = Voice | 'click';

/** How a voice is struck, where that is more than a plain stroke; `tap` is the plain stroke of a brush. */
export const ARTICULATIONS = ['normal', 'bell', 'splash', 'buzz', 'tap', 'sweep', 'flam', 'drag'] as const;
/** A way of striking. */
export type Articulation = (typeof ARTICULATIONS)[number];
/** A way of striking that a mark asks for; a tap follows from what the hands hold. */
export type WrittenArticulation = Exclude<Articulation, 'tap'>;

/** What the hands hold. */
export const BEATERS = ['sticks', 'brushes'] as const;
/** Sticks or brushes. */
export type Beater = (typeof BEATERS)[number];

/** Limbs by their job. */
export const LIMBS = ['lead hand', 'other hand', 'lead foot', 'other foot'] as const;
/** A hand or a foot. */
export type Limb = (typeof LIMBS)[number];

/** Right-handed: the lead hand is the right one, and the lead foot too. Left-handed mirrors both. */
export const SET_UPS = ['right-handed', 'left-handed'] as const;
/** Which way round the drums stand. */
export type SetUp = (typeof SET_UPS)[number];

/** What is known of a voice. */
export interface VoiceFacts {
  /** The name in files for other programs: a MIDI track, a MusicXML instrument. People are told names by the words room. */
  readonly label: string;
  readonly limb: Limb;
  /** General MIDI percussion key number, 35–81. */
  readonly gmKey: number;
  /** Whether it rings on after a stroke until somebody stops it. */
  readonly rings: boolean;
}

/** What is known of each voice. */
export const VOICE_FACTS: Readonly<Record<Voice, VoiceFacts>> = {
  ride: { label: 'ride', limb: 'lead hand', gmKey: 51, rings: true },
  hihat: { label: 'hi-hat', limb: 'lead hand', gmKey: 42, rings: false },
  'hihat-open': { label: 'open hi-hat', limb: 'lead hand', gmKey: 46, rings: true },
  'hihat-foot': { label: 'hi-hat foot', limb: 'other foot', gmKey: 44, rings: false },
  bass: { label: 'bass drum', limb: 'lead foot', gmKey: 36, rings: false },
  snare: { label: 'snare', limb: 'other hand', gmKey: 38, rings: false },
  sidestick: { label: 'side stick', limb: 'other hand', gmKey: 37, rings: false },
  rimshot: { label: 'rim shot', limb: 'other hand', gmKey: 40, rings: false },
  crash: { label: 'crash', limb: 'lead hand', gmKey: 49, rings: true },
  'tom-high': { label: 'high tom', limb: 'other hand', gmKey: 48, rings: false },
  'tom-mid': { label: 'mid tom', limb: 'other hand', gmKey: 47, rings: false },
  'tom-low': { label: 'low tom', limb: 'lead hand', gmKey: 43, rings: false },
  'tom-floor': { label: 'floor tom', limb: 'lead hand', gmKey: 41, rings: false },
  splash: { label: 'splash', limb: 'lead hand', gmKey: 55, rings: true },
  china: { label: 'china', limb: 'lead hand', gmKey: 52, rings: true },
  cowbell: { label: 'cowbell', limb: 'lead hand', gmKey: 56, rings: false },
  clap: { label: 'hand clap', limb: 'lead hand', gmKey: 39, rings: false },
};

/** Whether a name is a voice of the drum set. */
export function isVoice(name: string): name is Voice {
  return Object.hasOwn(VOICE_FACTS, name);
}

/** `R` or `L` for a hand in a set-up. */
export function handLetter(limb: 'lead hand' | 'other hand', setUp: SetUp): 'R' | 'L' {
  return (limb === 'lead hand') === (setUp === 'right-handed') ? 'R' : 'L';
}

/** A limb by its side, or both hands, which clap. */
export type SidedLimb = 'right hand' | 'left hand' | 'right foot' | 'left foot' | 'both hands';

/**
 * A limb by its side, as the student knows it.
 * @example sideOf('other hand', 'right-handed') // 'left hand'
 */
export function sideOf(limb: Limb, setUp: SetUp): SidedLimb {
  const leads = limb === 'lead hand' || limb === 'lead foot';
  const side = handLetter(leads ? 'lead hand' : 'other hand', setUp) === 'R' ? 'right' : 'left';
  return limb.endsWith('hand') ? `${side} hand` : `${side} foot`;
}
