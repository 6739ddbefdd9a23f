/**
 * From strokes to the blows that sound: which sound, when and how loud, with the grace notes of flams and drags.
 *
 * Conventions: seconds from the start; levels in dB relative to a plain stroke of the lead voice.
 * Source: common practice: a flam's grace note falls just before its stroke, a drag's two before that; graces
 * are much softer.
 */
import type { SoundingVoice, Stroke } from '@shedbook/core';
import type { SoundName } from '../kit/sound.ts';

/** A single blow. */
export interface Blow {
  readonly sound: SoundName;
  readonly timeSeconds: number;
  readonly levelDb: number;
}

/** What the renderer needs of a stroke. */
export type SoundingStroke = Pick<Stroke, 'voice' | 'articulation' | 'mark' | 'timeSeconds' | 'levelDb'>;

const FLAM_SECONDS = 0.028;
const DRAG_SECONDS = [0.085, 0.042] as const;
const GRACE_DB = -9;

function clickFor(mark: Stroke['mark']): SoundName {
  if (mark === 'g') return 'click-subdivision';
  return mark === mark.toUpperCase() ? 'click-accent' : 'click-beat';
}

const PLAIN: Readonly<Record<Exclude<SoundingVoice, 'click'>, SoundName>> = {
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
};

/** The sound of a stroke. An articulation that a voice does not have is played plain. */
export function soundOf(stroke: Pick<SoundingStroke, 'voice' | 'articulation' | 'mark'>): SoundName {
  if (stroke.voice === 'click') return clickFor(stroke.mark);
  if (stroke.voice === 'ride' && stroke.articulation === 'bell') return 'ride-bell';
  if (stroke.voice === 'hihat-foot' && stroke.articulation === 'splash') return 'hihat-splash';
  if (stroke.voice === 'snare' && stroke.articulation === 'buzz') return 'snare-buzz';
  return PLAIN[stroke.voice];
}

function graces(stroke: SoundingStroke): readonly number[] {
  if (stroke.articulation === 'flam') return [FLAM_SECONDS];
  return stroke.articulation === 'drag' ? DRAG_SECONDS : [];
}

/** The blows of a stroke, in order of time; the stroke itself last. A grace before the start is left out. */
export function blowsOf(stroke: SoundingStroke): readonly Blow[] {
  const sound = soundOf(stroke);
  const { timeSeconds, levelDb } = stroke;
  const before = graces(stroke)
    .map((seconds) => ({ sound, timeSeconds: timeSeconds - seconds, levelDb: levelDb + GRACE_DB }))
    .filter((blow) => blow.timeSeconds >= 0);
  return [...before, { sound, timeSeconds, levelDb }];
}
