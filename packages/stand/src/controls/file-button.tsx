/** A button that asks for a file. */
import { type ComponentProps, useRef } from 'react';
import { Button, type Dress } from './button.tsx';

interface FileButtonProps extends Omit<ComponentProps<'button'>, 'onClick'> {
  readonly dress?: Dress;
  /** Endings and media types that are offered. */
  readonly accept: readonly string[];
  readonly onFile: (file: File) => void;
}

/** The button; the same file can be chosen twice. */
export function FileButton({ accept, onFile, ...rest }: FileButtonProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <Button {...rest} onClick={() => input.current?.click()} />
      <input
        ref={input}
        type="file"
        hidden
        accept={accept.join(',')}
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (file) onFile(file);
          event.target.value = '';
        }}
      />
    </>
  );
}
