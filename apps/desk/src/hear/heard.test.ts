/** Every edit of a lesson against everything that sounds or shows: none of them may go on with what was before. */
import { changeLesson, editLesson, type Lesson, parseLesson } from '@shedbook/core';
import { writeStandardSheet } from '@shedbook/pack';
import { describe, expect, it } from 'vitest';
import { notateExercise } from '../notation/exercise-drawing.tsx';
import { heardOf, insteadOf, layersUpTo, programOf, settingsOf, upToLayer } from './heard.ts';
import { AS_WRITTEN, type SoundChoice } from './sound-choice.ts';

const TEXT = `title: Under edit
tempo: {start: 80, goal: 120, step: 8}
feel: triplet
groove:
  ride: x xx x xx
  hihat-foot: . x . x
exercises:
  - "x. .. xx .. | .. x. .. .x"
  - ".. x. .. .."
forms:
  tune: {sections: [{pattern: 2}, {time: 2}]}
`;

const HEARD_FIRST: SoundChoice = { ...AS_WRITTEN, exercise: 1 };

function read(text: string): Lesson {
  const { lesson, problems } = parseLesson(text, 'lesson');
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

/** Everything that sounds or shows of a lesson, as texts that differ where it does. */
function outcomes(lesson: Lesson, choice: SoundChoice) {
  const heard = heardOf(lesson, choice);
  const { strokes, end, clicks } = programOf(heard);
  const [exercise] = lesson.exercises;
  const file = (format: 'midi' | 'musicxml') =>
    Buffer.from(writeStandardSheet(lesson, format).content).toString('base64');
  return {
    sound: JSON.stringify([strokes, end, clicks.length, settingsOf(heard, choice)]),
    midi: file('midi'),
    musicxml: file('musicxml'),
    drawn: exercise ? JSON.stringify(notateExercise(exercise, heard.section.meter)) : '',
  };
}

type Outcome = keyof ReturnType<typeof outcomes>;

function set(path: readonly (string | number)[], value: unknown) {
  return (text: string) => editLesson(text, path, value);
}

/** Each edit, and what it changes; what is left out it must leave alone. */
const EDITS: readonly (readonly [string, (text: string) => string, readonly Outcome[]])[] = [
  ['another tempo', set(['tempo', 'start'], 96), ['sound', 'midi', 'musicxml']],
  ['another feel', set(['feel'], 'even'), ['sound', 'midi', 'musicxml']],
  [
    'another meter',
    (text) => changeLesson(text, { section: null, meter: '3/4' }).text,
    ['sound', 'midi', 'musicxml', 'drawn'],
  ],
  ['a stroke of the groove', set(['groove', 'ride'], 'x x x x'), ['sound', 'midi', 'musicxml']],
  ['a voice more', set(['groove', 'bass'], 'x . x .'), ['sound', 'midi', 'musicxml']],
  ['a voice less', set(['groove', 'hihat-foot'], undefined), ['sound', 'midi', 'musicxml']],
  ['a level', set(['balance', 'hihat-foot'], -20), ['sound', 'midi', 'musicxml']],
  ['another voice for the exercises', set(['comping'], 'tom-high'), ['sound', 'midi', 'musicxml', 'drawn']],
  [
    'a stroke of the exercise',
    set(['exercises', 0], 'x. .. .. .. | .. x. .. .x'),
    ['sound', 'midi', 'musicxml', 'drawn'],
  ],
  ['a bar less', set(['exercises', 0], 'x. .. xx ..'), ['sound', 'midi', 'musicxml', 'drawn']],
  [
    'an exercise silenced by a fill',
    set(['exercises', 0], { pattern: 'x. .. xx .. | .. x. .. .x', fill: 3 }),
    ['sound', 'midi', 'musicxml'],
  ],
  [
    'an exercise louder',
    set(['exercises', 0], { pattern: 'x. .. xx .. | .. x. .. .x', dynamics: 'pp' }),
    ['sound', 'midi', 'musicxml'],
  ],
  [
    'limbs that rest',
    set(['exercises', 0], { pattern: 'x. .. xx .. | .. x. .. .x', rests: 'other foot' }),
    ['sound', 'midi', 'musicxml'],
  ],
  [
    'the form that is heard',
    set(['forms', 'tune', 'sections'], [{ pattern: 4 }]),
    ['sound', 'midi', 'musicxml'],
  ],
  [
    'a section before it',
    set(['sections'], [{ heading: 'Fast', tempo: 140, exercises: ['x. x. x. x.'] }]),
    ['midi', 'musicxml'],
  ],
];

describe('an edit', () => {
  it.each(EDITS)('[ST400] sounds and shows at once: %s', (_, edit, changes) => {
    const choice = { ...HEARD_FIRST, form: 'tune' };
    const before = outcomes(read(TEXT), choice);
    const after = outcomes(read(edit(TEXT)), choice);
    const changed = (Object.keys(before) as Outcome[]).filter((each) => before[each] !== after[each]);
    expect(changed).toEqual(changes);
  });

  it('[ST400] takes the place of what was chosen over it, and of nothing else', () => {
    const lesson = read(TEXT);
    const slower = { ...HEARD_FIRST, ...insteadOf(heardOf(lesson, HEARD_FIRST), { bpm: 60, feel: '1.5:1' }) };
    expect(heardOf(lesson, slower)).toMatchObject({ bpm: 60, feel: '1.5:1' });
    const faster = read(editLesson(TEXT, ['tempo', 'start'], 96));
    expect(heardOf(faster, slower)).toMatchObject({ bpm: 96, feel: '1.5:1' });
    const even = read(editLesson(TEXT, ['feel'], 'even'));
    expect(heardOf(even, slower)).toMatchObject({ bpm: 60, feel: 'even' });
  });

  it('[ST400] leaves the exercise among the layers when a voice joins the groove or leaves it', () => {
    const lesson = read(TEXT);
    const more = read(editLesson(TEXT, ['groove', 'bass'], 'x . x .'));
    expect(lesson.layers.length).toBe(3);
    expect([heardOf(lesson, HEARD_FIRST).layers, heardOf(more, HEARD_FIRST).layers]).toEqual([3, 4]);
    // the groove alone stays the groove alone
    const alone = { ...HEARD_FIRST, upTo: upToLayer(lesson.layers, 2) };
    expect(alone.upTo).toBe('hihat-foot');
    expect([layersUpTo(lesson.layers, alone.upTo), layersUpTo(more.layers, alone.upTo)]).toEqual([2, 2]);
    const less = read(editLesson(TEXT, ['groove', 'hihat-foot'], undefined));
    expect(heardOf(less, alone).layers).toBe(less.layers.length);
  });

  it('[ST400] names no exercise, bar or form that was taken out', () => {
    const gone = { ...HEARD_FIRST, exercise: 2, bar: 1, form: 'tune' };
    const lesson = read(editLesson(editLesson(TEXT, ['exercises', 1], undefined), ['forms'], undefined));
    const heard = heardOf(lesson, gone);
    expect([heard.exercise, heard.bar]).toEqual([null, null]);
    expect(heard.form.name).not.toBe('tune');
  });
});
