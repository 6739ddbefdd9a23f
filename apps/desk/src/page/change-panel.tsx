/** What a change of meter or feel would do, told before it is made. */

import type { ChangeFact } from '@shedbook/core';
import { Button } from '@shedbook/stand';
import { useEffect, useRef } from 'react';
import { useSay, useWords } from '../words/words.tsx';
import { BoxActions } from './box-actions.tsx';
import styles from './measure-form.module.css';

/** A change that waits for an answer. */
export interface Proposed {
  readonly tells: readonly ChangeFact[];
  /** What can be done, each under what it is called; the first is what was asked for. */
  readonly ways: readonly { readonly label: string; readonly run: () => void }[];
}

interface ChangePanelProps {
  readonly proposed: Proposed;
  readonly onDone: () => void;
}

/** The panel; its first words take the focus, so that they are read out. */
export function ChangePanel({ proposed, onDone }: ChangePanelProps) {
  const words = useWords().heading;
  const say = useSay();
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => title.current?.focus(), []);
  return (
    <div className={styles.form} data-part="change">
      <h3 ref={title} tabIndex={-1}>
        {words.changeTitle}
      </h3>
      <ul className={styles.tells}>
        {proposed.tells.map((tell, index) => (
          <li key={index}>{say(tell)}</li>
        ))}
      </ul>
      <BoxActions>
        {proposed.ways.map(({ label, run }, index) => (
          <Button
            key={label}
            dress={index === 0 ? 'strong' : 'plain'}
            onClick={() => {
              run();
              onDone();
            }}
          >
            {label}
          </Button>
        ))}
        <Button onClick={onDone}>{words.cancel}</Button>
      </BoxActions>
    </div>
  );
}
