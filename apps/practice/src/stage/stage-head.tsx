/** What is on the stand: its number, its name, its form, and the way back. */

import { countSyllable, type Form, type Subdivision } from '@shedbook/core';
import { buttonClass, Icon } from '@shedbook/stand';
import { sayExercise } from '@shedbook/words';
import { hrefOf } from '../page/route.ts';
import { usePracticeWords } from '../page/words.tsx';
import { usePracticeSession } from '../session/practice-session.tsx';
import { formWords } from './form-words.ts';
import styles from './stage-head.module.css';

/** The fixed accents that sections of a form end on, in words. */
function useEndings(form: Form): readonly string[] {
  const words = usePracticeWords();
  const { exercise } = usePracticeSession();
  if (exercise === null) return [];
  return form.sections.flatMap(({ ending }) => {
    if (!ending) return [];
    const slots = ending.cell.marks.length as Subdivision;
    const slot = ending.cell.marks.findIndex((mark) => mark !== '.');
    const count = countSyllable(ending.beat - 1, slot, slots);
    const beat = slot === 0 ? count : `${ending.beat} ${count}`;
    return [
      words.stage.ending({ beat, what: ending.voices.map((voice) => words.voices[voice]).join(' + ') }),
    ];
  });
}

/** The head of the stand. */
export function StageHead() {
  const words = usePracticeWords();
  const { lesson, exercise, choice, form } = usePracticeSession();
  const on = lesson.exercises.find((each) => each.number === exercise);
  const endings = useEndings(form);
  return (
    <header className={styles.head}>
      <a className={buttonClass()} href={hrefOf({ at: 'sheet' })}>
        <Icon name="back" />
        {words.stage.back}
      </a>
      <h1>
        <span className="hidden-words">
          {lesson.title}. {on ? words.sheet.exercise({ n: on.number }) : words.sheet.timeOnly}
        </span>
        <span className={on ? styles.number : styles.time} aria-hidden="true">
          {on?.number ?? words.sheet.timeOnly}
        </span>
      </h1>
      <p className={styles.form} data-part="form">
        {on?.name && <strong>{on.name}</strong>}
        <span>{formWords(choice.form, words)}</span>
        {endings.map((each) => (
          <span key={each}>{each}</span>
        ))}
      </p>
      {on && <p className="hidden-words">{sayExercise(on, words, 'always')}</p>}
    </header>
  );
}
