/** The ball that rides the notation: every drawn bar holds one, hidden until it is its turn. */
import { QUARTER_WIDTH } from './layout.ts';
import styles from './notation.module.css';

interface BallProps {
  /** Bar of the pattern, from 0. */
  readonly bar: number;
  /** Left end of the part of the bar that is drawn, in tenths of a staff space. */
  readonly left: number;
  /** Right end of that part, in tenths of a staff space. */
  readonly right: number;
  /** Units that a quarter note takes, where it is not the usual width. */
  readonly quarterWidth?: number;
}

/** A ball that waits for its turn. */
export function Ball({ bar, left, right, quarterWidth = QUARTER_WIDTH }: BallProps) {
  return (
    <circle
      className={styles.ball}
      r="6"
      data-ball={bar}
      data-left={left}
      data-right={right}
      data-quarter={quarterWidth}
      visibility="hidden"
    />
  );
}
