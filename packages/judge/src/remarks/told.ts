/**
 * What a report can be taken at its word for: a voice that the microphone did not hear, or can hardly tell from the
 * others, is neither praised nor blamed, and nor is what rests on it.
 */
import type { FullReport, Voice } from '@shedbook/core';
import type { RemarkFact } from './remark.ts';

/** What is measured by the lead voice alone. */
const BY_LEAD: ReadonlySet<RemarkFact['kind']> = new Set(['flat-swing', 'sharp-swing', 'wanders']);

/** Whether a voice was heard so that its figures hold. */
export function isTold({ take, voices, unheard = [] }: FullReport, voice: Voice): boolean {
  if (unheard.some((one) => 'voice' in one && one.voice === voice)) return false;
  return take.kind === 'midi' || (voices[voice]?.hits ?? 0) > 0;
}

/** Whether every voice that was due was heard so that its figures hold. */
export function isAllTold(report: FullReport): boolean {
  return Object.entries(report.voices).every(
    ([voice, of]) => of.hits + of.missed === 0 || isTold(report, voice as Voice),
  );
}

/** Whether a remark rests only on voices whose figures hold. */
export function canBeHeld(remark: RemarkFact, report: FullReport): boolean {
  const byLead = 'lead' in remark || BY_LEAD.has(remark.kind);
  if (byLead && !isTold(report, report.lead)) return false;
  return !('voice' in remark) || isTold(report, remark.voice);
}
