/**
 * The verdict on what a student played: the same for one loop and for a whole take, on the practice page, at the desk
 * and on the command line.
 *
 * Conventions: bars, beats and slots from 1, counted inside the form as it is gone through once; amounts are never
 * negative: milliseconds, percent, decibels, beats.
 */
import type { Bpm, Milliseconds, Voice, WrittenPlace } from '@shedbook/core';
import type { Level } from '../level/levels.data.ts';

/** What playing can come to. `not judged` says nothing about it. */
export const VERDICTS = ['clean', 'nearly', 'not yet', 'not judged'] as const;
/** What playing came to. */
export type VerdictName = (typeof VERDICTS)[number];

/** What a verdict can be about. */
export const WHATS = [
  'missing',
  'extra',
  'other-exercise',
  'straight-feel',
  'swung-feel',
  'wrong-voice',
  'shifted',
  'offset',
  'early',
  'late',
  'uneven',
  'rushing',
  'dragging',
  'slow',
  'fast',
  'loud',
  'soft',
  'nobody-played',
  'only-loudspeaker',
  'too-little-heard',
] as const;
/** What a verdict is about. */
export type What = (typeof WHATS)[number];

/** One thing that a verdict is about. Figures stand where they belong to it. */
export interface About {
  readonly what: What;
  /** Left out where it is about the playing as a whole. */
  readonly voice?: Voice;
  /** Where it happens; left out where it happens throughout. */
  readonly places?: readonly WrittenPlace[];
  /** Whether these places come round in other bars too, and it happens there as well. */
  readonly inEveryBar?: boolean;
  /** The bars of the form that it is about as a whole; left out where it is no whole bars, or any. */
  readonly bars?: readonly number[];
  /** The times through the form, from 1, in which it happens; left out where it does not matter which. */
  readonly rounds?: readonly number[];
  /** How early, late, off or spread. */
  readonly ms?: Milliseconds;
  /** Change of tempo, or distance from the tempo that was asked. */
  readonly percent?: number;
  /** Distance from the level that was asked. */
  readonly db?: number;
  /** The tempo that was played. */
  readonly bpm?: Bpm;
  /** Number of times that it happened. */
  readonly times?: number;
  /** Number of times that it was due. */
  readonly of?: number;
  /** Number of the exercise that was played instead; of bars that never came, of one that what was played is as well. */
  readonly exercise?: number;
  /** How many beats late everything comes; negative is early. */
  readonly beats?: number;
  /** How many strokes of a voice that stayed out where it is written fell elsewhere; left out where hardly any did. */
  readonly elsewhere?: number;
  /** The voice that was struck instead. */
  readonly instead?: Voice;
}

/** What came of some playing. */
export interface Verdict {
  readonly level: Level;
  readonly is: VerdictName;
  /** The weightiest first. */
  readonly about: readonly About[];
}
