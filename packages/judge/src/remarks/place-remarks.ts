/** Remarks on single voices and places: left out, added, early, late, unsteady. */
import type { FullReport, Voice, VoiceReport } from '@shedbook/core';
import type { Allowance } from '../level/levels.data.ts';
import { APART_MS } from '../perception/perception.data.ts';
import { allowedMs } from '../perception/perception.ts';
import { findingsOf, type PlaceFinding } from './findings.ts';
import type { Remark } from './remark.ts';

/**
 * How much a stroke that is always missing weighs beside lateness at its limit, and one that is always added. A
 * missing stroke is the first thing that a teacher mentions; the figures are our choice.
 */
const MISSING = 4;
const ADDED = 3;
const SILENT = 6;
/** Strokes left out here and there weigh no more than this share of one that is always missing. */
const MOST = 0.6;
/** Fewest strokes of a voice that are worth a word when added or left out. */
const FEWEST = 2;
/** A spread of this part of what a place may be late is at the limit: then one stroke in twenty is over it. */
const SPREAD_SHARE = 0.5;

/** Seconds of a beat at the tempo that was played. */
export function beatSeconds({ alignment, asked }: FullReport): number {
  return (60 / alignment.bpm) * (asked.quartersInBar / asked.beatsInBar);
}

function placeRemark(finding: PlaceFinding, report: FullReport, limits: Allowance): Remark {
  const { times, of, kind } = finding;
  const { voice, beat, slot, slots, bar, everyBar } = finding.place;
  const place = { beat, slot, slots, bar: everyBar ? null : bar };
  const share = times / of;
  if (kind === 'missed') return { kind: 'missing', voice, place, times, of, strength: MISSING * share };
  const ms = Math.abs(finding.offsetMs);
  const limit = allowedMs(limits, beatSeconds(report) / slots);
  return { kind, voice, place, ms, times, of, strength: (ms / limit) * share };
}

function shareRemarks(voice: Voice, of: VoiceReport, limits: Allowance): readonly Remark[] {
  const due = of.hits + of.missed;
  const remarks: Remark[] = [];
  if (of.missed >= FEWEST) {
    const share = of.missed / due;
    const strength =
      of.hits === 0 ? SILENT : Math.min(MISSING * Math.max(share, MOST), share / limits.takeWrongShare);
    remarks.push({ kind: 'left-out', voice, times: of.missed, of: due, strength });
  }
  if (of.extra >= FEWEST) {
    const strength = Math.min(ADDED, of.extra / Math.max(due, of.extra) / limits.takeWrongShare);
    remarks.push({ kind: 'added', voice, count: of.extra, strength });
  }
  return remarks;
}

function timeRemarks(
  report: FullReport,
  voice: Voice,
  of: VoiceReport,
  limits: Allowance,
): readonly Remark[] {
  if (of.hits < FEWEST) return [];
  const { lead } = report;
  const spreadLimit = SPREAD_SHARE * allowedMs(limits, beatSeconds(report) / 2);
  const spreadMs = of.offsetMs.spread;
  const unsteady: Remark = { kind: 'unsteady', voice, ms: spreadMs, strength: spreadMs / spreadLimit };
  const leadReport = report.voices[lead];
  if (voice === lead || !leadReport || leadReport.hits === 0) return [unsteady];
  const ms = of.offsetMs.median - leadReport.offsetMs.median;
  const apart = Math.abs(ms) >= APART_MS;
  const kind = ms < 0 ? 'before' : 'after';
  const strength = Math.abs(ms) / limits.togetherMs;
  return [unsteady, { kind, voice, lead, ms: Math.abs(ms), apart, strength }];
}

/** Remarks on voices and places; those under the limit too, to be sifted. */
export function placeRemarks(report: FullReport, limits: Allowance): readonly Remark[] {
  const voices = Object.entries(report.voices) as [Voice, VoiceReport][];
  return [
    ...findingsOf(report).map((finding) => placeRemark(finding, report, limits)),
    ...voices.flatMap(([voice, of]) => [
      ...shareRemarks(voice, of, limits),
      ...timeRemarks(report, voice, of, limits),
    ]),
  ];
}
