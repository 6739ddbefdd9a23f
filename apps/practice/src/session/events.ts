/**
 * What happens while something plays, bar by bar, for whoever listens along.
 *
 * Conventions: seconds of the audio context, as the sound thread has them: add the context's output latency for the
 * moment that leaves the loudspeaker. An event comes a few hundredths of a second after its moment; its times are
 * exact. Bars of a form from 1; count-in bars 0, −1, …
 */
import type { LadderStep } from '@shedbook/coach';
import { type Bpm, type LoopVerdict, Seconds } from '@shedbook/core';
import type { Program, ProgramBar } from '@shedbook/playing';
import type { Heard, Player } from '@shedbook/stand';

/** A bar has begun. */
export interface BarStarted extends Pick<ProgramBar, 'bar' | 'play' | 'patternBar'> {
  readonly kind: 'bar';
  readonly program: Program;
  /** How many times the form was gone through before this one. */
  readonly pass: number;
  readonly startSeconds: number;
  readonly endSeconds: number;
  readonly bpm: Bpm;
}

/** The form has been gone through once. */
export interface LoopEnded {
  readonly kind: 'loop';
  readonly program: Program;
  /** How many times the form was gone through before this one. */
  readonly pass: number;
  readonly startSeconds: number;
  readonly endSeconds: number;
  readonly bpm: Bpm;
}

/** Somebody judged a loop. */
export interface LoopJudged {
  readonly kind: 'judged';
  readonly verdict: LoopVerdict;
  readonly by: 'ear' | 'student';
  /** What it meant on the ladder; null while nobody climbs. */
  readonly step: LadderStep | null;
  readonly bpm: Bpm;
}

/** Anything that happens. */
export type PracticeEvent =
  | { readonly kind: 'started'; readonly program: Program }
  | { readonly kind: 'stopped' }
  | BarStarted
  | LoopEnded
  | LoopJudged;

/** Hears of events. */
export type PracticeListener = (event: PracticeEvent) => void;

/** Milliseconds between looks at the player. */
const LOOK_MS = 25;

/**
 * After a page that was too busy to look, what it missed is looked at in steps of so many seconds: less than any bar,
 * so that none is left out.
 */
const STEP_SECONDS = 0.025;

/** Longest time that is looked back on, in seconds; the sound thread's moments further back are forgotten. */
const LONGEST_SECONDS = 10;

/** What was seen last: a bar of a pass. */
interface Seen {
  readonly program: Program;
  readonly pass: number;
  readonly bar: number;
  readonly loopStartSeconds: number;
  readonly bpm: Bpm;
  /** Whether the round was heard from its first bar on: one that was gone on with is none. */
  readonly isWhole: boolean;
}

function loopEnded(seen: Seen, endSeconds: number): LoopEnded {
  const { program, pass, loopStartSeconds, bpm } = seen;
  return { kind: 'loop', program, pass, startSeconds: loopStartSeconds, endSeconds, bpm };
}

/** Tells of the bar and the loop that a moment begins. @returns what was seen in it */
function lookAt(heard: Heard, seen: Seen | null, tell: PracticeListener): Seen | null {
  const { program, pass, place, bpm, secondsOf, fromPlace } = heard;
  const bar = program.bars.findLast((each) => each.place <= place + 1e-9);
  if (!bar || place < fromPlace || (seen?.pass === pass && seen.bar === bar.bar)) return seen;
  const loopStartSeconds = seen?.pass === pass ? seen.loopStartSeconds : secondsOf(0);
  if (seen?.isWhole && seen.pass !== pass) tell(loopEnded(seen, loopStartSeconds));
  const end = program.bars.find((each) => each.bar === bar.bar + 1)?.place ?? program.end;
  const { play, patternBar } = bar;
  const times = { startSeconds: secondsOf(bar.place), endSeconds: secondsOf(end) };
  tell({ kind: 'bar', program, pass, bar: bar.bar, play, patternBar, bpm, ...times });
  // A round whose tempo was changed under way was played at the slower one.
  const slowest = seen?.pass === pass && seen.bpm < bpm ? seen.bpm : bpm;
  return { program, pass, bar: bar.bar, loopStartSeconds, bpm: slowest, isWhole: fromPlace === 0 };
}

/** Watches a player that plays, and tells of every bar and loop. @returns how to stop watching. */
export function watchBars(
  player: Pick<Player, 'heard' | 'heardSeconds'>,
  tell: PracticeListener,
): () => void {
  let seen: Seen | null = null;
  let last: number = player.heardSeconds();
  const look = () => {
    const now = player.heardSeconds();
    last = Math.max(last, now - LONGEST_SECONDS);
    while (last < now) {
      const next = Math.min(now, last + STEP_SECONDS);
      const heard = player.heard(Seconds(next));
      // Past the end: the sound thread has said where it went on, and the message is still on its way.
      if (heard && heard.place >= heard.program.end) return;
      if (heard) seen = lookAt(heard, seen, tell);
      last = next;
    }
  };
  const timer = setInterval(look, LOOK_MS);
  return () => clearInterval(timer);
}
