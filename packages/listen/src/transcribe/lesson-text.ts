/** What was written down, as the text of a lesson file. */
import {
  defaultBalance,
  editLesson,
  exerciseToData,
  formatFeel,
  formatPattern,
  type Voice,
} from '@shedbook/core';
import type { Transcript } from './transcribe.ts';

/** Levels nearer than this to the usual ones are not said, in dB. */
const USUAL_DB = 2;
/** Furthest that a level may be said to lie from the lead voice, in dB. */
const FURTHEST_DB = 30;

/** The levels that differ from those that a lesson starts from, in whole decibels. */
function levelsOf({ levelDb }: Transcript, lead: Voice): ReadonlyMap<Voice, number> {
  const usual = defaultBalance(lead);
  const all = Object.entries(levelDb) as readonly (readonly [Voice, number])[];
  return new Map(
    all
      .filter(([voice, db]) => voice !== lead && Math.abs(db - usual[voice]) > USUAL_DB)
      .map(([voice, db]) => [voice, Math.round(Math.max(-FURTHEST_DB, Math.min(FURTHEST_DB, db)))]),
  );
}

/** The text of a lesson with what was heard; `check` finds nothing wrong with it. */
export function lessonOfTranscript(heard: Transcript, title: string): string {
  const lead = heard.groove[0]?.voice ?? heard.comping ?? 'ride';
  const levels = levelsOf(heard, lead);
  const groove = heard.groove.map(({ voice, pattern }): [string, unknown] => {
    const text = formatPattern(pattern);
    const level = levels.get(voice);
    return [voice, level === undefined ? text : { pattern: text, level }];
  });
  const inGroove = new Set<string>(heard.groove.map(({ voice }) => voice));
  const balance = Object.fromEntries([...levels].filter(([voice]) => !inGroove.has(voice)));
  const comping = heard.comping ?? 'snare';
  const fields: readonly (readonly [string, unknown])[] = [
    ['title', title],
    ['meter', heard.meter.text],
    ['tempo', Math.round(heard.bpm)],
    ['feel', formatFeel(heard.feel)],
    ...(groove.length > 0 ? [['groove', Object.fromEntries(groove)] as const, ['lead', lead] as const] : []),
    ...(comping === 'snare' ? [] : [['comping', comping] as const]),
    ...(Object.keys(balance).length > 0 ? [['balance', balance] as const] : []),
    ['exercises', heard.exercises.map((exercise) => exerciseToData(exercise, comping))],
  ];
  return fields.reduce((text, [key, value]) => editLesson(text, [key], value), '');
}
