/** The ledge of the stand: previous, play, next, the tempo, and more where it is wanted. */

import { exerciseBeside } from '@shedbook/core';
import type { PedalBoard } from '@shedbook/stand';
import { Icon, useSoundNote } from '@shedbook/stand';
import { useRef } from 'react';
import { usePracticeWords } from '../page/words.tsx';
import { usePracticeSession } from '../session/practice-session.tsx';
import styles from './ledge.module.css';
import { LedgeButton } from './ledge-button.tsx';
import { SettingDialog } from './setting-dialog.tsx';
import { TempoBox } from './tempo-box.tsx';
import type { StageActions } from './use-stage-actions.ts';

interface LedgeProps {
  readonly actions: StageActions;
  readonly pedal: PedalBoard;
}

/** The ledge. */
export function Ledge({ actions, pedal }: LedgeProps) {
  const { stage: words, soundStart } = usePracticeWords();
  const { playing, player, exercise, pack } = usePracticeSession();
  const note = useSoundNote(player, soundStart);
  // After the settings a press of space plays, rather than opening them again.
  const play = useRef<HTMLButtonElement>(null);
  const isAlone = (by: -1 | 1) => exerciseBeside(pack.lesson, exercise, by) === null;
  return (
    <section className={styles.ledge} data-part="ledge" aria-label={words.ledge}>
      <LedgeButton aria-label={words.previous} disabled={isAlone(-1)} onClick={() => actions.turn(-1)}>
        <Icon name="back" />
      </LedgeButton>
      <LedgeButton
        className={styles.play}
        data-part="play"
        ref={play}
        aria-label={playing ? words.stop : words.play}
        onClick={actions.toggle}
      >
        <Icon name={playing ? 'stop' : 'play'} />
      </LedgeButton>
      <LedgeButton aria-label={words.next} disabled={isAlone(1)} onClick={() => actions.turn(1)}>
        <Icon name="next" />
      </LedgeButton>
      <TempoBox actions={actions} />
      <SettingDialog className={styles.more} pedal={pedal} onClose={() => play.current?.focus()} />
      <p className={styles.note} role="status">
        {note}
      </p>
    </section>
  );
}
