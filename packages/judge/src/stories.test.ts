import { readFileSync } from 'node:fs';
import { type Form, type Lesson, parseLesson } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { hearStory, taskOf } from '../../../internal/testing/stories/hear.mjs';
import { STORIES, UNSEEN } from '../../../internal/testing/stories/stories.data.mjs';
import { faultsOf } from '../../../internal/testing/stories/verdict.mjs';
import { type JudgeTask, judge, type Level } from './index.ts';

const file = new URL('../../../demo/first-swing.lesson.yaml', import.meta.url);
const lesson = parseLesson(readFileSync(file, 'utf8'), 'first-swing').lesson as Lesson;
const LOOP: Form = {
  name: 'loop',
  sections: [{ play: 'pattern', bars: 4, ending: null }],
  repeat: 1,
  countInBars: 0,
};

interface Story {
  readonly name: string;
  readonly level: string;
  readonly form?: number;
  /** Whether its rounds differ, so that only the whole is asked about. */
  readonly takeOnly?: boolean;
}

describe('the verdict that a good teacher would give', () => {
  it.each([...STORIES, ...UNSEEN] as readonly Story[])('[JU3] $name', (story) => {
    const bars = story.form ?? 4;
    const form = { ...LOOP, sections: [{ play: 'pattern', bars, ending: null } as const] };
    const { take, loops } = hearStory(lesson, form, story as never);
    const task = taskOf(lesson, form, story as never) as JudgeTask;
    const verdicts = (story.takeOnly ? [take] : [take, ...loops]).map(
      (heard) => judge(task, heard, story.level as Level).verdict,
    );
    const faults = verdicts.flatMap((verdict) =>
      faultsOf(story, verdict).map((fault: string) => `${fault}: ${JSON.stringify(verdict)}`),
    );
    expect(faults).toEqual([]);
  });
});
