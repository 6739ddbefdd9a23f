/** The plan of today and what was played, in English. */

/** Words of `plan`. */
export const plan = {
  title: 'Today',
  minutes: 'Minutes I have',
  lessons: 'From these lessons',
  minutesOf: '.input {$n :integer} .match $n one {{{$n} minute}} * {{{$n} minutes}}',
  short: '{$n :integer} min',
  open: 'Practise {$what}',
  exercise: 'Exercise {$n :exercise}',
  named: 'Exercise {$n :exercise} ({$name})',
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
  goal: {
    title: 'My own goal',
    is: 'My goal: {$goal}',
    change: 'Change my goal',
    what: 'What I want to be able to do',
    tempo: 'At how many bpm',
    hint: 'The tempo takes the place of the goal on the sheet. Leave it empty to keep that one.',
    keep: 'Keep my goal',
  },
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
  lead: 'By exercise and tempo. It is kept on this device, also when the sheet is renewed.',
  empty: 'Nothing yet.',
  exercise: 'Exercise',
  time: 'Time played',
  heard: 'Heard clean up to',
  said: 'Said clean up to',
  last: 'Last played',
  passed: 'passed by your teacher at {$tempo}',
  never: 'not yet',
  export: 'Save the log',
  import: 'Read a log',
  imported:
    '.input {$n :integer} .match $n 0 {{Nothing new in this file.}} one {{{$n} entry was added.}} * {{{$n} entries were added.}}',
  reading: 'The log is being read …',
  tooMuch: '{$file} could not be read in the time that a log takes. Is it damaged, or another kind of file?',
  refused: '{$file} was not read:',
  partly:
    '.input {$n :integer} .match $n one {{{$file} has entries that cannot be read. {$n} other entry was added.}} * {{{$file} has entries that cannot be read. {$n} other entries were added.}}',
  problem: 'Line {$line :integer}, column {$column :integer}: found {$found}; expected {$expected}.',
  more: '.input {$n :integer} .match $n one {{… and {$n} more problem.}} * {{… and {$n} more problems.}}',
} as const;

/** Words of `history`. */
export const history = {
  title: 'Keep it safe',
  lead: 'Log, takes, line checks, timings and settings lie on this device. A browser may clear them: save them now and then.',
  safe: 'Log, takes, line checks, timings and settings lie on this device, and the browser has promised to keep them.',
  save: 'Save everything',
  back: 'Bring back what was saved',
  refused: 'This file is not one that was saved here.',
  cameBack: 'Added: {$entries :integer} log entries and {$takes :integer} takes.',
  again: 'Open the page with them',
  unreadable:
    '.input {$n :integer} .match $n one {{{$n} entry of the log cannot be read. It is set aside; the others are here.}} * {{{$n} entries of the log cannot be read. They are set aside; the others are here.}}',
  look: 'Save them to look at',
  takeOut: 'Take them out',
} as const;

/** Words of `progress`. */
export const progress = {
  title: 'Over the weeks',
  lead: 'A dot a week. Filled: heard; open: said by you. Evenness is better the higher the dot stands.',
  empty: 'Nothing yet. After a few rounds each week has a dot here.',
  tempo: 'Tempo that held: {$what}',
  even: 'How even: {$limb}',
  point: '{$value} in the week of {$week}',
  spread: '{$ms :number} ms apart',
} as const;

/** Words of `week`. */
export const week = {
  ask: 'I want to know what my teacher thinks',
  sendTake: 'Send to my teacher',
  takeWaits: 'It goes to your teacher as soon as there is a network.',
  takeSent: 'Sent to your teacher on {$when}.',
  keptUntil: 'Your teacher’s desk keeps it until {$day}, then it is erased there.',
  takeHeard: 'Your teacher has listened to it.',
  takeRefused: 'Your teacher’s desk did not take it. It stays on this device.',
  back: 'Take it back',
  notBack: 'It could not be taken back now. Try again when there is a network.',
  answer: 'Your teacher: {$answer}',
  answers: 'From your teacher',
  onBar: 'Bar {$bar :integer}: {$text}',
  spoken: 'What your teacher said about {$what}',
  spokenOn: 'What your teacher said about bar {$bar :integer} of {$what}',
  spokenBar: 'Bar {$bar :integer}, spoken:',
  onTake: 'About {$what}, {$day}:',
  want: 'My teacher sees what I practise',
  states: {
    sent: '.input {$n :integer} .match $n * {{Your teacher has everything up to now.}}',
    'on its way':
      '.input {$n :integer} .match $n one {{{$n} entry is on its way to your teacher.}} * {{{$n} entries are on their way to your teacher.}}',
    waits:
      '.input {$n :integer} .match $n one {{{$n} entry waits on this device until there is a network.}} * {{{$n} entries wait on this device until there is a network.}}',
    later:
      '.input {$n :integer} .match $n one {{{$n} entry stays on this device, since your teacher’s desk takes no more for now. It goes by itself later.}} * {{{$n} entries stay on this device, since your teacher’s desk takes no more for now. They go by themselves later.}}',
    refused:
      '.input {$n :integer} .match $n one {{{$n} entry could not be sent: your private link opens nothing any more. It stays on this device; ask your teacher for a new link.}} * {{{$n} entries could not be sent: your private link opens nothing any more. They stay on this device; ask your teacher for a new link.}}',
    off: '.input {$n :integer} .match $n 0 {{Nothing new is sent.}} one {{{$n} entry stays on this device alone.}} * {{{$n} entries stay on this device alone.}}',
  },
} as const;
