/** A line of text that is kept when it is left, not with every letter. */
import { useEffect, useState } from 'react';
import { Input, Label, TextArea, TextField } from 'react-aria-components';

interface KeptFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onKeep: (value: string) => void;
  readonly isLong?: boolean;
  readonly className?: string;
}

/** The field. */
export function KeptField({ label, value, onKeep, isLong = false, className = 'field' }: KeptFieldProps) {
  const [text, setText] = useState(value);
  useEffect(() => setText(value), [value]);
  const keep = () => {
    if (text !== value) onKeep(text);
  };
  return (
    <TextField className={className} value={text} onChange={setText} onBlur={keep}>
      <Label>{label}</Label>
      {isLong ? (
        <TextArea rows={2} />
      ) : (
        <Input
          onKeyDown={(event) => {
            if (event.key === 'Enter') keep();
            if (event.key === 'Escape') setText(value);
          }}
        />
      )}
    </TextField>
  );
}
