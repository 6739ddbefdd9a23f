import { exerciseKey, type Lesson, parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { NOW } from '../../test/students.ts';
import { EMPTY_LOG } from '../log/merge.ts';
import { skillsOf, tellSkill } from '../mastery/skills.ts';
import { draftNext } from './draft.ts';

function read(sections: string): Lesson {
  const { lesson } = parseLesson(`title: First swing\nsections:\n${sections}`, 'x.lesson.yaml');
  if (!lesson) throw new Error('a lesson');
  return lesson;
}

const CLAPPED = `  - heading: Clap
    groove: {}
    comping: clap
    exercises: [x x x x, x.x x.x x.x x.x]
`;

/** What the second exercise of a lesson adds while the first is set. */
function addsOf(lesson: Lesson) {
  const [first] = lesson.exercises;
  if (!first) throw new Error('an exercise');
  const assignments = [{ lesson: 'x', exercise: exerciseKey(first), pinned: false, note: null }];
  const draft = draftNext({ name: 'Bram', shelf: [{ id: 'x', lesson }], log: EMPTY_LOG, assignments }, NOW);
  const why = draft[1]?.why;
  return why?.fact === 'after-set' ? why.adds : why;
}

it('[CH4300] what is clapped is given for the exercise that needs its subdivision', () => {
  // common practice: a preparation is for what names it, else for what is played next
  const time = (more: string) => `  - {heading: Time, ${more}exercises: [x.. ... x.. ...]}\n`;
  const other = '  - {heading: Feet, exercises: [x.. x.. ... ...]}\n';
  expect(addsOf(read(CLAPPED + other + time('before: clap, ')))).toEqual({ fact: 'adds-count', exercise: 4 });
  expect(addsOf(read(CLAPPED + other + time('')))).toEqual({ fact: 'adds-count', exercise: 3 });
  expect(addsOf(read(CLAPPED))).toEqual({ fact: 'adds-clapping' });
});

it('[CH4300] a bar without a stroke adds the groove alone', () => {
  const groove = read('  - {heading: Time, exercises: [x.. ... x.. ..., ... ... ... ...]}\n');
  expect(addsOf(groove)).toEqual({ fact: 'adds-groove' });
});

it('[CH4300] a skill is told by who plays it: one hand, two in turn, both clapping, a foot', () => {
  const told = (exercise: string, comping: string) => {
    const lesson = read(`  - {heading: A, groove: {}, comping: ${comping}, exercises: [${exercise}]}\n`);
    const [section] = lesson.sections;
    const [of] = lesson.exercises;
    if (!section || !of) throw new Error('an exercise');
    const [first] = skillsOf(section, of);
    return first && tellSkill(first, section.setUp);
  };
  const cells = { fact: 'cell', cell: 'xxx' };
  // common practice: a sticking names the hands, and the snare without one is the left hand's
  expect([
    told('xxx xxx xxx xxx', 'clap'),
    told('{pattern: xxx xxx xxx xxx, sticking: R L R L R L R L R L R L}', 'snare'),
    told('{pattern: xxx xxx xxx xxx, sticking: R R R L L L R R R L L L}', 'snare'),
    told('xxx xxx xxx xxx', 'snare'),
    told('xxx xxx xxx xxx', 'bass'),
  ]).toEqual([
    { fact: 'skill-clapped', cells },
    { fact: 'skill-hands', cells, hands: 'R L R' },
    { fact: 'skill-alone', cells, limb: 'right hand' },
    { fact: 'skill-alone', cells, limb: 'left hand' },
    { fact: 'skill-alone', cells, limb: 'right foot' },
  ]);
});
