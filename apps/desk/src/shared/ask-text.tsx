/** Asking for one line of text. */
import { type FormEvent, useState } from 'react';
import { Button, Dialog, Heading, Input, Label, Modal, ModalOverlay, TextField } from 'react-aria-components';
import { useWords } from '../words/words.tsx';

interface AskTextProps {
  readonly title: string;
  readonly label: string;
  readonly initial: string;
  readonly onAnswer: (text: string) => void;
  readonly onClose: () => void;
}

/** A dialog with one field. */
export function AskText({ title, label, initial, onAnswer, onClose }: AskTextProps) {
  const words = useWords();
  const [text, setText] = useState(initial);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (text.trim() !== '') onAnswer(text.trim());
    onClose();
  };
  return (
    <ModalOverlay className="veil" isOpen isDismissable onOpenChange={(open) => !open && onClose()}>
      <Modal className="sheet-dialog">
        <Dialog>
          <form onSubmit={submit}>
            <Heading slot="title">{title}</Heading>
            <TextField className="field" value={text} onChange={setText} autoFocus isRequired>
              <Label>{label}</Label>
              <Input />
            </TextField>
            <div className="dialog-actions">
              <Button className="button strong" type="submit">
                {words.heading.close}
              </Button>
            </div>
          </form>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
