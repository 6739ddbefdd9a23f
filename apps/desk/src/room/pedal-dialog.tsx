/** Setting up a foot switch: what it is for, asking for MIDI, and one press for each meaning. */

import type { PedalBoard } from '@shedbook/stand';
import { Icon, PEDAL_ACTIONS, type PedalAction, type PedalSign } from '@shedbook/stand';
import { useEffect, useSyncExternalStore } from 'react';
import { Button, Dialog, DialogTrigger, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { useWords } from '../words/words.tsx';

function ActionRow({ board, action }: { readonly board: PedalBoard; readonly action: PedalAction }) {
  const words = useWords().pedal;
  const state = useSyncExternalStore(board.subscribe, board.state);
  const waits = state.learning === action;
  const says = (sign: PedalSign | undefined) =>
    sign ? words[sign.kind]({ n: sign.number, channel: sign.channel }) : words.none;
  return (
    <div className="pedal-row">
      <dt>{words.actions[action]}</dt>
      <dd>
        <span role="status">{waits ? words.press : says(state.signs[action])}</span>
        <Button
          className="button"
          isDisabled={state.status !== 'on'}
          aria-label={`${waits ? words.cancel : words.learn}: ${words.actions[action]}`}
          onPress={() => board.learn(waits ? null : action)}
        >
          {waits ? words.cancel : words.learn}
        </Button>
        {state.signs[action] && !waits && (
          <Button
            className="button bare"
            aria-label={`${words.forget}: ${words.actions[action]}`}
            onPress={() => board.forget(action)}
          >
            <Icon name="close" />
          </Button>
        )}
      </dd>
    </div>
  );
}

function PedalForm({ board }: { readonly board: PedalBoard }) {
  const words = useWords().pedal;
  const { status, devices } = useSyncExternalStore(board.subscribe, board.state);
  useEffect(() => () => board.learn(null), [board]);
  return (
    <>
      <p>{words.keys}</p>
      <p>{words.midi}</p>
      <p className="pedal-status" role="status">
        {status === 'on'
          ? devices.length > 0
            ? words.hears({ devices: devices.join(', ') })
            : words.nothing
          : words.status[status]}
      </p>
      {status !== 'on' && status !== 'missing' && (
        <Button
          className="button strong"
          isDisabled={status === 'asking'}
          onPress={() => void board.connect()}
        >
          {words.connect}
        </Button>
      )}
      <dl className="pedal-rows">
        {PEDAL_ACTIONS.map((action) => (
          <ActionRow key={action} board={board} action={action} />
        ))}
      </dl>
    </>
  );
}

/** The button and its dialog. */
export function PedalDialog({ board }: { readonly board: PedalBoard }) {
  const words = useWords();
  return (
    <DialogTrigger>
      <Button className="button">{words.pedal.title}</Button>
      <ModalOverlay className="veil" isDismissable>
        <Modal className="sheet-dialog">
          <Dialog className="pedal-dialog">
            {({ close }) => (
              <>
                <Heading slot="title">{words.pedal.title}</Heading>
                <PedalForm board={board} />
                <div className="dialog-actions">
                  <Button className="button strong" onPress={close}>
                    {words.heading.close}
                  </Button>
                </div>
              </>
            )}
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}
