/**
 * From the report of one loop of a live stream to a verdict for this student: what of it belongs to the loop, and is
 * to be judged.
 *
 * Conventions: bars count from 1 inside the loop. Only what the student plays is judged.
 */

import { type Bpm, type Form, type Lesson, type Limb, VOICES, type Voice } from '@shedbook/core';
import type { Listened } from '@shedbook/listen';
import { medianDeviation } from '@shedbook/signal';
import type { Level } from '../level/levels.data.ts';
import { type HeardLoop, splitLoops } from './heard.ts';
import { judgeLoop, type LoopJudgement } from './judge.ts';
import { type LoopTask, loopTask } from './task.ts';

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

function leavesBars(form: Form): boolean {
  return form.sections.some((section) => section.play === 'rest');
}

const TURNED = { rest: 'pattern', pattern: 'rest', time: 'time' } as const;

/**
 * The form as the student plays it, once: where bars are left to the student, the student plays in those and listens
 * in the others.
 */
export function studentForm(form: Form): Form {
  const once = { ...form, repeat: 1, countInBars: 0 };
  if (!leavesBars(form)) return once;
  return { ...once, sections: form.sections.map((each) => ({ ...each, play: TURNED[each.play] })) };
}

/** Voices of the limbs that the student does not play. */
export function leftOut({ lesson, mine }: Pick<PlayedTask, 'lesson' | 'mine'>): readonly Voice[] {
  if (mine.length === 0) return [];
  return VOICES.filter((voice) => !mine.includes(lesson.limbs[voice]));
}

function heardLoop(task: PlayedTask, asked: LoopTask, { report }: Listened): HeardLoop {
  const loop = report ? splitLoops(report, asked)[0] : undefined;
  if (!report || !loop)
    return { bpm: task.bpm, levelsBy: null, voices: [], strokes: [], missed: [], extra: [] };
  const out = leftOut(task);
  const isPlayed = (each: { readonly voice: Voice }) => !out.includes(each.voice);
  return {
    bpm: loop.bpm,
    // What a microphone takes depends on where it stands, so only what a kit sends is held against a student.
    levelsBy: loop.levelsBy === 'midi' ? 'midi' : null,
    voices: loop.voices.filter((voice) => !out.includes(voice)),
    strokes: loop.strokes.filter(isPlayed),
    missed: loop.missed.filter(isPlayed),
    // While the recording has its turn, what is heard is the recording.
    extra: leavesBars(task.form) ? [] : loop.extra.filter(isPlayed),
  };
}

/** The verdict on one loop, with reasons. */
export function judgePlayed(task: PlayedTask, heard: Listened, level: Level): LoopJudgement {
  const { lesson, exercise, layers, bpm } = task;
  const asked = loopTask(lesson, {
    ...{ exercise, layers, bpm },
    form: studentForm(task.form),
    mute: leftOut(task),
  });
  return judgeLoop(asked, heardLoop(task, asked, heard), level);
}

/** Nobody plays this evenly: half of the strokes within so many ms of the middle. */
const TOO_EVEN_MS = 2;
/** Fewer strokes say nothing about evenness. */
const FEWEST_EVEN = 10;

/**
 * Whether a microphone heard the recording and not the student: no hand is as even as a loudspeaker.
 * Source: E. Hellmer and G. Madison, "Quantifying microtiming patterning and variability in drum kit recordings",
 * Music Perception 33(2), 2015: deviations of professional drummers scatter by several ms.
 */
export function isRecordingItself({ report }: Listened): boolean {
  if (report?.take.kind !== 'audio') return false;
  const offsets = report.strokes.flatMap(({ offsetMs }) => offsetMs ?? []);
  if (offsets.length < FEWEST_EVEN) return false;
  return medianDeviation(offsets) < TOO_EVEN_MS;
}
