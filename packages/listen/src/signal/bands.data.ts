/**
 * Frames and bands of the patches that strokes are recognised in.
 *
 * Conventions: samples at ANALYSIS_RATE; band b holds bins from edge b up to, not including, edge b + 1.
 * The training script internal/listen-lab/train.py holds the same numbers.
 */

/** Samples a second of everything that listening works on. */
export const ANALYSIS_RATE = 22_050;

/** Short frames: 11.6 ms every 2.9 ms, for time. */
export const SHORT_SIZE = 256;
/** Samples from one short frame to the next. */
export const SHORT_HOP = 64;
/** Short frames of a patch. */
export const SHORT_FRAMES = 24;
/** Short frames of a patch before the one at the event. */
export const SHORT_BEFORE = 8;

/** Long frames: 46 ms, for pitch. Their centres from the event, in samples. */
export const LONG_SIZE = 1024;
/** Centres of the long frames from the event, in samples. */
export const LONG_CENTRES = [-1100, -550, 0, 550, 1100, 1650, 2200] as const;

/** Frames that a live listener waits for: short ones up to 32 ms, long ones up to the event. */
export const LIVE_SHORT_FRAMES = 20;
/** Long frames that a live listener has at the event. */
export const LIVE_LONG_FRAMES = 3;

/** First bin of each short band, and the end. */
export const SHORT_EDGES: readonly number[] = [
  0, 1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 18, 22, 26, 31, 37, 44, 52, 60, 70, 82, 95, 108, 120, 129,
];
/** Bands of a short frame. */
export const SHORT_BANDS = 24;

/** First bin of each long band, and the end. */
export const LONG_EDGES: readonly number[] = [
  1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 19, 21, 24, 27, 31, 36, 42, 50, 60, 72, 87, 106,
  130, 160, 200, 250, 310, 380, 450, 513,
];
/** Bands of a long frame. */
export const LONG_BANDS = 36;
