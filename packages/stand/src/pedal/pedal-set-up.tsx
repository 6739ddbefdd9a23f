/** Setting up a foot switch: what it is for, asking for MIDI, and one press for each meaning. */
import { useEffect, useSyncExternalStore } from 'react';
import { Button } from '../controls/button.tsx';
import { Icon } from '../controls/icons.tsx';
import { PEDAL_ACTIONS, type PedalAction, type PedalSign } from './pedal.ts';
import type { PedalBoard, PedalStatus } from './pedal-board.ts';
import styles from './pedal-set-up.module.css';

/** What a switch sends, as numbers without a unit. */
export interface SignValues {
  /** Number of the controller or note, 0 to 127. */
  readonly n: number;
  /** MIDI channel, 1 to 16. */
  readonly channel: number;
}

/** What is said about a foot switch. */
export interface PedalWords {
  /** What works without being shown. */
  readonly keys: string;
  /** What has to be shown once, and how. */
  readonly midi: string;
  readonly connect: string;
  readonly status: Readonly<Record<Exclude<PedalStatus, 'on'>, string>>;
  readonly hears: (values: { readonly devices: string }) => string;
  readonly nothing: string;
  readonly learn: string;
  readonly cancel: string;
  readonly forget: string;
  readonly press: string;
  readonly none: string;
  readonly control: (values: SignValues) => string;
  readonly note: (values: SignValues) => string;
  readonly actions: Readonly<Record<PedalAction, string>>;
}

interface PedalProps {
  readonly board: PedalBoard;
  readonly words: PedalWords;
}

function ActionRow({ board, words, action }: PedalProps & { readonly action: PedalAction }) {
  const state = useSyncExternalStore(board.subscribe, board.state);
  const waits = state.learning === action;
  const says = (sign: PedalSign | undefined) =>
    sign ? words[sign.kind]({ n: sign.number, channel: sign.channel }) : words.none;
  return (
    <div className={styles.row}>
      <dt>{words.actions[action]}</dt>
      <dd>
        <span role="status">{waits ? words.press : says(state.signs[action])}</span>
        <Button
          disabled={state.status !== 'on'}
          aria-label={`${waits ? words.cancel : words.learn}: ${words.actions[action]}`}
          onClick={() => board.learn(waits ? null : action)}
        >
          {waits ? words.cancel : words.learn}
        </Button>
        {state.signs[action] && !waits && (
          <Button
            dress="bare"
            aria-label={`${words.forget}: ${words.actions[action]}`}
            onClick={() => board.forget(action)}
          >
            <Icon name="close" />
          </Button>
        )}
      </dd>
    </div>
  );
}

/** The form; a switch that is being learned is let go of with it. */
export function PedalSetUp({ board, words }: PedalProps) {
  const { status, devices } = useSyncExternalStore(board.subscribe, board.state);
  useEffect(() => () => board.learn(null), [board]);
  const heard = devices.length > 0 ? words.hears({ devices: devices.join(', ') }) : words.nothing;
  return (
    <div className={styles.form}>
      <p>{words.keys}</p>
      <p>{words.midi}</p>
      <p className={styles.status} role="status">
        {status === 'on' ? heard : words.status[status]}
      </p>
      {status !== 'on' && status !== 'missing' && (
        <Button dress="strong" disabled={status === 'asking'} onClick={() => void board.connect()}>
          {words.connect}
        </Button>
      )}
      <dl className={styles.rows}>
        {PEDAL_ACTIONS.map((action) => (
          <ActionRow key={action} board={board} words={words} action={action} />
        ))}
      </dl>
    </div>
  );
}
