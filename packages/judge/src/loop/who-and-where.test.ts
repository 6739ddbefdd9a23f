import { type Lesson, parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { loopTask } from './task.ts';
import { whoPlays } from './who-and-where.ts';

it('[JU4300] both hands clap, whichever leads', () => {
  const text = (setUp: string) =>
    `title: T\nsetUp: ${setUp}\ngroove: {}\ncomping: clap\nexercises: [x x x x]\n`;
  // common practice: nobody claps with one hand
  for (const setUp of ['right-handed', 'left-handed']) {
    const lesson = parseLesson(text(setUp), 'x.lesson.yaml').lesson as Lesson;
    const [form] = lesson.forms;
    if (!form) throw new Error('a form');
    const task = loopTask(lesson, { exercise: 1, form, bpm: lesson.tempo.startBpm });
    expect(whoPlays(task, 'clap', null)).toEqual({ limb: 'both hands', voice: 'clap' });
  }
});
