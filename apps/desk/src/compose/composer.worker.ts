/** Composing and grading beside the page. */
import { compose, explain } from '@shedbook/composer';
import { type Exercise, type Lesson, parseLesson } from '@shedbook/core';
import type { BarGrade, ComposeAnswer, ComposeOrder } from './composer-messages.ts';

function gradeAll(lesson: Lesson, exercises: readonly Exercise[]): readonly BarGrade[] {
  return exercises.map((exercise) => {
    const { grade, reasons } = explain({ ...lesson, exercises }, exercise);
    return { points: grade.points, reasons };
  });
}

function answer({ id, text, keep }: ComposeOrder): ComposeAnswer {
  const { lesson } = parseLesson(text, 'lesson');
  if (!lesson) return { id, exercises: null, grades: [], notes: [], blocks: [] };
  if (keep === null)
    return { id, exercises: null, grades: gradeAll(lesson, lesson.exercises), notes: [], blocks: [] };
  const { exercises, report } = compose(lesson, { keep });
  return { id, exercises, grades: gradeAll(lesson, exercises), notes: report.notes, blocks: report.blocks };
}

self.onmessage = ({ data }: MessageEvent<ComposeOrder>) => self.postMessage(answer(data));
