/** Students, in English. */
import { SET_UP_NAMES } from '../set-ups.ts';

/** Words of `students`. */
export const students = {
  lead: 'What holds, what slips, and what comes next.',
  roster: 'Roster',
  find: 'Find a student',
  found:
    '.input {$n :integer} .match $n 0 {{Nobody has that name.}} one {{{$n} student}} * {{{$n} students}}',
  showMore: 'Show {$n :integer} more',
  add: 'New student',
  name: 'Name',
  empty:
    'Nobody on the roster yet. Add a student, then add a recording of them, or the practice log from their phone or tablet.',
  keep: 'Keep',
  erase: 'Erase {$name} for good',
  eraseWarning:
    'The name, the practice, what is set and the lesson book are erased at once and overwritten on the disk, with the copies that were made of the store. Nothing brings them back. Lessons stay; a name that was written into one stays there.',
  erased: '{$name} is erased.',
  remove: 'Take {$name} off the roster',
  removed: '{$name} is off the roster.',
  nothingHeard: 'Nothing heard yet',
  daysAway:
    '.input {$days :integer} .match $days 0 {{played today}} 1 {{played yesterday}} * {{played {$days} days ago}}',
  clockAhead: 'played while the clock of the device was ahead',
  lastPlayed:
    '.input {$minutes :integer} .match $minutes one {{Last played {$when}; {$minutes} minute in the last seven days.}} * {{Last played {$when}; {$minutes} minutes in the last seven days.}}',
  bringIn: 'Add a recording or a practice log',
  bringInHint:
    'Choose the file or drop it here: a recording of any kind, MIDI from an electronic kit, or what the practice page saved.',
  level: 'How strictly reports are judged',
  setUp: 'How their drums stand',
  setUpAsWritten: 'As each lesson says',
  setUps: SET_UP_NAMES,
  whichExercise: 'This is the report of one take. What was played?',
  takeIn: 'Add it',
  tookIn:
    '.input {$n :integer} .match $n one {{Added: {$n} entry. What was there already counts once.}} * {{Added: {$n} entries. What was there already counts once.}}',
  partly:
    '.input {$n :integer} .match $n one {{{$file}: {$n} entry was taken in; the others cannot be read. The first:}} * {{{$file}: {$n} entries were taken in; the others cannot be read. The first:}}',
  setAside:
    '.input {$n :integer} .match $n one {{{$n} entry that was taken in cannot be read here. It is set aside as it is and counts for nothing; perhaps a newer Shedbook reads it.}} * {{{$n} entries that were taken in cannot be read here. They are set aside as they are and count for nothing; perhaps a newer Shedbook reads them.}}',
  saveAside: 'Save them as a file',
  reading: 'The practice log is being read …',
  tooMuch: '{$file} could not be read in the time that such a file takes; is it damaged?',
  unreadable: '{$file} is neither a practice log nor a take.',
  slips: 'Slips',
  learning: 'On its way',
  holds: 'Holds',
  more: 'and {$n :integer} more',
  clean: 'clean at {$bpm :number}, goal {$goal :number}',
  byLimb: 'Limb by limb',
  cleanLoops:
    '.input {$loops :integer} .match $loops one {{nothing wrong in {$clean :integer} of {$loops} loop}} * {{nothing wrong in {$clean :integer} of {$loops} loops}}',
  mostly: {
    missed: 'else mostly strokes missing',
    extra: 'else mostly strokes too many',
    early: 'else mostly early',
    late: 'else mostly late',
    loud: 'else mostly too loud',
    quiet: 'else mostly too soft',
    slow: 'else mostly slow',
    fast: 'else mostly fast',
  },
  set: 'Set',
  nothingSet: 'Nothing is set.',
  setThis: 'Set this exercise',
  note: 'Note for the student',
  pinned: 'Stays until I take it out',
  takeOut: 'Take out {$name}',
  gone: 'no longer in the lessons',
  makeLesson: 'Make a lesson of what is set',
  lessonFor: '{$title}, for {$name}',
  packFor: 'Take-home pack for {$name}: {$lesson}',
  lesson: 'Lesson',
  exercise: 'Exercise',
  plan: '.input {$minutes :integer} .match $minutes one {{The next {$minutes} minute of practice}} * {{The next {$minutes} minutes of practice}}',
  minutes: '{$n :integer} min',
  from: 'from {$bpm :number} towards {$goal :number}',
  broughtIn: 'What was brought in',
  broughtInAt: '.input {$n :integer} .match $n one {{{$when}: {$n} entry}} * {{{$when}: {$n} entries}}',
  climbed: 'Round by round',
  climbedOn: '{$when}: {$exercise}',
  climbedRound: 'Round {$n :integer} at {$bpm :integer}: {$verdict}',
  roundVerdicts: { clean: 'clean', loose: 'nearly there', stumble: 'not yet', unheard: 'not judged' },
  takeOutLog: 'Take out what was brought in {$when}',
  tookOut: '.input {$n :integer} .match $n one {{{$n} entry taken out.}} * {{{$n} entries taken out.}}',
  added: '{$name} is on the roster.',
  changed: 'Changed: {$name}.',
  pass: 'Pass at {$bpm :number}',
  passThis: 'Pass at {$bpm :number}: {$name}',
  passed: 'Passed. It stands above what was heard, and reaches the student.',
  lessonsMade: '.input {$n :integer} .match $n one {{{$n} lesson made.}} * {{{$n} lessons made.}}',
} as const;

/** Words of `inbox`. */
export const inbox = {
  title: 'To hear first',
  takes: 'Takes that were sent',
  of: '.input {$rounds :integer} .match $rounds 0 {{{$lesson}, {$what}}} one {{{$lesson}, {$what}: {$clean :integer} of {$rounds} round clean}} * {{{$lesson}, {$what}: {$clean :integer} of {$rounds} rounds clean}}',
  exercise: 'exercise {$n :exercise}',
  groove: 'the groove alone',
  sent: 'sent {$when}',
  asks: 'wants to know what you think',
  away: '.input {$days :integer} .match $days one {{not played for {$days} day}} * {{not played for {$days} days}}',
  hear: 'Hear it',
  soundOf: 'Take: {$what}',
  noReport: 'There is no report of this take; listen to it.',
  noLesson: 'The lesson is no longer on the desk, so there is no report; listen to it.',
  answer: 'A line for the student',
  send: 'Send the line',
  isHeard: 'I have heard it',
  heard: 'Noted as heard.',
  answered: 'The line is there on their next visit.',
  said: 'You said: {$answer}',
} as const;

/** Words of `receipt`. */
export const receipt = {
  file: 'erased',
  when: 'Erased for good on {$when}:',
  rows: '.input {$n :integer} .match $n one {{{$n} entry of practice,}} * {{{$n} entries of practice,}}',
  assignments:
    '.input {$n :integer} .match $n one {{{$n} exercise that was set,}} * {{{$n} exercises that were set,}}',
  takes:
    '.input {$n :integer} .input {$megabytes :integer} .match $n one {{{$n} recording ({$megabytes} MB),}} * {{{$n} recordings ({$megabytes} MB),}}',
  voices: '.input {$n :integer} .match $n one {{{$n} note that you spoke,}} * {{{$n} notes that you spoke,}}',
  hours:
    '.input {$n :integer} .match $n one {{{$n} lesson in the lesson book,}} * {{{$n} lessons in the lesson book,}}',
  links:
    '.input {$n :integer} .match $n one {{{$n} private link, which opens nothing any more.}} * {{{$n} private links, which open nothing any more.}}',
  copies:
    'It is overwritten on this disk, with the copies that were made of the store. A backup that was saved elsewhere still has it; restored here, it stays erased.',
  only: 'This is kept nowhere: save it if you want to show it to somebody. Only the file that you save has the name.',
  save: 'Save as a text file',
} as const;

/** Words of `answer`. */
export const answer = {
  bar: 'Bar',
  onBar: 'Words on this bar',
  pin: 'Pin it to the bar',
  mark: 'Bar {$bar :integer}: {$text}',
  takeOutMark: 'Take out: bar {$bar :integer}, {$text}',
  note: 'The spoken note',
  noteOn: 'What it is about',
  wholeTake: 'all of it',
  noteBar: 'About bar {$bar :integer}',
  noteAll: 'About all of it',
  speak: 'Speak a note',
  speakMore: 'Speak another note',
  speaking: 'Speak now; two minutes at most.',
  enough: 'That is it',
  making: 'Setting up …',
  sendNote: 'Send the note',
  sendInstead: 'Send it in place of the one there',
  dropNote: 'Let it go',
  hearNote: 'Hear your note',
  hearThe: 'Hear your note: {$about}',
  theNote: 'Your note: {$about}',
  takeBackNote: 'Take the note back',
  takeBackThe: 'Take the note back: {$about}',
  noteSent: 'The note is there on their next visit.',
  noteGone: 'The note is taken back.',
  noMicrophone: 'No microphone could be heard. Allow it for this page, then try again.',
} as const;

/** Words of `beside`. */
export const beside = {
  page: 'The page of exercise {$n :exercise}, with where each stroke fell',
  groove: 'The groove',
  legend:
    'Over the heads: where each stroke fell, early to the left, late to the right, four times as far as it was. A broken ring: it did not come.',
  play: 'Play with the page',
  stop: 'Stop',
  round: 'Which round',
  roundAt: 'Round {$n :integer}, {$bpm :number} bpm',
  side: 'What is heard',
  sides: { take: 'The take', model: 'The model', both: 'Both' },
  speed: 'How fast',
  percent: '{$n :integer} %',
  preparing: 'Setting up …',
  broken: 'This take could not be played.',
} as const;

/** Words of `diary`. */
export const diary = {
  title: 'Diary',
  day: '.input {$minutes :integer} .match $minutes 0 {{{$day}}} one {{{$day}: {$minutes} minute}} * {{{$day}: {$minutes} minutes}}',
  ear: '.input {$rounds :integer} .match $rounds one {{{$exercise}: {$clean :integer} of {$rounds} round heard as clean, up to {$bpm :number}.}} * {{{$exercise}: {$clean :integer} of {$rounds} rounds heard as clean, up to {$bpm :number}.}}',
  student:
    '.input {$rounds :integer} .match $rounds one {{{$exercise}: {$clean :integer} of {$rounds} round clean as they say themselves, up to {$bpm :number}.}} * {{{$exercise}: {$clean :integer} of {$rounds} rounds clean as they say themselves, up to {$bpm :number}.}}',
  teacher:
    '.input {$rounds :integer} .input {$clean :integer} {{{$exercise}: passed by you at {$bpm :number}.}}',
  played: '{$exercise}: played, not judged.',
  sent: 'Sent: {$what}.',
  earlier: '.input {$n :integer} .match $n one {{{$n} earlier day}} * {{{$n} earlier days}}',
} as const;

/** Words of `consent`. */
export const consent = {
  title: 'Consent to recordings',
  isMinor: 'A guardian decides about recordings',
  missing:
    'Nobody has consented yet: the practice page opens no microphone for {$name}, and no take is accepted.',
  by: 'Who consented',
  note: 'Note the consent',
  given: '{$by} consented; noted on {$day}.',
  withdraw: 'The consent is withdrawn',
  noted: 'Noted. The practice page knows it on the next visit.',
  withdrawn: 'Withdrawn. Takes that were sent before are still here: erase them where that is wished.',
} as const;

/** Words of `safe`. */
export const safe = {
  title: 'Keep it safe',
  lead: 'Everything in one file: lessons, students, practice and recordings. Keep it where only you can read it. “shedbook restore” puts it back.',
  backUp: 'Back up everything',
  tableOf: 'Practice of {$name} as a table',
  tableOfAll: 'Practice of everybody as a table',
  everything: 'Everything but the sound as JSON',
} as const;

/** Words of what is shown only once, to be copied. */
export const shownOnce = {
  copy: 'Copy the address',
  copied: 'The address is copied.',
  notCopied: 'The address could not be copied: mark it and copy it by hand.',
} as const;

/** Words of `links`. */
export const links = {
  title: 'Private links',
  lead: 'A private link opens what is set for {$name}, from any lesson and in its order, on their own device. What they play comes back by itself. Whoever has the link can open it.',
  make: 'Make a private link for {$name}',
  of: 'Private link for {$name}',
  once: 'It is shown only now: send it or let it be scanned. If it is lost, make another and take this one back.',
  code: 'The private link for {$name} as a code to scan',
  address: 'Address of the private link',
  made: 'Made on {$day};',
  unused: 'not opened yet',
  used: 'last opened on {$day}',
  revoke: 'Take back',
  revokeThis: 'Take back link {$n :integer}',
  revoked: 'The link is taken back. {$name} keeps what lies on the device.',
} as const;

/** Words of `signIn`. */
export const signIn = {
  out: 'Sign out',
} as const;
