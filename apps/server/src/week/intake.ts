/**
 * How much practice comes in by a student's link: a cap on what comes in a day and one on all that is kept, so that a link
 * in wrong hands fills no disk. What is not taken stays on the device that sent it, which sends it again.
 *
 * Conventions: what may come grows steadily from nothing to a day's worth. What the desk had already costs a tenth: it takes
 * no room, and an answer that got lost on the way is no fault of the student.
 */

/** Rows and bytes. */
export interface Sent {
  readonly rows: number;
  readonly bytes: number;
}

/**
 * A day's worth: five times what a student has after a week without a network, ten thousand rows of some six hundred bytes.
 */
const DAY: Sent = { rows: 50_000, bytes: 50_000_000 };

const DAY_SECONDS = 24 * 3600;

/** Of what was there already, so much is counted. */
const KNOWN_SHARE = 1 / 10;

/** Bytes of practice of one student at most: a hundred years of it. */
export const PRACTICE_BYTES = 500_000_000;

/** Keeps count of what students send. */
export interface Intake {
  /** Seconds until so much may come from a student; 0 where it may now. */
  waitSeconds(student: string, sent: Sent): number;
  /** Counts what came. @param share of it that is new, 0 to 1 */
  came(student: string, sent: Sent, share: number): void;
}

interface Used extends Sent {
  readonly at: number;
}

/** Keeps count. @param clock gives milliseconds that never go back */
export function countIntake(clock: () => number): Intake {
  const used = new Map<string, Used>();
  const left = (share: number, amount: number, of: number) => Math.max(0, amount - share * of);
  const usedBy = (student: string): Used => {
    const { rows, bytes, at } = used.get(student) ?? { rows: 0, bytes: 0, at: clock() };
    const share = (clock() - at) / 1000 / DAY_SECONDS;
    return { rows: left(share, rows, DAY.rows), bytes: left(share, bytes, DAY.bytes), at: clock() };
  };
  return {
    waitSeconds: (student, sent) => {
      const { rows, bytes } = usedBy(student);
      const over = Math.max(
        (rows + sent.rows - DAY.rows) / DAY.rows,
        (bytes + sent.bytes - DAY.bytes) / DAY.bytes,
      );
      return over <= 0 ? 0 : Math.ceil(over * DAY_SECONDS);
    },
    came: (student, sent, share) => {
      const { rows, bytes, at } = usedBy(student);
      const counted = share + (1 - share) * KNOWN_SHARE;
      used.set(student, { rows: rows + counted * sent.rows, bytes: bytes + counted * sent.bytes, at });
    },
  };
}
