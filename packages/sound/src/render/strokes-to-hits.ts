/**
 * From strokes to the blows that sound: which sound, when and how loud, with the grace notes of flams and drags.
 * What is held goes on until its end: a roll by bounces that are all alike, a sweep by sweeps that run into each other.
 *
 * Conventions: seconds from the start; levels in dB relative to a plain stroke of the lead voice.
 * Source: common practice: a flam's grace note falls just before its stroke, a drag's two before that; graces
 * are much softer.
 */
import { BOUNCES, GRACE_DB, GRACE_NOTES, GRACES_BEFORE_SECONDS } from '@shedbook/core';
import type { SoundName } from '../kit/sound.ts';
import { type SoundingStroke, soundOf } from './sound-of.ts';

/** A single blow. */
export interface Blow {
  readonly sound: SoundName;
  readonly timeSeconds: number;
  readonly levelDb: number;
}

/**
 * How a sweep goes on: the next one begins while the one before it is still loud, so that their sum swells no more; each
 * is so much softer, and the last ends with what is held. The figures follow from how a sweep swells and leaves the head.
 */
const SWEEPS = { everySeconds: 0.12, levelDb: -1.8, lastsSeconds: 0.42 } as const;

/** From the stroke to the first bounce that is added: until then the stroke itself bounces, where the kit has that. */
const FIRST_BOUNCE_SECONDS = 0.09;

/** Bounces of two hands are not quite alike: by so much in dB, and of the time between them. */
const UNLIKE = { levelDb: 0.8, ofTime: 0.12 } as const;

/** What goes on after a stroke that is held, from one moment to the next until its end. */
function goingOn({
  voice,
  articulation,
  timeSeconds,
  levelDb,
  heldSeconds,
}: SoundingStroke): readonly Blow[] {
  if (voice === 'click') return [];
  const isSweep = articulation === 'sweep';
  const { everySeconds, levelDb: addedDb } = isSweep ? SWEEPS : BOUNCES;
  const from = isSweep ? everySeconds : FIRST_BOUNCE_SECONDS;
  const last = (heldSeconds ?? 0) - (isSweep ? SWEEPS.lastsSeconds : everySeconds);
  const count = Math.max(0, Math.floor((last - from) / everySeconds + 1 + 1e-9));
  const sound = isSweep ? 'snare-sweep' : voice;
  return Array.from({ length: count }, (_, index) => {
    const side = isSweep ? 0 : index % 2 === 0 ? 1 : -1;
    return {
      sound,
      timeSeconds: timeSeconds + from + (index + side * 0.5 * UNLIKE.ofTime) * everySeconds,
      levelDb: levelDb + addedDb + side * UNLIKE.levelDb,
    };
  });
}

/** The blows of a stroke, in order of time: graces, the stroke itself, what goes on of it. A grace before the start is left out. */
export function blowsOf(stroke: SoundingStroke): readonly Blow[] {
  const sound = soundOf(stroke);
  const { timeSeconds, levelDb } = stroke;
  const before = GRACES_BEFORE_SECONDS[GRACE_NOTES[stroke.articulation]]
    .map((seconds) => ({ sound, timeSeconds: timeSeconds - seconds, levelDb: levelDb + GRACE_DB }))
    .filter((blow) => blow.timeSeconds >= 0);
  const own = { sound, timeSeconds, levelDb };
  return stroke.heldSeconds === undefined ? [...before, own] : [...before, own, ...goingOn(stroke)];
}
