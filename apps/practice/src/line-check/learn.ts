/** Has a thread of the ear learn a kit beside the page: seconds of work. */
import { Hertz, type Voice } from '@shedbook/core';
import type { KnownKit, LearntKit } from '@shedbook/listen';
import type { EarOrder, EarReport } from '../ear/ear-messages.ts';
import { startEarThread } from '../ear/ear-thread.ts';
import { joined } from './turns.ts';

/** What a thread of its own says to an order; it ends then, and where nobody waits any more. */
function answerTo(order: EarOrder, signal: AbortSignal): Promise<EarReport> {
  return new Promise((resolve, reject) => {
    const fail = () => {
      thread.terminate();
      reject(new Error('Internal error: learning was left or broke down'));
    };
    const hear = (report: EarReport) => {
      thread.terminate();
      resolve(report);
    };
    const thread = startEarThread('reports', hear, fail);
    signal.addEventListener('abort', fail, { once: true });
    thread.postMessage(order);
  });
}

/** Learns a kit from the turns of its voices. @throws Error where the thread broke down or was left */
export async function learnBeside(
  sounds: ReadonlyMap<Voice, Float32Array>,
  rateHz: number,
  signal: AbortSignal,
): Promise<LearntKit> {
  const { samples, limbs } = joined(sounds, rateHz);
  const check = { samples, sampleRateHz: Hertz(rateHz) };
  const answer = await answerTo({ kind: 'line check', check, limbs }, signal);
  if (answer.kind !== 'learnt') throw new Error(`Internal error: asked for a kit, heard of ${answer.kind}`);
  return answer.learnt;
}

/** Names of the kits that were learnt with other weights. @throws Error where the thread broke down or was left */
export async function oldOnes(kits: readonly KnownKit[], signal: AbortSignal): Promise<ReadonlySet<string>> {
  const answer = await answerTo({ kind: 'which are old', kits }, signal);
  return new Set(answer.kind === 'old ones' ? answer.names : []);
}
