/** Lessons and loops for tests: an invented swing sheet, and students who play it as told. */
import { Bpm, type Form, type Lesson, Milliseconds, parseLesson } from '@shedbook/core';
import { type HeardLoop, type HeardStroke, type LoopTask, loopTask, type TaskStroke } from '@shedbook/judge';

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

/** A stroke as written, played as told. */
export function play(stroke: TaskStroke, changes: Partial<HeardStroke> = {}): HeardStroke {
  const { voice, written, levelDb } = stroke;
  return { voice, written, offsetMs: Milliseconds(0), levelDb, confidence: 1, ...changes };
}

/** A loop exactly as written, but for the changes. */
export function playLoop(task: LoopTask, changes: Partial<HeardLoop> = {}): HeardLoop {
  const voices = [...new Set(task.strokes.map((stroke) => stroke.voice))];
  const strokes = task.strokes.map((stroke) => play(stroke));
  return { bpm: task.bpm, levelsBy: 'midi', voices, strokes, missed: [], extra: [], ...changes };
}
