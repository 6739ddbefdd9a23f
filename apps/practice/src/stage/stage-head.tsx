/** What is on the stand: its number, its drum, its form, what sounds with it, and the way back. */

import {
  EXAMPLE_FORM,
  type Exercise,
  exerciseLabel,
  type Form,
  type Lesson,
  sectionOf,
} from '@shedbook/core';
import { Button, buttonClass, ExampleSign, Icon } from '@shedbook/stand';
import { countOf, type PracticeWords, sayExercise } from '@shedbook/words';
import { hrefOf } from '../page/route.ts';
import { usePracticeWords } from '../page/words.tsx';
import { hasMoreLimbs } from '../session/choice.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { HowList } from '../ui/how-list.tsx';
import { formWords } from './form-words.ts';
import styles from './stage-head.module.css';
import type { StageActions } from './use-stage-actions.ts';

/** The fixed accents that sections of a form end on, in words. */
function useEndings(form: Form): readonly string[] {
  const words = usePracticeWords();
  const { exercise } = usePracticeSession();
  if (exercise === null) return [];
  return form.sections.flatMap(({ ending }) => {
    if (!ending) return [];
    const { marks } = ending.cell;
    const slot = marks.findIndex((mark) => mark !== '.');
    const beat = countOf(words.counts, ending.beat - 1, slot, marks.length);
    return [
      words.stage.ending({ beat, what: ending.voices.map((voice) => words.voices[voice]).join(' + ') }),
    ];
  });
}

/** The voices that an exercise is for. */
function drumsOf(exercise: Exercise, words: PracticeWords): readonly string[] {
  return [...new Set(exercise.parts.map(({ voice }) => words.voices[voice]))];
}

/** Which layers of the groove sound, down to the one that joined last. */
function sayLayers(lesson: Lesson, layers: number, on: Exercise | null, words: PracticeWords): string {
  const names = lesson.layers.slice(0, layers).flatMap(({ joins }) =>
    joins.flatMap((join) => {
      if (join !== 'pattern') return [words.voices[join]];
      return on ? drumsOf(on, words) : [];
    }),
  );
  return words.stage.layer({ n: layers, of: lesson.layers.length, names: [...new Set(names)].join(', ') });
}

/** The head of the stand. */
export function StageHead({ actions }: { readonly actions: StageActions }) {
  const words = usePracticeWords();
  const { lesson, exercise, isFree, choice, form, place } = usePracticeSession();
  const isOther = place.at === 'stage' && place.lesson !== undefined;
  const title = isFree ? words.stage.free : words.sheet.timeOnly;
  const on = lesson.exercises.find((each) => each.number === exercise) ?? null;
  const endings = useEndings(form);
  const isShown = choice.form === EXAMPLE_FORM;
  const section = sectionOf(lesson, exercise);
  const { heading } = section;
  return (
    <header className={styles.head}>
      <p className={styles.ways}>
        <a className={buttonClass()} href={hrefOf({ at: 'sheet' })} aria-label={words.stage.back}>
          <Icon name="back" />
          <span className={styles.back}>{words.stage.back}</span>
        </a>
        {on?.example && (
          <Button aria-pressed={isShown} onClick={actions.example} data-part="hear-example">
            <ExampleSign says={words.stage.example} />
            {words.stage.hearExample}
          </Button>
        )}
        {on && hasMoreLimbs(lesson, exercise) && (
          <Button aria-pressed={choice.staff === 'full'} onClick={actions.limbs} data-part="limbs">
            {words.stage.everyLimb}
          </Button>
        )}
      </p>
      <h1>
        <span className="hidden-words">
          {lesson.title}. {on ? words.sheet.exercise({ n: on.number }) : title}
        </span>
        <span className={on ? styles.number : styles.time} aria-hidden="true">
          {on ? exerciseLabel(on.number) : title}
        </span>
        {on && (
          <span className={styles.drum} data-part="drum">
            {drumsOf(on, words).join(', ')}
          </span>
        )}
      </h1>
      <p className={styles.form} data-part="form">
        {isOther && <strong data-part="lesson">{lesson.title}</strong>}
        {heading !== null && <span data-part="section">{heading}</span>}
        {on?.name && <strong>{on.name}</strong>}
        {!isFree && <span>{formWords(choice.form, words)}</span>}
        {endings.map((each) => (
          <span key={each}>{each}</span>
        ))}
        <span data-part="layers">{sayLayers(lesson, choice.layers, on, words)}</span>
      </p>
      <div className={styles.how}>
        <HowList section={section} exercise={on} />
      </div>
      {on && <p className="hidden-words">{sayExercise(on, words, 'always')}</p>}
    </header>
  );
}
