/** The sign of an exercise that is shown before it is played. */
import { EXAMPLE_SIGN, EXAMPLE_SIGN_BOX, HOW_SIGN_STROKE } from '@shedbook/core';
import styles from './example-sign.module.css';

/** The sign, as high as the text beside it. @param says what it means, for those who do not see it */
export function ExampleSign({ says }: { readonly says: string }) {
  const { width, height } = EXAMPLE_SIGN_BOX;
  return (
    <svg
      className={styles.sign}
      viewBox={`0 0 ${width} ${height}`}
      data-part="example-sign"
      role="img"
      aria-label={says}
    >
      <path
        d={EXAMPLE_SIGN.lines}
        fill="none"
        stroke="currentColor"
        strokeWidth={HOW_SIGN_STROKE}
        strokeLinecap="round"
      />
      <path d={EXAMPLE_SIGN.filled} fill="currentColor" />
    </svg>
  );
}
