import { cell, formatPattern, type Lesson, parseLesson, parsePattern } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { withBar, withoutBar } from './bars.ts';
import {
  addVoice,
  changeVoice,
  hasOwnGroove,
  joinLayer,
  moveLayer,
  removeVoice,
  setComping,
  setExerciseLevelOf,
  setHow,
  setLayers,
  setLead,
  setLimb,
  takeLessonGroove,
} from './groove.ts';
import { fillFrom, signAt, withFill, withHow, withRests, withSign, withText } from './said.ts';
import { addSection, moveSection, removeSection, saysItself, setSection } from './sections.ts';

const TEXT = `title: By hand # the title
groove:
  ride: x xx x xx # the time
  hihat-foot: { pattern: . x . x, level: -8 }
exercises:
  - "x. .s .. .." # first
  - { pattern: ".. x. .. x.", sticking: L L }
sections:
  - heading: Slow # second
    tempo: 60
    exercises:
      - "x. x. x. x." # third
`;

function read(text: string): Lesson {
  const { lesson, problems } = parseLesson(text, 'lesson');
  if (!lesson || problems.length > 0) throw new Error(`${text}\n${JSON.stringify(problems)}`);
  return lesson;
}

function grooveOf({ groove }: Lesson): Readonly<Record<string, string>> {
  return Object.fromEntries(groove.map((part) => [part.voice, formatPattern(part.pattern)]));
}

const WHOLE = { lesson: read(TEXT), section: null };
const SECOND = { lesson: read(TEXT).sections[1] as Lesson, section: 1 };

describe('how a limb plays', () => {
  it('[ST2100] is written where it stands, else by voice, and taken out wherever it stands', () => {
    const said = setHow(TEXT, WHOLE, 'ride', ['tip', 'bow']);
    expect(said).toContain('how:\n  ride: tip, bow');
    expect(setHow(said, WHOLE, 'ride', [])).toBe(TEXT);
    const inGroove = TEXT.replace('level: -8', 'level: -8, how: heel up');
    const down = setHow(inGroove, WHOLE, 'hihat-foot', ['heel down']);
    expect([down.includes('how: heel down'), read(down).how]).toEqual([
      true,
      { 'hihat-foot': ['heel down'] },
    ]);
    expect(read(setHow(inGroove, WHOLE, 'hihat-foot', [])).how).toEqual({});
    const ofSection = read(setHow(said, SECOND, 'ride', ['shoulder']));
    expect([ofSection.how.ride, ofSection.sections[1]?.how.ride]).toEqual([['tip', 'bow'], ['shoulder']]);
  });

  it('[ST2100] goes with an exercise for one voice of it', () => {
    const [exercise] = read(TEXT).exercises;
    if (!exercise) throw new Error('no exercise');
    const said = withHow(exercise, 'snare', ['edge', 'lightly']);
    expect(said.how).toEqual({ snare: ['edge', 'lightly'] });
    const { how, ...plain } = withHow({ ...exercise, ...said }, 'snare', []);
    expect([how, plain]).toEqual([undefined, exercise]);
  });
});

describe('the groove by hand', () => {
  it('[ST402] is that of the lesson until a section is given its own, and can be the lesson again', () => {
    const own = changeVoice(TEXT, SECOND, 'ride', parsePattern('x x x x'));
    expect([hasOwnGroove(TEXT, 1), hasOwnGroove(own, 1)]).toEqual([false, true]);
    expect(grooveOf(read(own).sections[1] as Lesson)).toEqual({ ride: 'x x x x', 'hihat-foot': '. x . x' });
    expect(grooveOf(read(own))).toEqual(grooveOf(read(TEXT)));
    expect(read(own).sections[1]?.balance['hihat-foot']).toBe(-8);
    expect(grooveOf(read(takeLessonGroove(own, 1)).sections[1] as Lesson)).toEqual(grooveOf(read(TEXT)));
  });

  it('[ST402] has several bars, another lead, limbs, layers, and a voice for the exercises', () => {
    const twoBars = changeVoice(TEXT, WHOLE, 'ride', parsePattern('x xx x xx | x x x xx'));
    expect(twoBars).toContain('# the time');
    const led = read(setLead(twoBars, WHOLE, 'hihat-foot'));
    expect([led.lead, led.groove[0]?.pattern.bars.length]).toEqual(['hihat-foot', 2]);
    expect(read(setLimb(TEXT, WHOLE, 'hihat-foot', 'lead foot')).limbs['hihat-foot']).toBe('lead foot');
    expect(setLimb(TEXT, WHOLE, 'ride', 'lead hand')).toBe(TEXT);
    const joins = (text: string) => read(text).layers.map((layer) => layer.joins.join('+'));
    expect(joins(TEXT)).toEqual(['ride', 'hihat-foot', 'pattern']);
    const moved = setLayers(TEXT, WHOLE, moveLayer(WHOLE.lesson.layers, 1, -1));
    expect(joins(moved)).toEqual(['hihat-foot', 'ride', 'pattern']);
    const joined = setLayers(TEXT, WHOLE, joinLayer(WHOLE.lesson.layers, 1));
    expect(joins(joined)).toEqual(['ride+hihat-foot', 'pattern']);
    expect(joinLayer(read(joined).layers, 0)).toEqual([['ride'], ['hihat-foot'], ['pattern']]);
    // a voice that goes leaves no layer behind that nobody plays
    expect(joins(removeVoice(moved, WHOLE, 'hihat-foot'))).toEqual(['ride', 'pattern']);
    expect(read(removeVoice(setLead(TEXT, WHOLE, 'hihat-foot'), WHOLE, 'hihat-foot')).lead).toBe('ride');
    expect(grooveOf(read(addVoice(TEXT, WHOLE, 'bass'))).bass).toBe('. .. . ..');
    expect(read(setExerciseLevelOf(TEXT, WHOLE, 'snare', -3)).exerciseBalance.snare).toBe(-3);
  });

  it('[ST402] gives what the old voice played in the exercises to the new one, with the marks that it knows', () => {
    const after = read(setComping(TEXT, WHOLE.lesson, WHOLE, 'tom-high'));
    // a tom has no side stick: that stroke becomes a plain one
    expect(
      after.exercises.map(
        (each) => `${each.parts[0]?.voice} ${formatPattern(each.parts[0]?.pattern ?? { bars: [] })}`,
      ),
    ).toEqual(['tom-high x. .x .. ..', 'tom-high .. x. .. x.', 'tom-high x. x. x. x.']);
    const one = read(setComping(TEXT, WHOLE.lesson, SECOND, 'bass'));
    expect(one.exercises.map((each) => each.parts[0]?.voice)).toEqual(['snare', 'snare', 'bass']);
  });
});

describe('sections by hand', () => {
  it('[ST403] are made, named, moved and taken out, and comments go with them', () => {
    const more = addSection(TEXT, WHOLE.lesson, 'Fast');
    expect(read(more).sections.map((each) => each.heading)).toEqual([null, 'Slow', 'Fast']);
    expect(read(more).sections[2]?.exercises).toHaveLength(1);
    const named = setSection(more, 0, 'heading', 'Opening');
    expect(read(named).sections.map((each) => each.heading)).toEqual(['Opening', 'Slow', 'Fast']);
    for (const comment of ['# the title', '# first', '# second', '# third']) expect(named).toContain(comment);
    const moved = moveSection(named, 1, -1);
    expect(read(moved).sections.map((each) => each.heading)).toEqual(['Slow', 'Opening', 'Fast']);
    expect(
      read(moved).exercises.map((each) => formatPattern(each.parts[0]?.pattern ?? { bars: [] }))[0],
    ).toBe('x. x. x. x.');
    expect(read(removeSection(moved, 0)).sections.map((each) => each.heading)).toEqual(['Opening', 'Fast']);
    // exercises outside of a section move as one does
    expect(read(moveSection(TEXT, 1, -1)).sections.map((each) => each.heading)).toEqual(['Slow', null]);
    expect(read(setSection(TEXT, 1, 'text', ' Softly. ')).sections[1]?.text).toBe('Softly.');
    expect([saysItself(TEXT, 1), saysItself(TEXT, 0)]).toEqual([['tempo'], []]);
    // an undivided lesson is divided by its first section
    const undivided = 'title: One\nexercises:\n  - x x x x\n';
    expect(
      read(addSection(undivided, read(undivided), 'Two')).sections.map((each) => each.exercises.length),
    ).toEqual([1, 1]);
  });
});

describe('an exercise by hand', () => {
  const [, second] = WHOLE.lesson.exercises;
  if (!second) throw new Error('no second exercise');

  it('[ST404] gets bars and loses them, with what stands at them', () => {
    const twice = withBar(
      { ...second, dynamics: [{ bar: 0, beat: 1, mark: 'p', hairpin: null }] },
      0,
      'same',
    );
    expect(formatPattern(twice.parts[0]?.pattern ?? { bars: [] })).toBe('.. x. .. x. | .. x. .. x.');
    expect(twice.sticking).toEqual(['L', 'L', 'L', 'L']);
    const silent = withBar(second, 0, 'silent');
    expect(silent.parts[0]?.pattern.bars[1]).toEqual(['..', '..', '..', '..'].map(cell));
    expect(silent.sticking).toEqual(['L', 'L']);
    const left = withoutBar({ ...twice, fill: { bar: 1, beat: 2, silences: null } }, 0);
    expect([left.sticking, left.dynamics, left.fill?.bar]).toEqual([['L', 'L'], undefined, 0]);
    expect(withoutBar(second, 0)).toBe(second);
  });

  it('[ST404] says how loud, what stands over and under it, where the groove is silent, and who rests', () => {
    const at = { bar: 0, beat: 2 };
    const loud = withSign(second, at, { mark: 'f', hairpin: 'softer' });
    expect(signAt({ ...loud, number: 2 }, at)).toEqual({ mark: 'f', hairpin: 'softer' });
    expect(withSign({ ...loud, number: 2 }, at, { mark: null, hairpin: null }).dynamics).toBeUndefined();
    expect(withText(second, 'above', 0, 'ring | on').above).toEqual(['ring / on']);
    expect(withText({ ...second, above: ['a'] }, 'above', 0, ' ').above).toBeUndefined();
    const filled = withFill(second, at, null);
    expect([
      fillFrom({ ...filled, number: 2 }, at),
      withFill({ ...filled, number: 2 }, null, null).fill,
    ]).toEqual([true, undefined]);
    expect(withRests(second, ['other foot']).rests).toEqual(['other foot']);
  });
});
