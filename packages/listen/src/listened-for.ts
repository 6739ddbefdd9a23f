/**
 * What is listened for in sound: the voices that training has met. A splash or a cowbell is a voice like any other in a
 * lesson and from an electronic kit, but no recording taught the ear what it sounds like: it is not asked for, and what
 * sounds like it and is not written is nobody's.
 */
import { perform, type Unheard, VOICES, type Voice } from '@shedbook/core';
import { isPlayed } from './align/asked-grid.ts';
import type { Asked } from './listened.ts';
import { isListenedFor, soundsLike } from './network/heard-voices.data.ts';

/** The voices that are asked of the student. */
function askedVoices(asked: Asked): readonly Voice[] {
  const { lesson, exercise, form } = asked;
  const voices = new Set(perform(lesson, { exercise, form }).strokes.map(({ voice }) => voice));
  return VOICES.filter((voice) => voices.has(voice)).filter(isPlayed(asked));
}

/** The same as it can be asked of sound, and which of its voices are not listened for. */
export function askedOfSound(asked: Asked): {
  readonly asked: Asked;
  readonly unheard: readonly Unheard[];
} {
  const written = askedVoices(asked);
  const strange = written.filter((voice) => !isListenedFor(voice));
  if (strange.length === 0) return { asked, unheard: [] };
  const alike = new Set<string>(strange.map(soundsLike));
  const isTaken = (voice: Voice) => !alike.has(voice) || written.includes(voice);
  const plays = VOICES.filter(isPlayed(asked)).filter((voice) => isListenedFor(voice) && isTaken(voice));
  return {
    asked: { ...asked, plays },
    unheard: strange.map((voice) => ({ reason: 'not-listened-for', voice })),
  };
}
