/** One exercise on the stand, so large that it can be read from the throne, and practised without a hand. */
import { countSyllable, type Form, type Subdivision } from '@shedbook/core';
import { Icon, useAwake, usePedal } from '@shedbook/stand';
import { useEffect, useRef } from 'react';
import { hrefOf } from '../page/route.ts';
import { sayExercise } from '../page/say-exercise.ts';
import { usePracticeWords } from '../page/words.tsx';
import { HearingPanel } from '../panel/index.tsx';
import { usePracticeSession } from '../session/practice-session.tsx';
import { BarsView } from '../tiles/bars-view.tsx';
import { usePictures } from '../tiles/use-pictures.ts';
import { useRidingBall } from '../tiles/use-riding-ball.ts';
import { Optional } from '../ui/optional.tsx';
import { BarCounter } from './bar-counter.tsx';
import { formWords } from './form-words.ts';
import { LadderStrip } from './ladder-strip.tsx';
import { Ledge } from './ledge.tsx';
import { useStageActions } from './use-stage-actions.ts';
import { useStageKeys } from './use-stage-keys.ts';

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
    return [words.stage.ending(beat, ending.voices.map((voice) => words.voices[voice]).join(' + '))];
  });
}

function StageHead() {
  const words = usePracticeWords();
  const { lesson, exercise, choice, form } = usePracticeSession();
  const on = lesson.exercises.find((each) => each.number === exercise);
  const endings = useEndings(form);
  return (
    <header className="stage-head">
      <a className="button" href={hrefOf({ at: 'sheet' })}>
        <Icon name="back" />
        {words.stage.back}
      </a>
      <h1>
        <span className="hidden-words">
          {lesson.title}. {on ? words.sheet.exercise(on.number) : words.sheet.timeOnly}
        </span>
        <span className={on ? 'stage-number' : 'stage-time'} aria-hidden="true">
          {on?.number ?? words.sheet.timeOnly}
        </span>
      </h1>
      <p className="stage-form">
        {on?.name && <strong>{on.name}</strong>}
        <span>{formWords(choice.form, words)}</span>
        {endings.map((each) => (
          <span key={each}>{each}</span>
        ))}
      </p>
      {on && <p className="hidden-words">{sayExercise(on, words)}</p>}
    </header>
  );
}

/** The page. */
export function StagePage() {
  const { pack, lesson, exercise, player } = usePracticeSession();
  const words = usePracticeWords();
  const actions = useStageActions();
  const notation = useRef<HTMLDivElement>(null);
  const pictures = usePictures();
  const on = lesson.exercises.find((each) => each.number === exercise) ?? null;
  useAwake();
  useStageKeys(actions);
  const pedal = usePedal({ next: actions.right, previous: actions.left, toggle: actions.toggle });
  useRidingBall(player, pictures, notation);
  useEffect(() => {
    document.title = `${on ? on.number : words.sheet.timeOnly} · ${lesson.title}`;
  }, [on, lesson.title, words]);
  const shared = { lesson, writtenFor: pack.lesson.setUp };
  return (
    <div className="stage">
      <main className="stage-page">
        <StageHead />
        <BarCounter />
        <div className="stage-notation" ref={notation}>
          {on && <BarsView bars={pictures.exercise} on="exercise" exercise={on} {...shared} />}
          {pictures.groove.length > 0 && (
            <div className={on ? 'stage-groove' : undefined}>
              {on && <p className="quiet">{words.stage.groove}</p>}
              <BarsView bars={pictures.groove} on="groove" exercise={null} {...shared} />
            </div>
          )}
        </div>
        {on?.notes && <p className="stage-notes">{on.notes}</p>}
        <LadderStrip actions={actions} />
        <Optional>
          <HearingPanel />
        </Optional>
      </main>
      <Ledge actions={actions} pedal={pedal} />
    </div>
  );
}
