/** A review: the exercises of several lessons on the desk, mixed, from easy to hard. */
import { type Lesson, sectionsOf } from '@shedbook/core';
import { Button, Check } from '@shedbook/stand';
import { useState } from 'react';
import { type DeskLesson, useLessons } from '../document/use-lessons.ts';
import { useWords } from '../words/words.tsx';
import styles from './compose-view.module.css';
import type { Composer } from './use-composer.ts';

interface ReviewChoiceProps {
  readonly lesson: Lesson;
  readonly composer: Composer;
}

/** Whether a lesson on the desk has exercises in the meter of the one that reviews. */
function fits({ reading }: DeskLesson, { meter }: Lesson): boolean {
  const sections = reading.lesson ? sectionsOf(reading.lesson) : [];
  return sections.some((each) => each.meter.text === meter.text && each.exercises.length > 0);
}

/** Which lessons, and asking for the mixture; seen when it is opened, so that the lessons are as they are then. */
function Lessons({ lesson, composer }: ReviewChoiceProps) {
  const words = useWords().compose;
  const { lessons } = useLessons();
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const fitting = (lessons ?? []).filter((each) => fits(each, lesson));
  const texts = fitting.flatMap(({ stored }) => (chosen.has(stored.id) ? [stored.text] : []));
  const again = composer.ask?.ask === 'review' ? composer.ask.again + 1 : 0;
  const choose = (id: string, on: boolean) => {
    const next = new Set(chosen);
    if (on) next.add(id);
    else next.delete(id);
    setChosen(next);
  };
  return (
    <>
      <fieldset className={styles.lessons}>
        <legend>{words.reviewOf}</legend>
        {fitting.map(({ stored, title }) => (
          <Check key={stored.id} checked={chosen.has(stored.id)} onChange={(on) => choose(stored.id, on)}>
            {title ?? ''}
          </Check>
        ))}
      </fieldset>
      <Button
        disabled={texts.length === 0}
        onClick={() => composer.propose({ ask: 'review', lessons: texts, again })}
      >
        {words.proposePass}
      </Button>
    </>
  );
}

/** The choice. */
export function ReviewChoice({ lesson, composer }: ReviewChoiceProps) {
  const words = useWords().compose;
  const [isOpen, setOpen] = useState(false);
  return (
    <details
      className={styles.second}
      data-part="review"
      onToggle={({ currentTarget }) => setOpen(currentTarget.open)}
    >
      <summary>{words.review}</summary>
      <div className={styles.opened}>
        <p>{words.reviewLead}</p>
        {isOpen && <Lessons lesson={lesson} composer={composer} />}
      </div>
    </details>
  );
}
