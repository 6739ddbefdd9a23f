/** What lies open beside a button: loaded when something is opened for the first time, since it brings its own script. */
import type { ReactNode, RefObject } from 'react';
import { Dialog, I18nProvider, Menu, MenuItem, Popover } from 'react-aria-components';
import { useLanguage } from '../words/words.tsx';
import styles from './pop-over.module.css';

/** Where it opens, seen from its button. */
export type Placement = 'top start' | 'top end' | 'bottom end';

interface OpenedProps {
  readonly label: string;
  readonly placement: Placement;
  /** The button beside which it lies, and to which the focus returns. */
  readonly button: RefObject<HTMLButtonElement | null>;
  readonly onClose: () => void;
}

function Opened(props: OpenedProps & { readonly children: ReactNode }) {
  const { label, placement, button, onClose, children } = props;
  return (
    <I18nProvider locale={useLanguage().tag}>
      <Popover
        isOpen
        className={styles.popover ?? ''}
        aria-label={label}
        placement={placement}
        triggerRef={button}
        onOpenChange={(isOpen) => !isOpen && onClose()}
      >
        {children}
      </Popover>
    </I18nProvider>
  );
}

interface OpenedMenuProps extends OpenedProps {
  readonly items: readonly (readonly [string, string])[];
  readonly onPick: (item: string) => void;
}

/** A menu to pick from. */
export function OpenedMenu({ items, onPick, ...opened }: OpenedMenuProps) {
  return (
    <Opened {...opened}>
      <Menu
        className={styles.menu ?? ''}
        aria-label={opened.label}
        autoFocus="first"
        onAction={(key) => onPick(String(key))}
        onClose={opened.onClose}
      >
        {items.map(([item, words]) => (
          <MenuItem key={item} id={item} className={styles.item ?? ''}>
            {words}
          </MenuItem>
        ))}
      </Menu>
    </Opened>
  );
}

/** A small form. */
export function OpenedForm({ children, ...opened }: OpenedProps & { readonly children: ReactNode }) {
  return (
    <Opened {...opened}>
      <Dialog className={styles.form ?? ''} aria-label={opened.label}>
        {children}
      </Dialog>
    </Opened>
  );
}
