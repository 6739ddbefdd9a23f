/** What opens beside a button: a menu to pick from, or a small form. */
import { buttonClass, type Dress } from '@shedbook/stand';
import type { ReactNode } from 'react';
import { Button, Dialog, DialogTrigger, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import styles from './pop-over.module.css';

type Placement = 'top start' | 'top end' | 'bottom end';

interface PickMenuProps<T extends string> {
  /** What the menu is for; the button says it too where it shows only a drawing. */
  readonly label: string;
  readonly opens: ReactNode;
  readonly dress?: Dress;
  readonly placement: Placement;
  readonly items: readonly (readonly [T, string])[];
  /** Whether it is open when it comes. */
  readonly startsOpen?: boolean;
  readonly onPick: (item: T) => void;
}

/** A button and its menu. */
export function PickMenu<T extends string>(props: PickMenuProps<T>) {
  const { label, opens, dress = 'plain', placement, items, startsOpen = false, onPick } = props;
  return (
    <MenuTrigger defaultOpen={startsOpen}>
      <Button className={buttonClass(dress)} aria-label={label}>
        {opens}
      </Button>
      <Popover className={styles.popover ?? ''} placement={placement}>
        <Menu className={styles.menu ?? ''} aria-label={label} onAction={(key) => onPick(key as T)}>
          {items.map(([item, words]) => (
            <MenuItem key={item} id={item} className={styles.item ?? ''}>
              {words}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}

interface PopFormProps {
  /** What the form is for. */
  readonly label: string;
  /** What the button says, where it is more than it shows. */
  readonly buttonLabel?: string;
  /** The button's class. */
  readonly className: string;
  readonly opens: ReactNode;
  readonly placement: Placement;
  readonly children: ReactNode;
}

/** A button and its form. */
export function PopForm({ label, buttonLabel, className, opens, placement, children }: PopFormProps) {
  return (
    <DialogTrigger>
      <Button className={className} {...(buttonLabel === undefined ? {} : { 'aria-label': buttonLabel })}>
        {opens}
      </Button>
      <Popover className={styles.popover ?? ''} placement={placement}>
        <Dialog className={styles.form ?? ''} aria-label={label}>
          {children}
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}
