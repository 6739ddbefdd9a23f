/**
 * What a scene is.
 *
 * Conventions: frames count from 0; a scene's music begins at a frame, so that what falls on a frame is shown and heard
 * at once; strokes are in seconds from there, which is the first click of the count-in or, over a performance, where its
 * recording begins to be heard; tempi in quarter notes a minute.
 */
import type { Bpm, Form, Layer, Lesson, Seconds, Stroke } from '@shedbook/core';
import type { Clock, Landing, Program } from '@shedbook/playing';
import type { Shown } from './recorded.ts';

/** Frames a second that a film may have: both divide the samples of a second. */
export const FRAME_RATES = [30, 60] as const;

/** Frames a second. */
export type FrameRate = (typeof FRAME_RATES)[number];

interface Span {
  /** First frame of the film that belongs to the scene. */
  readonly startFrame: number;
  readonly frames: number;
}

/** The first card. */
export interface TitleScene extends Span {
  readonly kind: 'title';
}

/** A stage of the groove: what joins, and from which bar of the form (from 1) it plays. */
export interface Stage {
  readonly layer: Layer;
  readonly fromBar: number;
}

/** A scene in which something plays. */
export interface PlayedScene extends Span {
  readonly kind: 'groove' | 'exercise';
  /** The section of the lesson that it is of. */
  readonly lesson: Lesson;
  /** Number of the exercise; null for the groove. */
  readonly exercise: number | null;
  readonly form: Form;
  readonly bpm: Bpm;
  /** What is played, bar by bar as it is played. */
  readonly program: Program;
  /** The form as it is written; over a performance its bars may have come in another order. */
  readonly asked: Program;
  /** The bar of the form, from 1, that each bar of the program is. */
  readonly formBars: readonly number[];
  /** Which place is heard when: seconds from the first frame after the lead. */
  readonly clock: Clock;
  readonly landings: readonly Landing[];
  /** Frames of the scene before its sound begins. */
  readonly leadFrames: number;
  readonly strokes: readonly Stroke[];
  readonly durationSeconds: Seconds;
  /** Stages of the groove; none in an exercise. */
  readonly stages: readonly Stage[];
  /** What is shown of a recording; null where the scene follows the grid. */
  readonly shown: Shown | null;
}

/** A scene. */
export type Scene = TitleScene | PlayedScene;

/** A scene that has not been given its first frame. */
export type Unplaced<S extends Scene = Scene> = S extends Scene ? Omit<S, 'startFrame'> : never;
