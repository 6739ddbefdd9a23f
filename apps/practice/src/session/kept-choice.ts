/** What a student chose last time, by lesson, kept in the browser. */
import type { Lesson } from '@shedbook/core';
import { rememberedOwn, rememberOwn } from '../kept/students.ts';
import { firstChoice, mostLayers, type PracticeChoice, withinRange } from './choice.ts';
import { ownSetUp } from './own-set-up.ts';

/** A choice, and the tempo of every exercise that was played, by its lasting name. */
export interface KeptChoice {
  readonly choice: Omit<PracticeChoice, 'bpm'>;
  /** Quarter notes a minute, by the exercise's lasting name. */
  readonly tempi: Readonly<Record<string, number>>;
}

function keyOf(lessonId: string): string {
  return `practice.${lessonId}`;
}

function readKept(lessonId: string): Partial<KeptChoice> {
  try {
    return (JSON.parse(rememberedOwn(keyOf(lessonId)) ?? '{}') as Partial<KeptChoice> | null) ?? {};
  } catch {
    return {};
  }
}

/** What was chosen; the lesson's own where nothing was, or where the lesson has changed. */
export function recallChoice(lessonId: string, lesson: Lesson): KeptChoice {
  const { choice, tempi = {} } = readKept(lessonId);
  const { bpm: _, ...first } = firstChoice(lesson);
  const merged = { ...first, ...choice };
  const setUp = ownSetUp() ?? merged.setUp;
  const layers = Math.min(Math.max(1, merged.layers), mostLayers(lesson));
  const known = Object.entries(tempi).filter(([, bpm]) => Number.isFinite(bpm));
  return {
    choice: { ...merged, setUp, layers },
    tempi: Object.fromEntries(known.map(([key, bpm]) => [key, withinRange(bpm)])),
  };
}

/** Keeps a choice for the next visit. */
export function keepChoice(lessonId: string, kept: KeptChoice): void {
  rememberOwn(keyOf(lessonId), JSON.stringify(kept));
}
