/** Takes of notes for tests: an invented swing lesson, played exactly or with what a test does to it. */
import {
  Bpm,
  type Form,
  type FullReport,
  isVoice,
  type Lesson,
  parseLesson,
  perform,
  Seconds,
  type Stroke,
  TakeDb,
  type WrittenPlace,
} from '@shedbook/core';
import { type Asked, listenToNotes, type PlayedNote } from '@shedbook/listen';

/** The text of the lesson. */
export const SWING_TEXT = `title: Swing
tempo: 100
feel: triplet
exercises:
  - x.. ..x x.x ..x
  - ..x ... .x. x..
  - x.. ..x x.. ..x
groove: {ride: "x x.x x x.x", hihat-foot: ". x . x", bass: "x x x x"}
`;

/**
 * The lesson.
 * @throws Error with its problems when it has any.
 */
export function swingLesson(): Lesson {
  const { lesson, problems } = parseLesson(SWING_TEXT, 'swing.lesson.yaml');
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

const FORM: Form = {
  name: 'eight',
  sections: [{ play: 'pattern', bars: 8, ending: null }],
  repeat: 1,
  countInBars: 0,
};

/** Exercise 1 for eight bars at 100. */
export const asked: Asked = { lesson: swingLesson(), exercise: 1, form: FORM };

/** Seconds before the first bar. */
export const SILENCE = 1.7;

/** A note, with where it is written. */
export interface TrueNote extends PlayedNote {
  readonly written: WrittenPlace;
}

/** The notes that a kit sends of strokes played as written. */
export function notesSent(strokes: readonly Stroke[]): readonly PlayedNote[] {
  return strokes.flatMap(({ voice, timeSeconds, levelDb }) =>
    isVoice(voice) ? [{ voice, timeSeconds, levelDb: TakeDb(levelDb) }] : [],
  );
}

/** The notes of an exercise at a tempo, each changed or, where `change` gives null, left out. */
export function playNotes(
  exercise: number,
  bpm: number,
  change: (note: TrueNote) => TrueNote | null = (note) => note,
): readonly TrueNote[] {
  const { strokes } = perform(asked.lesson, { exercise, form: FORM, bpm: Bpm(bpm) });
  return strokes
    .flatMap(({ voice, timeSeconds, levelDb, written }): TrueNote[] =>
      isVoice(voice)
        ? [{ voice, timeSeconds: Seconds(timeSeconds + SILENCE), levelDb: TakeDb(levelDb), written }]
        : [],
    )
    .flatMap((note) => change(note) ?? [])
    .toSorted((a, b) => a.timeSeconds - b.timeSeconds);
}

/** A note as an instrument sends it. */
export function bare({ timeSeconds, voice, levelDb }: PlayedNote): PlayedNote {
  return { timeSeconds, voice, levelDb };
}

/**
 * The report on notes of exercise 1.
 * @throws Error with the code of the refusal when there is none.
 */
export function reportOfNotes(notes: readonly PlayedNote[]): FullReport {
  const { report, refusal } = listenToNotes(
    notes.map(bare),
    Seconds((notes.at(-1)?.timeSeconds ?? 0) + 1),
    asked,
  );
  if (!report) throw new Error(refusal.fact);
  return report;
}
