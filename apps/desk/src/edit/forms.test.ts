import { defaultForm, type Form, formNamed, parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import {
  firstEnding,
  freeName,
  ownForms,
  removeForm,
  renameForm,
  setForm,
  withOneMore,
  withSection,
  withSectionMoved,
  withSlot,
  withSlots,
  withVoiceStruck,
} from './forms.ts';

const TEXT = '# mine\ntitle: T\nfeel: triplet\nexercises: [x.. ... ..x ...] # slowly\n';

function read(text: string) {
  const { lesson, problems } = parseLesson(text, 'lesson');
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

it('[ST421] writes a form as it is made, makes a common one its own, and takes it away again', () => {
  const lesson = read(TEXT);
  const form: Form = { ...withOneMore(defaultForm(lesson)), name: 'Drill', repeat: 3, countInBars: 2 };
  const written = setForm(TEXT, form);
  expect(written).toContain('# mine');
  expect(written).toContain('# slowly');
  expect(formNamed(read(written), 'Drill')).toEqual(form);
  expect(ownForms(written)).toEqual(['Drill']);
  expect(freeName(read(written), 'Drill')).toBe('Drill 2');
  const renamed = renameForm(written, form, 'Monday');
  expect(ownForms(renamed)).toEqual(['Monday']);
  const loop = { ...defaultForm(lesson), countInBars: 0 };
  expect(defaultForm(read(setForm(written, loop)))).toEqual(loop);
  expect(removeForm(setForm(written, loop), 'loop')).toBe(written);
  expect(removeForm(written, 'Drill').trimEnd()).toBe(TEXT.trimEnd());
});

it('[ST421] changes sections and taps endings; a form keeps a section, an ending a stroke and a voice', () => {
  const lesson = read(TEXT);
  const loop = defaultForm(lesson);
  const two = withOneMore(loop);
  expect(two.sections.map(({ play, bars }) => [play, bars])).toEqual([
    ['pattern', 4],
    ['time', 4],
  ]);
  expect(withSectionMoved(two, 1, -1).sections.map(({ play }) => play)).toEqual(['time', 'pattern']);
  expect(withSection(loop, 0, null)).toBe(loop);
  expect(withSection(two, 0, null).sections).toHaveLength(1);
  const ending = firstEnding(lesson);
  // definition: the last beat of a bar of four, its last slot
  expect([ending.beat, ending.cell.text.at(-1)]).toEqual([4, 'X']);
  expect(withSlot(withSlots(ending, 3), 0).cell.text).toBe('X.X');
  expect(withSlot(withSlots(ending, 3), 2).cell.text).toBe('..X');
  expect(withVoiceStruck(ending, 'crash').voices).toEqual(['rimshot']);
  expect(withVoiceStruck(withVoiceStruck(ending, 'crash'), 'rimshot').voices).toEqual(['rimshot']);
  const form = withSection({ ...loop, name: 'Ends' }, 0, { play: 'pattern', bars: 2, ending });
  expect(formNamed(read(setForm(TEXT, form)), 'Ends')).toEqual(form);
});
