/**
 * What a round was, by the ear or by the student: told once, and counted on the ladder once.
 *
 * Conventions: while an ear hears the rounds, the student's own word is kept beside it and moves nothing. A round
 * that was under way when the tempo changed says nothing about the new rung.
 */
import { Bpm, type LoopVerdict } from '@shedbook/core';
import { useEffect, useRef, useState } from 'react';
import type { PracticeChoice } from './choice.ts';
import { atBar, goneBy, NO_ROUNDS, speak, type TooEarly } from './rounds.ts';
import type { Ladder } from './use-ladder.ts';
import type { Playing, When } from './use-playing.ts';

interface JudgingProps {
  readonly playing: Playing;
  readonly ladder: Ladder;
  readonly choice: PracticeChoice;
  readonly change: (next: Partial<PracticeChoice>, when: When) => void;
}

/** What came of the student's word: also that it was noted and left the ladder where it was. */
export type Answer = 'told' | 'waits' | 'noted' | TooEarly;

/** What judging offers. */
export interface Judging {
  /** Says what the last round was. */
  readonly judge: (verdict: LoopVerdict, by: 'ear' | 'student') => void;
  /** What came of the student's last word, or null before the first. */
  readonly answer: Answer | null;
}

/** Keeps the rounds of what plays. */
export function useJudging(props: JudgingProps): Judging {
  const latest = useRef(props);
  latest.current = props;
  const rounds = useRef(NO_ROUNDS);
  const isHeard = useRef(false);
  const [answer, setAnswer] = useState<Answer | null>(null);
  const count = (verdict: LoopVerdict, by: 'ear' | 'student', bpm: Bpm, counts: boolean) => {
    const { ladder, choice, change, playing } = latest.current;
    const isOnRung = counts && choice.ladder && Math.round(bpm) === Math.round(choice.bpm);
    const step = isOnRung ? ladder.judge(verdict) : null;
    if (step && step.state.bpm !== choice.bpm) change({ bpm: step.state.bpm }, 'next time');
    if (by === 'student') setAnswer(step ? 'told' : 'noted');
    playing.tell({ kind: 'judged', verdict, by, step, bpm });
  };
  const { listen } = props.playing;
  useEffect(
    () =>
      listen((event) => {
        if (event.kind === 'started') {
          rounds.current = NO_ROUNDS;
          isHeard.current = false;
          setAnswer(null);
        }
        if (event.kind === 'bar')
          rounds.current = atBar(rounds.current, event.bar, event.program.bars.length);
        if (event.kind !== 'loop') return;
        const { rounds: next, told } = goneBy(rounds.current, event.bpm);
        rounds.current = next;
        if (told) count(told, 'student', event.bpm, !isHeard.current);
      }),
    [listen],
  );
  const judge = (verdict: LoopVerdict, by: 'ear' | 'student') => {
    if (by === 'ear') {
      const isCounted = rounds.current.gone?.isTold === true && !isHeard.current;
      isHeard.current = true;
      return count(verdict, 'ear', Bpm(latest.current.choice.bpm), !isCounted);
    }
    const { rounds: next, spoken } = speak(rounds.current, verdict);
    rounds.current = next;
    if (spoken.kind === 'told') return count(verdict, 'student', spoken.bpm, !isHeard.current);
    setAnswer(spoken.kind === 'too early' ? spoken.why : spoken.kind);
  };
  return { judge, answer };
}
