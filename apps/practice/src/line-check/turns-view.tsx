/** Whose turn it is: the voice, the count that bounces, how loud it is, and what is to come. */

import type { Voice } from '@shedbook/core';
import { capital, type LineCheckWords } from '@shedbook/words';
import { useEffect, useState } from 'react';
import { useHearingWords } from '../page/hearing-words.ts';
import { LevelMeter } from '../ui/level-meter.tsx';
import { type Turn, turnAt } from './turns.ts';
import styles from './turns-view.module.css';

/** Where the count is, as it goes on; null once it is over. */
function useTurn(context: AudioContext, startSeconds: number, voices: number): Turn | null {
  const [turn, setTurn] = useState(() => turnAt(0, voices));
  useEffect(() => {
    let frame = 0;
    const look = () => {
      const next = turnAt(context.currentTime - startSeconds, voices);
      setTurn((before) => (JSON.stringify(before) === JSON.stringify(next) ? before : next));
      if (next) frame = requestAnimationFrame(look);
    };
    look();
    return () => cancelAnimationFrame(frame);
  }, [context, startSeconds, voices]);
  return turn;
}

interface TurnsViewProps {
  readonly context: AudioContext;
  /** When the first count is, in seconds of the audio context. */
  readonly startSeconds: number;
  readonly voices: readonly Voice[];
  readonly levelDb: number | null;
  readonly words: LineCheckWords;
}

/** The view. */
export function TurnsView({ context, startSeconds, voices, levelDb, words }: TurnsViewProps) {
  const names = useHearingWords().voices;
  const turn = useTurn(context, startSeconds, voices.length);
  const at = turn?.index ?? voices.length;
  const voice = voices[Math.min(at, voices.length - 1)]!;
  const stateOf = (index: number) => (index < at ? 'done' : index === at ? 'now' : 'next');
  return (
    <div className={styles.turns} data-part="turns" data-turn={at}>
      <p role="status" className={styles.voice}>
        {turn && (turn.isCount ? words.next({ voice }) : words.now({ voice }))}
      </p>
      <p className={styles.count} data-count={turn?.isCount} aria-hidden="true">
        {turn && (
          <>
            <span key={`${at} ${turn.isCount} ${turn.beat}`} className={styles.ball} />
            {turn.beat}
          </>
        )}
      </p>
      <p className={styles.level}>{levelDb !== null && <LevelMeter levelDb={levelDb} />}</p>
      <ol className={styles.order} aria-label={words.order}>
        {voices.map((each, index) => (
          <li key={each} data-state={stateOf(index)}>
            {capital(names[each])} <span className="quiet">{words.states[stateOf(index)]}</span>
          </li>
        ))}
      </ol>
    </div>
  );
}
