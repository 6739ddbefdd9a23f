/** What opens beside a button: a menu to pick from, or a small form. */
import { Button, type Dress } from '@shedbook/stand';
import { type ReactNode, Suspense, useRef, useState } from 'react';
import { lazily } from '../loading/later.ts';
import type { Placement } from './pop-over-opened.tsx';

const load = () => import('./pop-over-opened.tsx');
const OpenedMenu = lazily(load, (module) => module.OpenedMenu);
const OpenedForm = lazily(load, (module) => module.OpenedForm);

/** Whether it is open, and what its button is given. */
function usePopOver(kind: 'menu' | 'dialog') {
  const button = useRef<HTMLButtonElement>(null);
  const [isOpen, setOpen] = useState(false);
  return {
    button,
    isOpen,
    onOpen: () => setOpen(true),
    onClose: () => setOpen(false),
    trigger: {
      ref: button,
      'aria-haspopup': kind,
      'aria-expanded': isOpen,
      onPointerEnter: () => void load(),
      onClick: () => setOpen(true),
    },
  } as const;
}

interface PickMenuProps<T extends string> {
  /** What the menu is for; the button says it too where it shows only a drawing. */
  readonly label: string;
  readonly opens: ReactNode;
  readonly dress?: Dress;
  readonly placement: Placement;
  readonly items: readonly (readonly [T, string])[];
  readonly onPick: (item: T) => void;
}

/** A button and its menu. */
export function PickMenu<T extends string>(props: PickMenuProps<T>) {
  const { label, opens, dress = 'plain', placement, items, onPick } = props;
  const { button, isOpen, onOpen, onClose, trigger } = usePopOver('menu');
  return (
    <>
      <Button
        {...trigger}
        dress={dress}
        aria-label={label}
        onKeyDown={(event) => {
          if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
          event.preventDefault();
          onOpen();
        }}
      >
        {opens}
      </Button>
      {isOpen && (
        <Suspense>
          <OpenedMenu
            {...{ label, placement, items, button, onClose }}
            onPick={(item) => onPick(item as T)}
          />
        </Suspense>
      )}
    </>
  );
}

interface PopFormProps {
  /** What the form is for. */
  readonly label: string;
  /** What the button says, where it is more than it shows. */
  readonly buttonLabel?: string;
  /** The button's class, where it does not look like one. */
  readonly className: string;
  readonly opens: ReactNode;
  readonly placement: Placement;
  readonly children: ReactNode;
}

/** A button and its form. */
export function PopForm({ label, buttonLabel, className, opens, placement, children }: PopFormProps) {
  const { button, isOpen, onClose, trigger } = usePopOver('dialog');
  return (
    <>
      <button {...trigger} type="button" className={className} aria-label={buttonLabel}>
        {opens}
      </button>
      {isOpen && (
        <Suspense>
          <OpenedForm {...{ label, placement, button, onClose }}>{children}</OpenedForm>
        </Suspense>
      )}
    </>
  );
}
