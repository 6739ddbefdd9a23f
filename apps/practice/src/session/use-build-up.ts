/** Layer by layer: after a few times round the next layer of the groove joins. */
import type { Lesson } from '@shedbook/core';
import { useEffect, useRef } from 'react';
import { BUILD_UP, type PracticeChoice } from './choice.ts';
import type { PracticeListener } from './events.ts';

interface BuildUpProps {
  readonly listen: (listener: PracticeListener) => () => void;
  readonly lesson: Lesson;
  readonly choice: PracticeChoice;
  readonly change: (next: Partial<PracticeChoice>, when: 'now' | 'next time') => void;
}

/** Times round that a layer plays before the next one joins. */
export const ROUNDS_A_LAYER = 2;

/** Lets layers join while that form plays. */
export function useBuildUp(props: BuildUpProps): void {
  const latest = useRef(props);
  latest.current = props;
  const rounds = useRef(0);
  const { listen } = props;
  useEffect(() => {
    rounds.current = 0;
    return listen((event) => {
      if (event.kind === 'started') rounds.current = 0;
      if (event.kind !== 'bar' || event.bar !== 1) return;
      const { choice, lesson, change } = latest.current;
      if (choice.form !== BUILD_UP || choice.layers >= lesson.layers.length) return;
      rounds.current += 1;
      if (rounds.current < ROUNDS_A_LAYER) return;
      rounds.current = 0;
      change({ layers: choice.layers + 1 }, 'next time');
    });
  }, [listen]);
}
