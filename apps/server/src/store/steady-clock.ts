/**
 * A clock for the bin: it goes on as the computer's does, but never backwards and never far at once, so that a clock
 * that jumps a year ahead for an hour does not empty the bin.
 */

/** What is kept of the clock from one start to the next. */
interface Kept {
  /** Where this clock stood, and the computer's with it, in milliseconds since 1970. */
  readonly steadyMs: number;
  readonly wallMs: number;
}

/** Notes that outlast the program. */
interface Notes {
  readNote(key: string): Promise<string | null>;
  writeNote(key: string, value: string): Promise<void>;
}

const KEY = 'steady-clock';
const DAY_MS = 24 * 3_600_000;

/** How far the clock goes on at once, in milliseconds: who opens the desk once a week still has true days. */
export const MOST_AT_ONCE_MS = 7 * DAY_MS;

/** A clock that goes on by itself and is kept. */
export interface SteadyClock {
  now(): Date;
  /** Looks at the computer's clock, and keeps where both stand. */
  look(): Promise<void>;
}

function keptIn(note: string | null): Kept | null {
  try {
    const { steadyMs, wallMs } = JSON.parse(note ?? 'null') as Kept;
    return Number.isFinite(steadyMs) && Number.isFinite(wallMs) ? { steadyMs, wallMs } : null;
  } catch {
    return null;
  }
}

/** The clock of a store. @param wall the computer's clock */
export async function openSteadyClock(notes: Notes, wall: () => Date): Promise<SteadyClock> {
  const first = wall().getTime();
  let at = keptIn(await notes.readNote(KEY)) ?? { steadyMs: first, wallMs: first };
  const step = () => {
    const wallMs = wall().getTime();
    const passedMs = Math.min(MOST_AT_ONCE_MS, Math.max(0, wallMs - at.wallMs));
    at = { steadyMs: at.steadyMs + passedMs, wallMs };
  };
  const look = async () => {
    step();
    await notes.writeNote(KEY, JSON.stringify(at));
  };
  await look();
  return {
    now: () => {
      step();
      return new Date(at.steadyMs);
    },
    look,
  };
}
