/** Remarks on the take as a whole: tempo, swing, balance, evenness. */
import { type FullReport, offBeatPhase, type Voice } from '@shedbook/core';
import type { Allowance } from '../level/levels.data.ts';
import {
  allowedBalanceDb,
  allowedMs,
  allowedTempoPercent,
  tempoChangePercent,
} from '../perception/perception.ts';
import { beatSeconds } from './place-remarks.ts';
import type { Remark } from './remark.ts';

/** Fewest bars over which a change of tempo is one. */
const FEWEST_BARS = 4;
/** Fewest ratios that a swing is judged by. */
const FEWEST_RATIOS = 4;

/** Mean tempo of the first and of the last quarter of the take. */
function tempoEnds({ tempo }: FullReport): { readonly first: number; readonly last: number } {
  const quarter = Math.max(1, tempo.length >> 2);
  const mean = (points: typeof tempo) => points.reduce((sum, { bpm }) => sum + bpm, 0) / points.length;
  return { first: mean(tempo.slice(0, quarter)), last: mean(tempo.slice(-quarter)) };
}

function tempoRemarks(report: FullReport, limits: Allowance): readonly Remark[] {
  const limit = allowedTempoPercent(limits);
  const { bpm } = report.alignment;
  const askedBpm = report.asked.bpm;
  const off = Math.abs(tempoChangePercent(bpm, askedBpm)) / limit;
  const remarks: Remark[] = [{ kind: bpm < askedBpm ? 'slower' : 'faster', bpm, askedBpm, strength: off }];
  if (report.tempo.length < FEWEST_BARS) return remarks;
  const { first, last } = tempoEnds(report);
  const kind = last < first ? 'slows' : 'hurries';
  remarks.push({
    kind,
    fromBpm: first,
    toBpm: last,
    strength: Math.abs(tempoChangePercent(last, first)) / limit,
  });
  const percent = report.barToBarPercent ?? 0;
  remarks.push({ kind: 'wanders', percent, strength: percent / limit });
  return remarks;
}

function swingRemarks(report: FullReport, limits: Allowance): readonly Remark[] {
  const { swingRatio, asked } = report;
  if (!swingRatio || asked.swingRatio === null || swingRatio.count < FEWEST_RATIOS) return [];
  const ratio = swingRatio.median;
  const beat = beatSeconds(report);
  const ms = 1000 * beat * Math.abs(offBeatPhase(ratio) - offBeatPhase(asked.swingRatio));
  const kind = ratio < asked.swingRatio ? 'flat-swing' : 'sharp-swing';
  const strength = ms / allowedMs(limits, beat / 3);
  return [{ kind, ratio, askedRatio: asked.swingRatio, strength }];
}

function levelRemarks(report: FullReport, limits: Allowance): readonly Remark[] {
  const { balanceDb, lead, lessonBalanceDb, voices } = report;
  const limitDb = allowedBalanceDb(limits, report.take.kind);
  const leadAsked = lessonBalanceDb[lead] ?? 0;
  const balance = (Object.keys(balanceDb) as Voice[]).flatMap((voice): Remark[] => {
    const asked = lessonBalanceDb[voice];
    if (voice === lead || asked === undefined || (voices[voice]?.hits ?? 0) === 0) return [];
    const db = (balanceDb[voice] ?? 0) - (asked - leadAsked);
    const strength = Math.abs(db) / limitDb;
    return [{ kind: db > 0 ? 'loud' : 'quiet', voice, lead, db: Math.abs(db), strength }];
  });
  const uneven = report.evenness.map(
    ({ voice, spreadDb }): Remark => ({
      kind: 'uneven',
      voice,
      db: spreadDb,
      strength: spreadDb / limits.takeUnevenDb,
    }),
  );
  return [...balance, ...uneven];
}

/** Remarks on the whole; those under the limit too, to be sifted. */
export function wholeRemarks(report: FullReport, limits: Allowance): readonly Remark[] {
  return [...tempoRemarks(report, limits), ...swingRemarks(report, limits), ...levelRemarks(report, limits)];
}
