import { parseLesson } from '@shedbook/core';
import { expect, it, onTestFinished, vi } from 'vitest';
import { keepChoice, recallChoice } from './kept-choice.ts';
import { keepSetUp, ownSetUp, takeSetUp } from './own-set-up.ts';

it('[ST5901] a set-up is the student’s, for every lesson; what the teacher sets reaches the page, and what the student chooses since stays', () => {
  const kept = new Map<string, string>();
  vi.stubGlobal('window', {
    localStorage: {
      getItem: (name: string) => kept.get(name) ?? null,
      setItem: (name: string, value: string) => kept.set(name, value),
    },
  });
  onTestFinished(() => {
    vi.unstubAllGlobals();
  });
  const { lesson } = parseLesson('title: First swing\nexercises: [x . x .]', 'first.lesson.yaml');
  if (!lesson) throw new Error('the lesson has problems');
  const inLesson = (id: string) => recallChoice(id, lesson).choice.setUp;
  expect([ownSetUp(), inLesson('first')]).toEqual([null, 'right-handed']);
  keepChoice('first', recallChoice('first', lesson));
  keepSetUp('left-handed');
  // definition: what was kept of the first lesson says right-handed, since nobody had chosen then
  expect([inLesson('first'), inLesson('another')]).toEqual(['left-handed', 'left-handed']);
  takeSetUp('right-handed');
  expect(ownSetUp()).toBe('right-handed');
  keepSetUp('left-handed');
  takeSetUp('right-handed');
  expect(ownSetUp()).toBe('left-handed');
  takeSetUp('left-handed');
  keepSetUp('right-handed');
  takeSetUp('left-handed');
  expect(ownSetUp()).toBe('right-handed');
});
