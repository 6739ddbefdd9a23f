/** Balance as people hear it. */
import type { Voice } from '@shedbook/core';
import type { FullReport } from '../report/take-report.ts';
import { LOUDER_DB } from './loudness.data.ts';

/**
 * Loudness of each voice relative to the lead voice, in dB, as lessons speak of it. A kit's notes say it themselves;
 * plain levels of a recording are weighted.
 */
export function loudnessBalance({
  balanceDb,
  lead,
  take,
}: FullReport): Readonly<Partial<Record<Voice, number>>> {
  if (take.kind === 'midi') return balanceDb;
  const voices = Object.entries(balanceDb) as [Voice, number][];
  return Object.fromEntries(voices.map(([voice, db]) => [voice, db + LOUDER_DB[voice] - LOUDER_DB[lead]]));
}
