/** Headings, marks and figures of the report of a take, in German. */
import type * as english from '../english/report.ts';
import { translation } from '../message/translated.ts';

/** The messages. */
export const report = translation<typeof english.report>()({
  exercise: 'Übung',
  voice: 'Stimme',
  heard: 'gehört',
  extra: 'zu viel',
  time: 'Zeit',
  spread: 'Streuung',
  level: 'Pegel',
  balance: 'Lautstärken',
  asked: 'verlangt',
  played: 'gespielt',
  tempo: 'Tempo',
  inTime: 'pünktlich',
  early: '{$ms :integer} ms zu früh',
  late: '{$ms :integer} ms zu spät',
  summary:
    '{$bpm :number minimumFractionDigits=1 maximumFractionDigits=1} Viertel in der Minute ab {$startSeconds :number minimumFractionDigits=2 maximumFractionDigits=2} s.',
  summarySwung:
    '{$bpm :number minimumFractionDigits=1 maximumFractionDigits=1} Viertel in der Minute ab {$startSeconds :number minimumFractionDigits=2 maximumFractionDigits=2} s, Swing {$ratio :number minimumFractionDigits=2 maximumFractionDigits=2}:1.',
  form: '.input {$bars :integer} .match $bars one {{Form: {$form}, {$bars} Takt.}} * {{Form: {$form}, {$bars} Takte.}}',
  round: 'Runde {$n :integer}, {$bpm :integer} Viertel in der Minute: {$verdict}.',
  verdicts: {
    clean: 'sauber',
    nearly: 'fast so weit',
    'not yet': 'noch nicht',
    'not judged': 'nicht beurteilt',
  },
  heardOf: '{$hits :integer} von {$due :integer}',
  displacement: 'so weit rechts ist {$ms :integer} ms zu spät',
  missedMark: 'fehlt',
  extraMark: 'steht nicht da',
  moreBars:
    '.input {$bars :integer} .match $bars one {{und {$bars} weiterer Takt}} * {{und {$bars} weitere Takte}}',
  spreadMs: '±{$ms :integer} ms',
  decibels: '{$db :integer signDisplay=exceptZero} dB',
  seconds: '{$seconds :integer} s',
  bpm: '{$bpm :integer}',
});
