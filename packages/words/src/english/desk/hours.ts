/** Dated lessons, in English. */

/** Words of `hours`. */
export const hours = {
  title: 'Lesson book',
  write: 'Write on a lesson',
  writeOn: 'Day of the lesson',
  of: 'Lesson of {$day}',
  attendance: 'Was {$name} there?',
  attendances: {
    planned: 'not held yet',
    came: 'was there',
    missed: 'did not come',
    cancelled: 'called off',
  },
  done: 'What was done',
  notes: 'Notes for me alone; no student reads them',
  set: 'Set in it',
  setItem: '{$exercise}, up to {$bpm :number}',
  setUntil: '{$exercise}, up to {$bpm :number}, for {$day}',
  erase: 'Erase the lesson of {$day}',
  erased: 'The lesson of {$day} is erased.',
  earlier: '.input {$n :integer} .match $n one {{{$n} earlier lesson}} * {{{$n} earlier lessons}}',
  damaged: 'The lesson of {$day} is damaged on the disk and cannot be read. A backup may still have it.',
  upTo: 'Up to (bpm)',
  by: 'For the lesson on',
} as const;

/** Words of `nextLesson`. */
export const nextLesson = {
  title: 'Draft for the next lesson',
  lead: 'Drafted from what was heard and from what you passed. Tick what stays, change the tempi; nothing is set before you set it.',
  nothing: 'There is nothing to draft from yet: there is no lesson on the desk.',
  silent: 'Nothing is proposed for {$name}, and nothing is set.',
  allHolds: 'All that is on the desk holds for {$name}: there is nothing to draft.',
  on: 'The next lesson is on',
  take: 'Set {$exercise}',
  upTo: 'Up to, for {$exercise} (bpm)',
  note: 'Note for the student, for {$exercise}',
  set: '.input {$n :integer} .match $n 0 {{Set nothing for {$name}}} one {{Set this {$n} exercise for {$name}}} * {{Set these {$n} exercises for {$name}}}',
  isSet: 'Set for {$name}, and written into the lesson of today.',
} as const;

/** Words of `progressPage`. */
export const progressPage = {
  title: 'Progress page',
  lead: 'For parents and students, to print: days and minutes of practice, what you passed, what is set and what comes next. Your notes are not on it.',
  weeks: 'How far it looks back',
  span: '.input {$n :integer} .match $n one {{{$n} week}} * {{{$n} weeks}}',
  print: 'Progress page of {$name}',
} as const;
