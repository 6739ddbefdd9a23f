/** Headings, marks and figures of the report of a take, in English. */

/** The messages. */
export const report = {
  exercise: 'exercise',
  voice: 'voice',
  heard: 'heard',
  extra: 'extra',
  time: 'time',
  spread: 'spread',
  level: 'level',
  balance: 'Balance',
  asked: 'asked',
  played: 'played',
  tempo: 'Tempo',
  inTime: 'in time',
  early: '{$ms :integer} ms early',
  late: '{$ms :integer} ms late',
  summary:
    '{$bpm :number minimumFractionDigits=1 maximumFractionDigits=1} quarter notes a minute from {$startSeconds :number minimumFractionDigits=2 maximumFractionDigits=2} s on.',
  summarySwung:
    '{$bpm :number minimumFractionDigits=1 maximumFractionDigits=1} quarter notes a minute from {$startSeconds :number minimumFractionDigits=2 maximumFractionDigits=2} s on, swing {$ratio :number minimumFractionDigits=2 maximumFractionDigits=2}:1.',
  form: '.input {$bars :integer} .match $bars one {{Form: {$form}, {$bars} bar.}} * {{Form: {$form}, {$bars} bars.}}',
  round: 'Round {$n :integer}, {$bpm :integer} quarter notes a minute: {$verdict}.',
  verdicts: {
    clean: 'clean',
    nearly: 'nearly there',
    'not yet': 'not yet',
    'not judged': 'not judged',
  },
  heardOf: '{$hits :integer} of {$due :integer}',
  displacement: 'this far right is {$ms :integer} ms late',
  missedMark: 'missing',
  extraMark: 'not written',
  moreBars: '.input {$bars :integer} .match $bars one {{and {$bars} more bar}} * {{and {$bars} more bars}}',
  spreadMs: '±{$ms :integer} ms',
  decibels: '{$db :integer signDisplay=exceptZero} dB',
  seconds: '{$seconds :integer} s',
  bpm: '{$bpm :integer}',
} as const;
