/**
 * How V8 runs a command that is over within a second or two.
 *
 * Conventions: flags of V8 as text. Its optimising compiler works beside the program in threads of their own, on whatever was
 * run for a while; where a program ends soon after, that costs more than it saves: of a take of a minute it was two fifths of
 * all processor time. So only what is run eight times as long is optimised, which the loops over samples are at once.
 */
import { setFlagsFromString } from 'node:v8';

/** Commands that hear one take and end. */
const SHORT: ReadonlySet<string> = new Set(['listen', 'hear']);

/** Bytes of bytecode that a function runs before it is looked at for optimising; V8's own are some 66 000 to 135 000. */
const INTERRUPT_BUDGET = 540_000;

/** From this V8 on there is no such flag, and a compiler between makes it needless: of the same take Node 22 and 24 cost no less with its like. */
const WITHOUT_BUDGET = 12;

/** What V8 is told for a command; nothing where it may run for long, or where it would not be understood. @param v8 its version */
export function flagsFor(command: string, v8 = process.versions.v8): readonly string[] {
  const isKnown = Number.parseInt(v8, 10) < WITHOUT_BUDGET;
  return SHORT.has(command) && isKnown ? [`--interrupt-budget=${INTERRUPT_BUDGET}`] : [];
}

/** Has V8 run a command of this process as long as it takes. */
export function settleFor(command: string): void {
  for (const flag of flagsFor(command)) setFlagsFromString(flag);
}
