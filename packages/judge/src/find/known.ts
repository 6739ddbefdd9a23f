/** What is known beside the strokes that were heard: what was asked, of whom, and how far the ear can be trusted. */
import type { Voice } from '@shedbook/core';
import type { Allowance } from '../level/levels.data.ts';
import type { LoopTask } from '../loop/task.ts';
import type { Doubts } from './doubts.ts';

/** What is known beside the strokes. */
export interface Known extends Doubts {
  /** What is asked of the student's own limbs. */
  readonly task: LoopTask;
  /** The other exercises of the lesson; made only where they are asked for. */
  readonly others: () => readonly { readonly exercise: number; readonly task: LoopTask }[];
  readonly limits: Allowance;
  readonly kind: 'audio' | 'midi';
  readonly isAlongClick: boolean;
  /** Whether a voice is the student's. */
  readonly isMine: (voice: Voice) => boolean;
  /** Whether a stroke of a voice may be the student's: theirs, or one that nobody else plays. */
  readonly isHeard: (voice: Voice) => boolean;
  /** Voices that a loudspeaker plays. */
  readonly sounding: readonly Voice[];
  /** Whether the ear itself has told whose each stroke is. */
  readonly isToldByEar: boolean;
  readonly isLoudspeakerHeard: boolean;
  /** Whether other rounds show that somebody plays, so that this one need not show it by itself. */
  readonly isSomebody: boolean;
  /** Voices that the ear has told to be mostly the loudspeaker's, or nobody's. */
  readonly hidden: ReadonlySet<Voice>;
  /** Number of the exercise, from 1, that the ear says was clearly played instead; null where it says none. */
  readonly rather: number | null;
  /** The tempi that a student climbs, and the one that is asked for; quarter notes a minute. */
  readonly ladder: {
    readonly goalBpm: number;
    readonly askedBpm: number;
    /** Whether one tempo was asked for; else it may be any from there to the goal. */
    readonly isTold: boolean;
  };
}

/** A task without some voices. */
export function without(task: LoopTask, voices: ReadonlySet<Voice>): LoopTask {
  return { ...task, strokes: task.strokes.filter(({ voice }) => !voices.has(voice)) };
}

/** The tempo that a round may have been asked at: any from the one that was asked to the goal, since a student climbs. */
export function tempoOnLadder({ askedBpm, goalBpm }: Known['ladder'], playedBpm: number): number {
  return Math.max(askedBpm, Math.min(playedBpm, goalBpm));
}
