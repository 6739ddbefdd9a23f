import type { Form, Lesson } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { hearStory, taskOf } from '../../../internal/testing/stories/hear.mjs';
import { sheetNamed } from '../../../internal/testing/stories/lessons.mjs';
import { OTHER_SHEETS } from '../../../internal/testing/stories/other-sheets.data.mjs';
import { STORIES, UNSEEN } from '../../../internal/testing/stories/stories.data.mjs';
import { UNSEEN_NOTES } from '../../../internal/testing/stories/unseen.data.mjs';
import { faultsOf } from '../../../internal/testing/stories/verdict.mjs';
import { type JudgeTask, judge, type Level } from './index.ts';

const LOOP: Form = {
  name: 'loop',
  sections: [{ play: 'pattern', bars: 4, ending: null }],
  repeat: 1,
  countInBars: 0,
};

interface Story {
  readonly name: string;
  readonly level: string;
  /** The lesson, where it is not the first swing. */
  readonly sheet?: string;
  readonly form?: number;
  /** Whether its rounds differ, so that only the whole is asked about. */
  readonly takeOnly?: boolean;
}

describe('the verdict that a good teacher would give', () => {
  it.each([...STORIES, ...UNSEEN, ...OTHER_SHEETS, ...UNSEEN_NOTES] as readonly Story[])(
    '[JU3] $name',
    (story) => {
      const lesson = sheetNamed(story.sheet) as Lesson;
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
    },
  );
});
