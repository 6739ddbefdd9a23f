/** A button of the ledge, large enough for a hand that holds a stick. */
import { Button, classes } from '@shedbook/stand';
import type { ComponentProps } from 'react';
import styles from './ledge-button.module.css';

/** Class of a button that lies on the ledge. */
export const ledgeKey: string | undefined = styles.key;

/** The button. */
export function LedgeButton({ className, ...rest }: ComponentProps<typeof Button>) {
  return <Button {...rest} className={classes(ledgeKey, className)} />;
}
