import { readFileSync } from 'node:fs';
import { type Form, type Lesson, parseLesson } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { taskOf } from '../../../internal/testing/stories/hear.mjs';
import { hearSound } from '../../../internal/testing/stories/sound.mjs';
import { AUDIO_STORIES } from '../../../internal/testing/stories/stories.data.mjs';
import { faultsOf } from '../../../internal/testing/stories/verdict.mjs';
import { type JudgeTask, judge, type Level } from './index.ts';

const file = new URL('../../../demo/first-swing.lesson.yaml', import.meta.url);
const lesson = parseLesson(readFileSync(file, 'utf8'), 'first-swing').lesson as Lesson;
/** Short ones, since the ear takes its time; `npm run bench judge` hears all of them, four bars each. */
const FORM: Form = {
  name: 'loop',
  sections: [{ play: 'pattern', bars: 2, ending: null }],
  repeat: 1,
  countInBars: 0,
};
const HEARD = [
  'a fluent player at 120',
  'the snare alone, the rest by loudspeaker, as the page advises',
  '30 ms early throughout',
  'listening first, the loudspeaker heard',
  'straight eighths in a swing lesson',
  'ride left out',
  'tom instead of snare, with the click',
  'one snare stroke a bar, as written',
];

interface Story {
  readonly name: string;
  readonly level: string;
}

describe('the same from sound, with and without a loudspeaker', () => {
  const stories = (AUDIO_STORIES as readonly Story[]).filter(({ name }) => HEARD.includes(name));

  it.each(stories)('[JU3] $name', (story) => {
    const { take } = hearSound(lesson, FORM, story as never);
    const { verdict } = judge(taskOf(lesson, FORM, story as never) as JudgeTask, take, story.level as Level);
    expect(faultsOf(story, verdict), JSON.stringify(verdict)).toEqual([]);
  });
});
