/** A line of text that is kept when it is left, not with every letter. */
import { type ChangeEvent, type KeyboardEvent, useEffect, useState } from 'react';

type TextElement = HTMLInputElement | HTMLTextAreaElement;

/** What a field is given: its text, and what happens as it changes and is left. */
export interface DraftProps {
  readonly value: string;
  readonly onChange: (event: ChangeEvent<TextElement>) => void;
  readonly onBlur: () => void;
  readonly onKeyDown: (event: KeyboardEvent<TextElement>) => void;
}

/** A text as it is being written. */
export interface Draft {
  readonly field: DraftProps;
  /** Brings back what was kept. */
  readonly reset: () => void;
}

/**
 * The text as it is being written. It is kept when the field is left, or with Enter; Escape brings back what was
 * kept. In a field of several lines both keys are the field's own.
 */
export function useDraft(kept: string, onKeep: (text: string) => void): Draft {
  const [text, setText] = useState(kept);
  useEffect(() => setText(kept), [kept]);
  const keep = () => {
    if (text !== kept) onKeep(text);
  };
  const reset = () => setText(kept);
  const field: DraftProps = {
    value: text,
    onChange: (event) => setText(event.target.value),
    onBlur: keep,
    onKeyDown: (event) => {
      if (event.currentTarget instanceof HTMLTextAreaElement) return;
      if (event.key === 'Enter') keep();
      if (event.key === 'Escape') reset();
    },
  };
  return { field, reset };
}
