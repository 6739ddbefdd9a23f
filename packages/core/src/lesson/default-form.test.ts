import { expect, it } from 'vitest';
import { parseLesson } from '../document/parse.ts';
import { defaultForm, formNamed } from './default-form.ts';
import type { Lesson } from './lesson.ts';

function lessonWith(forms: string): Lesson {
  const { lesson } = parseLesson(`title: First swing\nforms: ${forms}\n`, 'first.lesson.yaml');
  if (!lesson) throw new Error('the lesson has problems');
  return lesson;
}

const WARM_UP = 'Warm up: {sections: [{time: 2}]}';

it('[LE15] plays the loop of the lesson where no form is named, wherever it stands and however it is written', () => {
  // definition: the loop that every lesson has is four bars of the pattern
  expect(defaultForm(lessonWith(`{${WARM_UP}}`))).toMatchObject({
    name: 'loop',
    sections: [{ play: 'pattern', bars: 4 }],
  });
  for (const name of ['loop', 'Loop', 'LOOP']) {
    const lesson = lessonWith(`{${WARM_UP}, ${name}: {sections: [{pattern: 2}]}}`);
    expect(defaultForm(lesson)).toMatchObject({ name, sections: [{ play: 'pattern', bars: 2 }] });
  }
});

it('[LE16] finds a form by its name, capitals, spaces and hyphens aside', () => {
  const lesson = lessonWith(`{${WARM_UP}}`);
  for (const name of ['Warm up', 'warm-up', ' WARM  UP ', 'warm_up'])
    expect(formNamed(lesson, name)?.name).toBe('Warm up');
  expect(formNamed(lesson, 'four-and-two')?.name).toBe('four and two');
  expect(formNamed(lesson, 'warmup')).toBeNull();
  expect(formNamed(lesson, '')).toBeNull();
});
