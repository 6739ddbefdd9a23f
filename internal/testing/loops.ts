/** Lessons and loops for tests: an invented swing sheet, and students who play it as told. */
import {
  Bpm,
  type Form,
  type FullReport,
  LeadDb,
  type Lesson,
  Milliseconds,
  parseLesson,
  type ReportStroke,
  Seconds,
  type Voice,
} from '@shedbook/core';
import { type JudgeTask, type LoopTask, loopTask, type TaskStroke } from '@shedbook/judge';

const SWING = `title: First swing
by: Oda Lindqvist-Reyes
tempo: {start: 72, goal: 120, step: 8}
feel: triplet
groove:
  ride: x x.x x x.x
  hihat-foot: {pattern: . x . x, level: -8}
  bass: {pattern: x x x x, level: feathered}
exercises:
  - ..x ... ..x ...
  - x.. ... x.. ...
  - ..x x.. ... ...
  - x.. ..x ... ..x
  - ..x ..x x.. ...
  - x.x ... ..x x..
`;

const FUNK = `title: Ghosts
by: Oda Lindqvist-Reyes
tempo: {start: 60, goal: 92, step: 4}
groove:
  hihat: xx xx xx xx
  bass: x . x .
exercises:
  - . X . X
  - ...g X... ..g. X...
  - .g.. X..g .g.. X...
`;

/**
 * The lesson that a text holds.
 * @throws Error with the problems when it has any: test lessons have none.
 */
export function lessonOf(text: string): Lesson {
  const { lesson, problems } = parseLesson(text, 'test.lesson.yaml');
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

/** A lesson as a shelf has it. */
interface OnShelf {
  readonly id: string;
  readonly lesson: Lesson;
}

/** A swing sheet of six exercises. */
export const swing: OnShelf = { id: 'first-swing', lesson: lessonOf(SWING) };

/** A funk sheet of three exercises. */
export const funk: OnShelf = { id: 'ghosts', lesson: lessonOf(FUNK) };

/**
 * A form of a lesson by its name.
 * @throws Error when there is none.
 */
export function formOf(lesson: Lesson, name = 'loop'): Form {
  const form = lesson.forms.find((each) => each.name === name);
  if (!form) throw new Error(`no form ${name}`);
  return form;
}

/** The task of an exercise of the swing sheet in its four-bar loop. */
export function swingTask(exercise = 1, bpm = 72): LoopTask {
  return loopTask(swing.lesson, { exercise, form: formOf(swing.lesson), bpm: Bpm(bpm) });
}

/** The same as the judge is asked. */
export function swingAsked(exercise = 1, bpm = 72): JudgeTask {
  return { lesson: swing.lesson, exercise, form: formOf(swing.lesson), bpm: Bpm(bpm) };
}

/** How a stroke is played. */
export interface PlayedAs {
  readonly offsetMs?: number;
  /** Beside the level that is asked. */
  readonly louderDb?: number;
  readonly confidence?: number;
}

/** A stroke that is not written: in which bar, and how far into it, as a share. */
export interface Extra {
  readonly voice: Voice;
  readonly bar: number;
  readonly share: number;
  readonly confidence?: number;
}

/** What an ear without mistakes says of one loop: each stroke as told, null where it is left out. */
export function loopReport(
  task: LoopTask,
  playAs: (stroke: TaskStroke, index: number) => PlayedAs | null = () => ({}),
  { extra = [], kind = 'midi' }: { readonly extra?: readonly Extra[]; readonly kind?: 'audio' | 'midi' } = {},
): FullReport {
  const strokes = task.strokes.flatMap((stroke, index): ReportStroke[] => {
    const played = playAs(stroke, index);
    if (!played) return [];
    const { offsetMs = 0, louderDb = 0, confidence = 1 } = played;
    return [
      {
        timeSeconds: Seconds(stroke.timeSeconds + offsetMs / 1000),
        voice: stroke.voice,
        levelDb: LeadDb(stroke.levelDb + louderDb),
        written: stroke.written,
        offsetMs: Milliseconds(offsetMs),
        confidence,
      },
    ];
  });
  const added = extra.map(
    ({ voice, bar, share, confidence = 1 }): ReportStroke => ({
      timeSeconds: Seconds((bar - 1 + share) * task.barSeconds),
      voice,
      levelDb: LeadDb(0),
      written: null,
      offsetMs: null,
      confidence,
    }),
  );
  const lines = Array.from({ length: task.bars }, (_, bar) => ({
    timeSeconds: Seconds(bar * task.barSeconds),
    bpm: task.bpm,
  }));
  const report = {
    version: 1,
    take: { kind, durationSeconds: Seconds(task.bars * task.barSeconds) },
    alignment: { startSeconds: Seconds(0), bpm: task.bpm, driftBpmPerMinute: 0, confidence: 1 },
    strokes: [...strokes, ...added].toSorted((a, b) => a.timeSeconds - b.timeSeconds),
    missed: [],
    voices: {},
    swingRatio: null,
    balanceDb: {},
    unheard: [],
    missedSeconds: [],
    tempo: lines,
    click: lines,
    barToBarPercent: 0,
    evenness: [],
    playedBars: lines.map((_, index) => index + 1),
    lessonBalanceDb: {},
    lead: task.lead,
    asked: {
      bpm: task.bpm,
      swingRatio: null,
      beatsInBar: task.beats.length,
      quartersInBar: task.quartersInBar,
    },
  };
  return report satisfies FullReport;
}
