/**
 * What the picture of a lesson is drawn from: read when the lesson comes into sight, one after the other, so that no
 * frame waits for more than one of them.
 */
import { type Lesson, parseLesson } from '@shedbook/core';
import type { LessonSummary } from '@shedbook/routes';
import { startTransition, useEffect, useState } from 'react';
import { readLesson } from '../document/api.ts';

/** Lessons that stay at hand; more than a screen shows. */
const KEPT = 120;

interface Wanted {
  readonly name: string;
  readonly id: string;
  readonly show: (lesson: Lesson | null) => void;
}

const known = new Map<string, Lesson | null>();
const waiting = new Set<Wanted>();
let isWorking = false;

function keep(name: string, lesson: Lesson | null): void {
  known.set(name, lesson);
  const [oldest] = known.keys();
  if (known.size > KEPT && oldest !== undefined) known.delete(oldest);
}

/** Lets a frame be drawn, and whatever was pressed be answered. */
const nextFrame = () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 0)));

async function work(): Promise<void> {
  if (isWorking) return;
  isWorking = true;
  for (let [next] = waiting; next; [next] = waiting) {
    waiting.delete(next);
    const stored = await readLesson(next.id).catch(() => null);
    const lesson = stored && parseLesson(stored.text, 'lesson').lesson;
    keep(next.name, lesson);
    startTransition(() => next.show(lesson));
    await nextFrame();
  }
  isWorking = false;
}

/** The lesson, once it is near and has been read; null before, and where it cannot be read. */
export function usePicture({ id, revision }: LessonSummary, isNear: boolean): Lesson | null {
  const name = `${id} ${revision}`;
  const [lesson, show] = useState<Lesson | null>(() => known.get(name) ?? null);
  useEffect(() => {
    if (!isNear) return undefined;
    const there = known.get(name);
    if (there !== undefined) {
      show(there);
      return undefined;
    }
    const wanted = { name, id, show };
    waiting.add(wanted);
    void work();
    return () => void waiting.delete(wanted);
  }, [id, name, isNear]);
  return isNear ? lesson : null;
}
