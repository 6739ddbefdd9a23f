/**
 * A sheet that lies over the page until it is put away: the browser's own dialog, which keeps the focus inside, makes
 * the rest of the page inert, closes with Escape and gives the focus back.
 */
import {
  type ComponentProps,
  type MouseEvent,
  type ReactNode,
  type SyntheticEvent,
  useId,
  useState,
} from 'react';
import { Button, type Dress } from './button.tsx';
import { classes } from './classes.ts';
import styles from './sheet-dialog.module.css';

/** Whether a press on a dialog went beside its box. */
function isBeside(event: MouseEvent<HTMLDialogElement>): boolean {
  if (event.target !== event.currentTarget) return false;
  const { left, right, top, bottom } = event.currentTarget.getBoundingClientRect();
  const { clientX: x, clientY: y } = event;
  return x < left || x > right || y < top || y > bottom;
}

/**
 * Opens a dialog as it comes; closes it before it goes, so that the focus returns to where it was. The focus begins on
 * the sheet itself, which is read from its title, unless it begins in its first field.
 */
function lieOpen(dialog: HTMLDialogElement | null) {
  if (dialog) dialog.autofocus = dialog.dataset['begins'] !== 'field';
  dialog?.showModal();
  return () => dialog?.close();
}

/** Closes the sheet that something in it was pressed on. */
export function closeSheet(event: SyntheticEvent<Element>): void {
  event.currentTarget.closest('dialog')?.close();
}

/** What a sheet is given. */
export interface SheetProps {
  readonly title: string;
  /** The buttons: under what is inside, or beside the title of a sheet at the foot of the page. */
  readonly actions: ReactNode;
  readonly children: ReactNode;
  readonly place?: 'middle' | 'foot';
  readonly isWide?: boolean;
  /** Whether it stays until one of its buttons is pressed. */
  readonly mustAnswer?: boolean;
  /** Where the focus begins; on the sheet itself when left out. */
  readonly begins?: 'field';
  readonly onClose?: () => void;
}

/** A sheet that lies there as long as it is rendered. */
export function Sheet(props: SheetProps) {
  const { title, actions, children, place = 'middle', isWide = false, mustAnswer = false } = props;
  const id = useId();
  const heading = <h2 id={id}>{title}</h2>;
  return (
    <dialog
      ref={lieOpen}
      className={classes(styles.dialog, styles[place], isWide && styles.wide)}
      role={mustAnswer ? 'alertdialog' : undefined}
      aria-labelledby={id}
      data-begins={props.begins}
      onKeyDown={(event) => mustAnswer && event.key === 'Escape' && event.preventDefault()}
      onClick={(event) => !mustAnswer && isBeside(event) && event.currentTarget.close()}
      onClose={(event) => !event.currentTarget.open && props.onClose?.()}
    >
      {place === 'foot' ? (
        <header>
          {heading}
          {actions}
        </header>
      ) : (
        heading
      )}
      {children}
      {place === 'middle' && <div className={styles.actions}>{actions}</div>}
    </dialog>
  );
}

interface SheetButtonProps
  extends Pick<ComponentProps<'button'>, 'className' | 'aria-label'>,
    Pick<SheetProps, 'title' | 'place' | 'children' | 'onClose'> {
  /** What the button that opens it shows. */
  readonly opens: ReactNode;
  readonly dress?: Dress;
  /** What the button that closes it says. */
  readonly done: string;
}

/** A button and the sheet that it opens. */
export function SheetButton(props: SheetButtonProps) {
  const { title, opens, done, place = 'middle', children, onClose, ...button } = props;
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <Button {...button} aria-haspopup="dialog" onClick={() => setOpen(true)}>
        {opens}
      </Button>
      {isOpen && (
        <Sheet
          title={title}
          place={place}
          onClose={() => {
            setOpen(false);
            onClose?.();
          }}
          actions={
            <Button dress={place === 'middle' ? 'strong' : 'plain'} onClick={closeSheet}>
              {done}
            </Button>
          }
        >
          {children}
        </Sheet>
      )}
    </>
  );
}
