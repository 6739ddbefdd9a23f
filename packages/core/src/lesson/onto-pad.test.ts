import { describe, expect, it } from 'vitest';
import { parseLesson } from '../document/parse.ts';
import { perform } from '../groove/perform.ts';
import { formatPattern } from '../rhythm/pattern.ts';
import type { Lesson } from './lesson.ts';
import { ontoPad, padLimbs, padVoice } from './onto-pad.ts';

function lessonOf(text: string): Lesson {
  return parseLesson(text, 'pad.lesson.yaml').lesson as Lesson;
}

function askedOf(text: string, exercise: number, form = 'loop') {
  const lesson = lessonOf(text);
  const found = lesson.forms.find(({ name }) => name === form);
  return { lesson, exercise, form: found ?? lesson.forms[0]! };
}

const TWO = `title: Two
exercises:
  - pattern: {snare: "x.. ... x.x ...", bass: "... x.. ..x ..x"}
`;

describe('on one surface', () => {
  it('[LE31] an exercise is asked for alone, on one voice, also where it has several', () => {
    const { lesson } = ontoPad(askedOf(TWO, 1));
    // definition: what either voice strikes, once where both do
    expect(lesson.exercises[0]?.parts.map(({ pattern }) => formatPattern(pattern))).toEqual([
      'x.. x.. x.x ..x',
    ]);
    expect(lesson.groove).toEqual([]);
    expect(padVoice(lessonOf(TWO), 1)).toBe('snare');
    expect(padLimbs(lessonOf(TWO), 1).toSorted()).toEqual(['lead foot', 'other hand']);
  });

  it('[LE31] every stroke is of that voice: side sticks, other exercises and the accent of the form', () => {
    const text = `title: Three
exercises:
  - "s.. ..X r.. ..g"
  - pattern: {bass: "x.. ..x ... ..."}
`;
    const asked = ontoPad(askedOf(text, 1, 'four and two'));
    const voices = (exercise: number) =>
      new Set(
        perform(asked.lesson, { ...asked, exercise })
          .strokes.map(({ voice }) => voice)
          .filter((voice) => voice !== 'click'),
      );
    expect([...voices(1), ...voices(2)]).toEqual(['snare', 'snare']);
    const [first] = asked.lesson.exercises;
    expect(first?.parts.map(({ pattern }) => formatPattern(pattern))).toEqual(['x.. ..X x.. ..g']);
    // definition: four bars, the accent struck once in the last
    const accents = perform(asked.lesson, asked).strokes.filter(({ role }) => role === 'ending');
    expect(accents).toHaveLength(asked.form.repeat);
  });

  it('[LE31] the sections of a lesson are asked for alone as well', () => {
    const text = `title: Sections
sections:
  - {heading: One, exercises: ["x.. ... x.x ..."]}
  - {heading: Two, meter: 3/4, exercises: ["x.. ... x.x"]}
`;
    const { lesson } = ontoPad(askedOf(text, 2));
    expect(lesson.sections.map(({ groove }) => groove)).toEqual([[], []]);
    expect(padVoice(lesson, 2)).toBe('snare');
  });

  it('[LE31] without an exercise nothing changes', () => {
    const asked = { ...askedOf(TWO, 1), exercise: null };
    expect(ontoPad(asked)).toBe(asked);
    expect(padLimbs(asked.lesson, null)).toEqual([]);
  });
});
