/** The drawn sign of an exercise that is shown before it is played: something to listen to. It is ours. */
import type { HowSign } from './drawn-sign.data.ts';

/** The sign, in a box of 13 by 10 units, lines as wide as those of how limbs play. */
export const EXAMPLE_SIGN: HowSign = {
  lines: 'M9.2 3.2a2.6 2.6 0 0 1 0 3.6M10.8 1.4a5.2 5.2 0 0 1 0 7.2',
  filled: 'M0.8 3.4L3.2 3.4L7 0.6L7 9.4L3.2 6.6L0.8 6.6z',
};

/** Width and height of the box that it is drawn in. */
export const EXAMPLE_SIGN_BOX = { width: 13, height: 10 } as const;
