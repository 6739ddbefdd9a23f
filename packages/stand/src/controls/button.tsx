/**
 * The button. The browser's own, since it needs no script: react-aria's weighs 12 kB compressed, and the page that
 * students open has none of it.
 */
import type { ComponentProps } from 'react';
import styles from './button.module.css';
import { classes } from './classes.ts';

/** How a button stands out: the one thing to do here, like any other, or without a border. */
export type Dress = 'plain' | 'strong' | 'bare';

/** Class of what looks like a button and is none of ours: a link, a label, the trigger of a menu. */
export function buttonClass(
  dress: Dress = 'plain',
  ...more: readonly (string | false | undefined)[]
): string {
  return classes(styles.button, dress !== 'plain' && styles[dress], ...more);
}

interface ButtonProps extends ComponentProps<'button'> {
  readonly dress?: Dress;
}

/** A button; it sends no form unless its type says so. */
export function Button({ dress = 'plain', className, type = 'button', ...rest }: ButtonProps) {
  return <button {...rest} type={type} className={buttonClass(dress, className)} />;
}
