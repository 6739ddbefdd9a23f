/** The list of keys. */

import { Icon } from '@shedbook/stand';
import { Button, Dialog, DialogTrigger, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { useWords } from '../words/words.tsx';

/** A button that shows every key there is. */
export function KeyList() {
  const words = useWords();
  return (
    <DialogTrigger>
      <Button className="button bare">
        <Icon name="keys" />
        {words.page.keys}
      </Button>
      <ModalOverlay className="veil" isDismissable>
        <Modal className="sheet-dialog">
          <Dialog>
            {({ close }) => (
              <>
                <Heading slot="title">{words.page.keysTitle}</Heading>
                <dl className="key-list">
                  {words.page.keyList.map(([keys, meaning]) => (
                    <div key={keys}>
                      <dt>
                        <kbd>{keys}</kbd>
                      </dt>
                      <dd>{meaning}</dd>
                    </div>
                  ))}
                </dl>
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
