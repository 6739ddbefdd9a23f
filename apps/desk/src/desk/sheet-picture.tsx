/** A small picture of a lesson's first page: title, tempi, and the first exercises as they are written. */
import type { Lesson } from '@shedbook/core';
import { memo } from 'react';
import { ExerciseDrawing } from '../notation/exercise-drawing.tsx';
import styles from './sheet-picture.module.css';

/** Exercises that fill a picture in each of its columns. */
const SHOWN = 12;

/** Short exercises stand in two columns, as on the printed page. */
function columnsOf(lesson: Lesson): 1 | 2 {
  return lesson.exercises.some((exercise) => (exercise.parts[0]?.pattern.bars.length ?? 1) > 1) ? 1 : 2;
}

/** The picture; it says nothing to a screen reader, the words under it do. */
export const SheetPicture = memo(function SheetPicture({ lesson }: { readonly lesson: Lesson | null }) {
  return (
    <div className={styles.picture} aria-hidden="true">
      {lesson && (
        <>
          <div className={styles.title}>{lesson.title}</div>
          <div className={styles.rule} />
          <div className={styles.lines} data-columns={columnsOf(lesson)}>
            {lesson.exercises.slice(0, SHOWN * columnsOf(lesson)).map((exercise) => (
              <div key={exercise.number}>
                <ExerciseDrawing exercise={exercise} meter={lesson.meter} />
              </div>
            ))}
          </div>
        </>
      )}
    </div>
  );
});
