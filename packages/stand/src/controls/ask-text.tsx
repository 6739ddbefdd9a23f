/** Asking for one line of text. */
import { type FormEvent, useId, useState } from 'react';
import { Button } from './button.tsx';
import { Field } from './field.tsx';
import { closeSheet, Sheet } from './sheet-dialog.tsx';

interface AskTextProps {
  readonly title: string;
  readonly label: string;
  readonly initial: string;
  /** What the button says that takes the answer. */
  readonly done: string;
  readonly onAnswer: (text: string) => void;
  readonly onClose: () => void;
}

/** A sheet with one field; an empty answer is none. */
export function AskText({ title, label, initial, done, onAnswer, onClose }: AskTextProps) {
  const id = useId();
  const [text, setText] = useState(initial);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (text.trim() !== '') onAnswer(text.trim());
    closeSheet(event);
  };
  return (
    <Sheet
      title={title}
      begins="field"
      onClose={onClose}
      actions={
        <Button dress="strong" type="submit" form={id}>
          {done}
        </Button>
      }
    >
      <form id={id} onSubmit={submit}>
        <Field label={label} value={text} required onChange={(event) => setText(event.target.value)} />
      </form>
    </Sheet>
  );
}
