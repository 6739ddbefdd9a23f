/**
 * Which voices the ear knows, in the order in which the network was trained to say them.
 *
 * Conventions: this list belongs to the weights beside it and changes with them only; core's list of voices may be
 * put in any order. Everything that indexes an output, a description or an event takes its index from here.
 * Source: `VOICES` in internal/listen-lab/train.py, which trained the weights.
 */
import type { SoundingVoice, Voice } from '@shedbook/core';

/** The voices that are told apart, one output of the network each; `click` is a metronome. */
export const HEARD_VOICES = [
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
  'click',
] as const satisfies readonly SoundingVoice[];

/** A voice that the network hears. */
export type HeardVoice = (typeof HEARD_VOICES)[number];

/** How many there are. */
export const HEARD_COUNT = HEARD_VOICES.length;

/** As which of them each voice is heard: as itself, or, where training never met it, as the one that it sounds like. */
const HEARD_AS: Readonly<Record<Voice, HeardVoice>> = {
  ride: 'ride',
  hihat: 'hihat',
  'hihat-open': 'hihat-open',
  'hihat-foot': 'hihat-foot',
  bass: 'bass',
  snare: 'snare',
  sidestick: 'sidestick',
  rimshot: 'rimshot',
  crash: 'crash',
  'tom-high': 'tom-high',
  'tom-mid': 'tom-mid',
  'tom-low': 'tom-low',
  'tom-floor': 'tom-low',
  splash: 'crash',
  china: 'crash',
  cowbell: 'ride',
  clap: 'sidestick',
};

/**
 * Whether the ear listens for a voice. One that training never met is not asked of a recording: it would be told from
 * the voice that it sounds like by nothing. A MIDI take says it by its key.
 */
export function isListenedFor(voice: SoundingVoice): boolean {
  return voice !== 'click' && HEARD_AS[voice] === voice;
}

/** The voice that a stroke of a voice sounds like to the ear. */
export function soundsLike(voice: Voice): HeardVoice {
  return HEARD_AS[voice];
}

/**
 * The voice that a key of a kit is taken for: kits send the edge of a crash as a splash or a china, and a floor tom as a
 * second one. What nobody asks for is the voice that it sounds like.
 */
export function asAsked(voice: Voice, asked: ReadonlySet<Voice>): Voice {
  const like = soundsLike(voice);
  return asked.has(voice) || like === 'click' ? voice : like;
}

/** Index of the output that tells of a voice, from 0. */
export function outputOf(voice: Voice): number {
  return HEARD_VOICES.indexOf(HEARD_AS[voice]);
}
