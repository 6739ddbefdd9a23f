/** What can be done on the stand, by touch, key or pedal alike. */
import { defaultForm, EXAMPLE_FORM, exerciseBeside, quarterTempo } from '@shedbook/core';
import { useRef } from 'react';
import { goTo } from '../page/route.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { tappedTempo, withTap } from './tap-tempo.ts';

/** The actions. */
export interface StageActions {
  readonly toggle: () => void;
  readonly turn: (by: -1 | 1) => void;
  readonly faster: (by: number) => void;
  readonly tap: () => void;
  readonly clean: () => void;
  readonly stumbled: () => void;
  /** The right pedal: plays; while it plays, what the student can say without a hand. */
  readonly right: () => void;
  /** The left pedal: stops; while it is silent, the next exercise. */
  readonly left: () => void;
  /** Draws every limb, or the exercise alone. */
  readonly limbs: () => void;
  /** Plays the example of the exercise; pressed again, goes back to practising. */
  readonly example: () => void;
  readonly back: () => void;
}

/** The actions on what is on the stand. */
export function useStageActions(): StageActions {
  const session = usePracticeSession();
  const taps = useRef<readonly number[]>([]);
  const { lesson, exercise, place, choice, choose, playing, judge, toggle, play, playSoon, stop } = session;
  const turn = (by: -1 | 1) => {
    const next = exerciseBeside(session.pack.lesson, exercise, by);
    if (next !== null) goTo({ ...place, at: 'stage', exercise: next });
  };
  const tap = () => {
    taps.current = withTap(taps.current, performance.now());
    const beats = tappedTempo(taps.current);
    if (beats !== null) choose({ bpm: quarterTempo(lesson.meter, beats) });
  };
  const clean = () => judge('clean', 'student');
  return {
    toggle,
    turn,
    tap,
    clean,
    faster: (by) => choose({ bpm: choice.bpm + by }),
    stumbled: () => judge('stumble', 'student'),
    right: () => {
      if (!playing) play();
      else if (choice.ladder) clean();
      else stop();
    },
    left: () => (playing ? stop() : turn(1)),
    limbs: () => choose({ staff: choice.staff === 'own' ? 'full' : 'own' }),
    example: () => {
      const isShown = choice.form === EXAMPLE_FORM;
      choose({ form: isShown ? defaultForm(lesson).name : EXAMPLE_FORM });
      if (isShown) stop();
      else playSoon();
    },
    back: () => goTo({ at: 'sheet' }),
  };
}
