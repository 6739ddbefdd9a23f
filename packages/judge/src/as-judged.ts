/**
 * The report of a take as it was judged, so that table, picture and sentences say the same of every stroke: a limb that
 * came far too late is late in all of them, and nowhere missing and too much.
 *
 * Conventions: as in core's report. What was not judged stands as it was heard.
 */
import {
  type FullReport,
  type LeadDb,
  Milliseconds,
  type ReportStroke,
  type Unheard,
  type Voice,
  type VoiceReport,
} from '@shedbook/core';
import { median, spread } from '@shedbook/signal';
import type { Told } from './find/told.ts';
import type { Judgement } from './judge.ts';
import { surfaceOf } from './take/match.ts';

/** From this share of all strokes on, the exercise was recognised. */
const RECOGNISED = 0.8;

function strokesOf({ strokes }: FullReport, { placed, extra, none }: Told): readonly ReportStroke[] {
  const at = new Map(placed.map((one) => [one.index, one]));
  const [many, nobodys] = [new Set(extra), new Set(none)];
  return strokes.flatMap((stroke, index): ReportStroke[] => {
    const place = at.get(index);
    if (place) return [{ ...stroke, written: place.written, offsetMs: place.offsetMs }];
    if (many.has(index)) return [{ ...stroke, written: null, offsetMs: null }];
    return nobodys.has(index) ? [] : [stroke];
  });
}

function missedOf(report: FullReport, { voices, missed }: Told) {
  const judged = new Set(voices);
  const stands = report.missed.flatMap((one, index) => {
    const dueSeconds = report.missedSeconds[index];
    return judged.has(one.voice) || dueSeconds === undefined ? [] : [{ ...one, dueSeconds }];
  });
  return [...stands, ...missed].toSorted((a, b) => a.dueSeconds - b.dueSeconds);
}

function voiceOf(voice: Voice, { strokes }: FullReport, told: Told, levelDb: LeadDb): VoiceReport {
  const offsets = told.placed.flatMap((one) => (one.voice === voice ? [one.offsetMs] : []));
  return {
    hits: offsets.length,
    missed: told.missed.filter((one) => one.voice === voice).length,
    extra: told.extra.filter((index) => strokes[index]?.voice === voice).length,
    offsetMs: { median: Milliseconds(median(offsets)), spread: Milliseconds(spread(offsets)) },
    levelDb,
  };
}

function voicesOf(report: FullReport, told: Told): FullReport['voices'] {
  const surfaces = new Set(told.voices.map(surfaceOf));
  const changed = new Set(
    [...told.extra, ...told.none].flatMap((index) => report.strokes[index]?.voice ?? []),
  );
  const entries = (Object.entries(report.voices) as [Voice, VoiceReport][]).map(([voice, of]) => {
    const isTold = surfaces.has(surfaceOf(voice)) || changed.has(voice);
    return [voice, isTold ? voiceOf(voice, report, told, of.levelDb) : of] as const;
  });
  const isAny = ([voice, of]: (typeof entries)[number]) =>
    told.voices.includes(voice) || of.hits + of.missed + of.extra > 0;
  return Object.fromEntries(entries.filter(isAny));
}

/** What cannot be told, now that it was judged: nothing that was. */
function unheardOf(
  unheard: readonly Unheard[],
  told: Told,
  voices: FullReport['voices'],
): readonly Unheard[] {
  const all = told.placed.length + told.missed.length;
  const hitsOf = (voice: Voice) => voices[voice]?.hits ?? 0;
  return unheard.flatMap((one): Unheard[] => {
    if (one.reason === 'hard-to-tell' && told.sure.includes(one.voice)) return [];
    // what was taken for it was none: nothing is left that could be a guess
    if (one.reason === 'hard-to-tell' && told.voices.includes(one.voice) && hitsOf(one.voice) === 0)
      return [{ reason: 'not-heard', voice: one.voice }];
    if (one.reason === 'not-heard' && hitsOf(one.voice) > 0) return [];
    const isRecognised = one.reason === 'partly-recognised' && told.placed.length >= RECOGNISED * all;
    return isRecognised ? [] : [one];
  });
}

/** The report, every stroke as it was judged. */
export function asJudged(report: FullReport, { told }: Pick<Judgement, 'told'>): FullReport {
  if (!told) return report;
  const missed = missedOf(report, told);
  const voices = voicesOf(report, told);
  const judged = new Set(told.voices);
  const isThere = ([voice]: [string, unknown]) => {
    const of = voices[voice as Voice];
    return of !== undefined && of.hits + of.extra > 0;
  };
  return {
    ...report,
    strokes: strokesOf(report, told),
    missed: missed.map(({ dueSeconds: _, ...one }) => one),
    missedSeconds: missed.map(({ dueSeconds }) => dueSeconds),
    voices,
    balanceDb: Object.fromEntries(Object.entries(report.balanceDb).filter(isThere)),
    ...(report.places
      ? { places: [...report.places.filter(({ voice }) => !judged.has(voice)), ...told.places] }
      : {}),
    ...(report.unheard ? { unheard: unheardOf(report.unheard, told, voices) } : {}),
  };
}
