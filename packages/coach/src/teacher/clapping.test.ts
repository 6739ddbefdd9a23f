import { Bpm, exerciseKey, type Lesson, parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { loops, NOW, TODAY } from '../../test/students.ts';
import { addEntry, EMPTY_LOG } from '../log/merge.ts';
import { skillsOf, tellSkill } from '../mastery/skills.ts';
import { planPractice } from '../plan/plan.ts';
import { formatDay } from '../time/moment.ts';
import { draftNext } from './draft.ts';
import { passEntry } from './pass.ts';

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

const PREPARED = read(
  `${CLAPPED}  - {heading: Time, before: Clap, exercises: [x.. ... x.. ..., ..x ... ..x ...]}\n`,
);

function keyOf(number: number): string {
  const exercise = PREPARED.exercises.find((each) => each.number === number);
  if (!exercise) throw new Error(`no exercise ${number}`);
  return exerciseKey(exercise);
}

const YESTERDAY = `${formatDay(TODAY - 1)}T10:00:00Z`;

/** What the ear heard yesterday of the third exercise, the first that is played. */
function heard(records: ReturnType<typeof loops>) {
  const entry = {
    ...{ id: 'phone 1', device: 'phone', startedAt: YESTERDAY, durationSeconds: 300 as never },
    ...{ lesson: 'x', exercise: keyOf(3), form: 'loop', heardBy: 'ear' as const, loops: records },
  };
  return addEntry(EMPTY_LOG, entry);
}

function draftOf(log: ReturnType<typeof heard>) {
  const assignments = [{ lesson: 'x', exercise: keyOf(3), pinned: false, note: null }];
  return draftNext({ name: 'Bram', shelf: [{ id: 'x', lesson: PREPARED }], log, assignments }, NOW);
}

it('[CH4301] whoever was passed in a section is offered no clapping before it any more', () => {
  const bpm = Bpm(PREPARED.tempo.startBpm);
  const log = addEntry(
    EMPTY_LOG,
    passEntry({ id: 'teacher 1', startedAt: YESTERDAY, lesson: 'x', exercise: keyOf(3), bpm }),
  );
  // common practice: a preparation is for what cannot be played yet
  expect(draftOf(log).map(({ exercise }) => exercise.exercise.number)).toEqual([3, 4]);
  const task = {
    shelf: [{ id: 'x', lesson: PREPARED }],
    log,
    now: NOW,
    minutes: 30,
    assignments: [],
    seed: 1,
  };
  const numbers = planPractice(task).items.flatMap(({ number }) => number ?? []);
  expect(numbers.length).toBeGreaterThan(0);
  expect(numbers.filter((number) => number < 3)).toEqual([]);
});

it('[CH4302] what is begun and not clean yet is no firm ground: what comes next is said beside it', () => {
  const bpm = PREPARED.tempo.startBpm;
  const [set, next] = draftOf(heard(loops(2, bpm)));
  // definition: a tempo takes three clean loops, and there were two
  expect([set?.why, next?.why.fact]).toEqual([{ fact: 'set-not-clean', times: 3 }, 'beside-next']);
  expect(draftOf(heard(loops(6, bpm)))[1]?.why.fact).toBe('next-on-sheet');
});
