/** A plan as hands-free practice: its exercises in order, each with its ladder. */
import { sectionOf } from '@shedbook/core';
import type { HandsFreeItem } from '../ladder/hands-free.ts';
import { ladderOf } from '../ladder/ladder.ts';
import type { ShelfLesson } from '../mastery/identity.ts';
import type { PracticePlan } from './plan-item.ts';

/** Clean loops after which an exercise is comfortable for today (our choice). */
const COMFORTABLE_LOOPS = 6;

/** The exercises of a plan for `startHandsFree`; breaks and the groove alone are left out. */
export function handsFreeItems(plan: PracticePlan, shelf: readonly ShelfLesson[]): readonly HandsFreeItem[] {
  return plan.items.flatMap(({ lesson: id, exercise, number, title, tempo }): HandsFreeItem[] => {
    const lesson = shelf.find((each) => each.id === id)?.lesson;
    if (!lesson || exercise === null || !tempo || title.fact !== 'exercise-title') return [];
    const { name } = title;
    const ladder = ladderOf(sectionOf(lesson, number).tempo);
    return [{ name, ladder, fromBpm: tempo.fromBpm, comfortableLoops: COMFORTABLE_LOOPS }];
  });
}
