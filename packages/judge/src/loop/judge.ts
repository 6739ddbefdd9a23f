/**
 * Is this loop clean for this student? From what was heard to a verdict with reasons.
 *
 * Conventions: a better loop never gets a worse verdict: bringing a stroke nearer to its place, filling in a
 * missed stroke, leaving out an added one, bringing a level or the tempo nearer to what is asked can only help.
 */
import type { Bpm, LoopFault, LoopRecord, LoopVerdict, TakeReport, Unheard } from '@shedbook/core';
import { ALLOWANCES, type Allowance, type Level } from '../level/levels.data.ts';
import { type MeasuredLoop, measureLoop } from './faults.ts';
import { type HeardLoop, splitLoops } from './heard.ts';
import { findReasons, type Reason } from './reasons.ts';
import { strengthOf } from './strength.ts';
import type { LoopTask } from './task.ts';

/** What came of one loop. */
export interface LoopJudgement {
  readonly verdict: LoopVerdict;
  readonly bpm: Bpm;
  /** Strongest first. */
  readonly faults: readonly LoopFault[];
  /** Strongest first. */
  readonly reasons: readonly Reason[];
}

/** What came of a take. */
export interface TakeJudgement {
  readonly loops: readonly LoopJudgement[];
  /** Over all loops, strongest first. */
  readonly reasons: readonly Reason[];
  /** What could not be heard, and so not judged. */
  readonly unheard: readonly Unheard[];
}

/** Less than this share of the asked strokes judged, and the loop counts as not heard. */
const HEARD_SHARE = 0.5;

function verdictOf(measured: MeasuredLoop, asked: number, rule: Allowance): LoopVerdict {
  const { judged, faults } = measured;
  if (judged === 0 || judged < HEARD_SHARE * asked) return 'unheard';
  const count = (...kinds: readonly LoopFault['kind'][]) =>
    faults.filter((fault) => kinds.includes(fault.kind)).length;
  const wrong = count('missed', 'extra');
  const loose = count('early', 'late');
  if (wrong + loose > rule.loopStumbleShare * judged) return 'stumble';
  const whole = count('loud', 'quiet', 'slow', 'fast');
  const isClean =
    wrong <= rule.loopWrongShare * judged && loose <= rule.loopLooseShare * judged && whole === 0;
  return isClean ? 'clean' : 'loose';
}

/** The verdict on one loop, with reasons. */
export function judgeLoop(task: LoopTask, heard: HeardLoop, level: Level): LoopJudgement {
  const rule = ALLOWANCES[level];
  const measured = measureLoop(task, heard, rule);
  const verdict = verdictOf(measured, task.strokes.length, rule);
  const faults = verdict === 'unheard' ? [] : measured.faults;
  return {
    verdict,
    bpm: heard.bpm,
    faults: faults.toSorted((a, b) => strengthOf(b, task, rule) - strengthOf(a, task, rule)),
    reasons: findReasons(task, [{ faults, heard }], rule),
  };
}

/** The verdict on every loop of a take, with reasons over all of them. */
export function judgeTake(task: LoopTask, report: TakeReport, level: Level): TakeJudgement {
  const heard = splitLoops(report, task);
  const loops = heard.map((loop) => judgeLoop(task, loop, level));
  const faulty = loops.map(({ faults }, index) => ({ faults, heard: heard[index] as HeardLoop }));
  return { loops, reasons: findReasons(task, faulty, ALLOWANCES[level]), unheard: report.unheard ?? [] };
}

/** What a log keeps of a loop. */
export function recordLoop(judgement: LoopJudgement): LoopRecord {
  return { bpm: judgement.bpm, verdict: judgement.verdict, faults: judgement.faults };
}
