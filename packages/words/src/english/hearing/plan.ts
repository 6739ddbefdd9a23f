/** The plan of today and what was played, in English. */

/** Words of `plan`. */
export const plan = {
  title: 'Today',
  minutes: 'Minutes I have',
  minutesOf: '.input {$n :integer} .match $n one {{{$n} minute}} * {{{$n} minutes}}',
  short: '{$n :integer} min',
  open: 'Practise {$what}',
  exercise: 'Exercise {$n :integer}',
  named: 'Exercise {$n :integer} ({$name})',
  groove: 'The groove alone',
  rest: 'Break',
  tempo: '{$bpm :number} bpm',
  tempi: '{$from :number} to {$to :number} bpm',
  takeUp: 'Practise this list',
  goOn: 'Go on with the list',
  done: 'done',
  allDone: 'Everything on today’s list is done.',
  free: 'Free play',
  running: '{$what}: {$left} left',
  rests: 'Break: {$left} left',
  place: '{$n :integer} of {$of :integer} on today’s list',
  skip: 'Next on the list',
  leave: 'Leave the list',
  parts: {
    slower: 'The whole, slower',
    'cell alone': 'Beat {$beat :integer} alone, on every beat',
    'move alone': 'The move into beat {$beat :integer} alone, round and round',
    'two limbs': 'Two limbs: the lead hand and the exercise',
    sung: 'Sing it and count aloud; hands and feet rest',
  },
} as const;

/** Words of `log`. */
export const log = {
  title: 'What you have played',
  lead: 'By exercise and tempo. It stays on this device, also when the sheet is renewed.',
  empty: 'Nothing yet.',
  exercise: 'Exercise',
  time: 'Time played',
  heard: 'Heard clean up to',
  said: 'Said clean up to',
  last: 'Last played',
  never: 'not yet',
  export: 'Save the log',
  import: 'Read a log',
  imported:
    '.input {$n :integer} .match $n 0 {{Nothing new in this file.}} one {{{$n} entry was added.}} * {{{$n} entries were added.}}',
  refused: '{$file} was not read:',
  problem: 'Line {$line :integer}, column {$column :integer}: found {$found}; expected {$expected}.',
  more: '.input {$n :integer} .match $n one {{… and {$n} more problem.}} * {{… and {$n} more problems.}}',
} as const;
