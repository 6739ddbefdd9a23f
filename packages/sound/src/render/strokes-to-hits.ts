/**
 * From strokes to the blows that sound: which sound, when and how loud, with the grace notes of flams and drags.
 *
 * Conventions: seconds from the start; levels in dB relative to a plain stroke of the lead voice.
 * Source: common practice: a flam's grace note falls just before its stroke, a drag's two before that; graces
 * are much softer.
 */
import {
  type Articulation,
  GRACE_DB,
  GRACE_NOTES,
  GRACES_BEFORE_SECONDS,
  type HowWord,
  type Stroke,
  type Voice,
} from '@shedbook/core';
import type { SoundName } from '../kit/sound.ts';

/** A single blow. */
export interface Blow {
  readonly sound: SoundName;
  readonly timeSeconds: number;
  readonly levelDb: number;
}

/** What the renderer needs of a stroke. */
export type SoundingStroke = Pick<Stroke, 'voice' | 'articulation' | 'mark' | 'timeSeconds' | 'levelDb'> &
  Partial<Pick<Stroke, 'how'>>;

function clickFor(mark: Stroke['mark']): SoundName {
  if (mark === 'g') return 'click-subdivision';
  return mark === mark.toUpperCase() ? 'click-accent' : 'click-beat';
}

const PLAIN: Readonly<Record<Voice, SoundName>> = {
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
  'tom-floor': 'tom-floor',
  splash: 'splash',
  china: 'china',
  cowbell: 'cowbell',
  clap: 'clap',
};

/** Sounds of their own that voices have for ways of striking. */
const ARTICULATED: Readonly<Record<Articulation, Readonly<Partial<Record<Voice, SoundName>>>>> = {
  normal: {},
  bell: { ride: 'ride-bell' },
  splash: { 'hihat-foot': 'hihat-splash' },
  buzz: { snare: 'snare-buzz' },
  tap: { snare: 'snare-tap' },
  sweep: { snare: 'snare-sweep' },
  flam: {},
  drag: {},
};

/** Sounds of their own that plain strokes have for how a limb plays; the kit tells the rest from nothing else. */
const PLAYED: Readonly<Partial<Record<Voice, Readonly<Partial<Record<HowWord, SoundName>>>>>> = {
  bass: { 'heel down': 'bass-heel-down' },
  snare: { edge: 'snare-edge' },
  hihat: { shoulder: 'hihat-shoulder' },
  ride: { shoulder: 'ride-shoulder' },
};

function playedSound(voice: Voice, how: Stroke['how']): SoundName | undefined {
  const sounds: Readonly<Record<string, SoundName>> = PLAYED[voice] ?? {};
  return how?.flatMap((word) => (Object.hasOwn(sounds, word) ? [sounds[word] as SoundName] : []))[0];
}

/** The sound of a stroke. An articulation that a voice does not have is played plain. */
export function soundOf(stroke: Pick<SoundingStroke, 'voice' | 'articulation' | 'mark' | 'how'>): SoundName {
  const { voice, articulation, how } = stroke;
  if (voice === 'click') return clickFor(stroke.mark);
  const own = ARTICULATED[articulation][voice];
  return own ?? (articulation === 'normal' ? playedSound(voice, how) : undefined) ?? PLAIN[voice];
}

/** The blows of a stroke, in order of time; the stroke itself last. A grace before the start is left out. */
export function blowsOf(stroke: SoundingStroke): readonly Blow[] {
  const sound = soundOf(stroke);
  const { timeSeconds, levelDb } = stroke;
  const before = GRACES_BEFORE_SECONDS[GRACE_NOTES[stroke.articulation]]
    .map((seconds) => ({ sound, timeSeconds: timeSeconds - seconds, levelDb: levelDb + GRACE_DB }))
    .filter((blow) => blow.timeSeconds >= 0);
  return [...before, { sound, timeSeconds, levelDb }];
}
