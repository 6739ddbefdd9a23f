/** Showing a MIDI foot switch to the page: one press for each thing that it is to do. */

import type { PedalBoard } from '@shedbook/stand';
import { Button, PEDAL_ACTIONS, type PedalAction } from '@shedbook/stand';
import { useSyncExternalStore } from 'react';
import { usePracticeWords } from '../page/words.tsx';
import styles from './pedal-rows.module.css';

interface RowProps {
  readonly board: PedalBoard;
  readonly action: PedalAction;
}

function Row({ board, action }: RowProps) {
  const words = usePracticeWords().pedal;
  const { status, learning, signs } = useSyncExternalStore(board.subscribe, board.state);
  const sign = signs[action];
  const says = sign ? words[sign.kind]({ n: sign.number, channel: sign.channel }) : words.none;
  return (
    <div>
      <dt>{words.actions[action]}</dt>
      <dd>
        <span role="status">{learning === action ? words.press : says}</span>
        <Button
          aria-label={`${words.learn}: ${words.actions[action]}`}
          disabled={status !== 'on'}
          onClick={() => board.learn(action)}
        >
          {words.learn}
        </Button>
      </dd>
    </div>
  );
}

/** The rows, folded. */
export function PedalRows({ board }: { readonly board: PedalBoard }) {
  const words = usePracticeWords().pedal;
  const { status } = useSyncExternalStore(board.subscribe, board.state);
  return (
    <details className={styles.pedal}>
      <summary>{words.title}</summary>
      <p>{words.lead}</p>
      <p role="status">{words.status[status]}</p>
      {(status === 'off' || status === 'refused') && (
        <Button onClick={() => void board.connect()}>{words.connect}</Button>
      )}
      <dl>
        {PEDAL_ACTIONS.map((action) => (
          <Row key={action} board={board} action={action} />
        ))}
      </dl>
    </details>
  );
}
