/** The student's choice while the page is open: kept for the next visit, with a tempo for each exercise. */
import { exerciseKey, type Lesson, sectionOf } from '@shedbook/core';
import { useEffect, useMemo, useState } from 'react';
import { mostLayers, type PracticeChoice, withinRange } from './choice.ts';
import { keepChoice, recallChoice } from './kept-choice.ts';
import { keepSetUp } from './own-set-up.ts';

/** The lasting name of the groove alone, among those of exercises. */
const TIME = 'time';

/** The lasting name of what is on the stand. */
export function lastingName(lesson: Lesson, exercise: number | null): string {
  const found = lesson.exercises.find((each) => each.number === exercise);
  return found ? exerciseKey(found) : TIME;
}

/** The choice for an exercise (null: time alone), and how to change it. */
export function useChoice(
  lessonId: string,
  lesson: Lesson,
  exercise: number | null,
): readonly [PracticeChoice, (change: Partial<PracticeChoice>) => void] {
  const [kept, setKept] = useState(() => recallChoice(lessonId, lesson));
  useEffect(() => keepChoice(lessonId, kept), [lessonId, kept]);
  const key = lastingName(lesson, exercise);
  const section = sectionOf(lesson, exercise);
  const bpm = kept.tempi[key] ?? section.tempo.startBpm;
  const all = section.layers.length;
  const layers = Math.min(kept.choice.layers, all);
  const choice = useMemo((): PracticeChoice => ({ ...kept.choice, layers, bpm }), [kept.choice, layers, bpm]);
  // All layers of one section are all of every other, too.
  const whole = (change: Partial<PracticeChoice>) =>
    change.layers === all ? { ...change, layers: mostLayers(lesson) } : change;
  const choose = ({ bpm: next, ...change }: Partial<PracticeChoice>) => {
    if (change.setUp) keepSetUp(change.setUp);
    setKept((before) => ({
      choice: Object.keys(change).length === 0 ? before.choice : { ...before.choice, ...whole(change) },
      tempi: next === undefined ? before.tempi : { ...before.tempi, [key]: withinRange(next) },
    }));
  };
  return [choice, choose];
}
