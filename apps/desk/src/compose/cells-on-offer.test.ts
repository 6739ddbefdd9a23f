import { parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { beatFor, cellsOnOffer } from './cells-on-offer.ts';

function lessonIn(meter: string, feel = 'even') {
  const { lesson } = parseLesson(`title: T\nmeter: ${meter}\nfeel: ${feel}\ngroove: {}`, 't.lesson.yaml');
  if (!lesson) throw new Error('the lesson has problems');
  return lesson;
}

it('[ST5900] offers the cells that divide the beats of a meter as it does, each drawn in such a beat', () => {
  const slots = (meter: string, feel?: string) => [...cellsOnOffer(lessonIn(meter, feel)).keys()];
  // source: common practice
  expect(slots('4/4')).toEqual([2, 4]);
  expect(slots('4/4', 'triplet')).toEqual([3, 2]);
  expect(slots('12/8')).toEqual([3]);
  expect(slots('7/8')).toEqual([1, 2]);
  expect(slots('2+2+3/8')).toEqual([2, 3]);
  const seven = lessonIn('2+2+3/8');
  expect(beatFor(seven, 2).bar).toEqual({ num: 1, den: 4 });
  expect(beatFor(seven, 3).bar).toEqual({ num: 3, den: 8 });
});
