/**
 * What a student on the practice page set out to play, as a task of the judge.
 *
 * Conventions: bars count from 1 inside the loop. Only what the student plays is judged; everything else is played by
 * the page.
 */
import {
  type Bpm,
  type Form,
  inSection,
  type Lesson,
  type Limb,
  leavesBars,
  turnedForm,
  VOICES,
  type Voice,
} from '@shedbook/core';
import type { JudgeTask } from '../judge.ts';

/** What a student set out to play. */
export interface PlayedTask {
  readonly lesson: Lesson;
  /** Number of the exercise, or null for the groove alone. */
  readonly exercise: number | null;
  readonly form: Form;
  /** Layers of the groove that are played, from 1. */
  readonly layers: number;
  readonly bpm: Bpm;
  /** Limbs that the student plays and that are judged; none is all of them. */
  readonly mine: readonly Limb[];
}

/**
 * The form as the student plays it, once: where bars are left to the student, the student plays in those and listens
 * in the others.
 */
export function studentForm(form: Form): Form {
  return turnedForm({ ...form, repeat: 1, countInBars: 0 });
}

/** Voices of the limbs that the student does not play. */
export function leftOut({ lesson, mine }: Pick<PlayedTask, 'lesson' | 'mine'>): readonly Voice[] {
  if (mine.length === 0) return [];
  return VOICES.filter((voice) => !mine.includes(lesson.limbs[voice]));
}

/**
 * The task of the judge. The page plays what the student does not, and everything where no limb was chosen; in bars
 * that it leaves to the student it is silent.
 */
export function judgeTaskOf(played: PlayedTask): JudgeTask {
  const task = inSection(played);
  const { lesson, exercise, form, layers, bpm, mine } = task;
  const out = leftOut(task);
  return {
    ...{ lesson, exercise, layers, bpm, form: studentForm(form) },
    plays: mine.length === 0 ? [] : VOICES.filter((voice) => !out.includes(voice)),
    sounding: leavesBars(form) ? [] : mine.length === 0 ? VOICES : out,
  };
}
