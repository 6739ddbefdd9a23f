/**
 * Which sound of the kit a stroke is. A plain stroke of a voice is the sound of that name: no voice is without one.
 */
import type { Articulation, HowWord, Stroke, Voice } from '@shedbook/core';
import type { SoundName } from '../kit/sound.ts';

/** What the renderer needs of a stroke. */
export type SoundingStroke = Pick<Stroke, 'voice' | 'articulation' | 'mark' | 'timeSeconds' | 'levelDb'> &
  Partial<Pick<Stroke, 'how' | 'heldSeconds'>>;

function clickFor(mark: Stroke['mark']): SoundName {
  if (mark === 'g') return 'click-subdivision';
  return mark === mark.toUpperCase() ? 'click-accent' : 'click-beat';
}

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
  return own ?? (articulation === 'normal' ? playedSound(voice, how) : undefined) ?? voice;
}

/** Every sound that a stroke needs: a roll that is held goes on in plain bounces. */
export function soundsOfStroke(
  stroke: Parameters<typeof soundOf>[0] & { readonly held?: number },
): readonly SoundName[] {
  const own = soundOf(stroke);
  const isRoll = stroke.held !== undefined && stroke.articulation === 'buzz' && stroke.voice !== 'click';
  return isRoll ? [own, stroke.voice as Voice] : [own];
}
