import { readFileSync } from 'node:fs';
import { type Form, type Lesson, parseLesson } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { hearStory, taskOf } from '../../../internal/testing/stories/hear.mjs';
import { STORIES } from '../../../internal/testing/stories/stories.data.mjs';
import { type About, type JudgeTask, judge, type Level, type Verdict } from './index.ts';

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
  readonly is: string | readonly string[];
  readonly first?: string;
  readonly voice?: string;
  readonly has?: readonly string[];
  readonly not?: readonly string[];
  readonly form?: number;
  readonly unevenOnly?: readonly string[];
}

function check(story: Story, { is, about }: Verdict) {
  const told = JSON.stringify({ is, about }).slice(0, 900);
  const whats = about.map(({ what }: About) => what as string);
  expect([story.is].flat(), told).toContain(is);
  if (is === 'clean')
    expect(
      whats.filter((what) => what !== 'offset'),
      told,
    ).toEqual([]);
  if (story.first) expect(whats[0], told).toBe(story.first);
  if (story.voice) expect(about[0]?.voice, told).toBe(story.voice);
  for (const what of story.has ?? []) expect(whats, told).toContain(what);
  for (const what of story.not ?? []) expect(whats, told).not.toContain(what);
  if (story.unevenOnly) {
    const uneven = about.filter(({ what }: About) => what === 'uneven').map(({ voice }: About) => voice);
    expect(uneven, told).toEqual(story.unevenOnly);
  }
}

describe('the verdict that a good teacher would give', () => {
  it.each(STORIES as readonly Story[])('[JU3] $name', (story) => {
    const bars = story.form ?? 4;
    const form = { ...LOOP, sections: [{ play: 'pattern', bars, ending: null } as const] };
    const { take, loops } = hearStory(lesson, form, story as never);
    const task = taskOf(lesson, form, story as never) as JudgeTask;
    check(story, judge(task, take, story.level as Level).verdict);
    for (const loop of loops) check(story, judge(task, loop, story.level as Level).verdict);
  });
});
