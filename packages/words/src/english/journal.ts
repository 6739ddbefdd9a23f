/** Who does what is written into the journal, in English. */

/** Who. */
const doers = {
  desk: 'The desk',
  student: 'The student',
  somebody: 'Somebody',
  computer: 'This computer',
  server: 'Shedbook',
} as const;

/** What. */
const deeds = {
  'signed-in': 'signed in',
  'sign-in-refused': 'gave a wrong passphrase',
  'signed-out': 'signed out',
  'passphrase-set': 'set the passphrase',
  'link-made': 'made a private link',
  'link-revoked': 'took a private link back',
  'consent-noted': 'noted who decides about recordings',
  'practice-sent': 'sent practice',
  'exercise-passed': 'passed an exercise',
  'take-sent': 'sent a take',
  'take-taken-back': 'took a take back',
  'take-heard': 'heard a take',
  'note-spoken': 'spoke a note to a take',
  'note-taken-back': 'took a spoken note back',
  'exercises-set': 'set exercises in a lesson',
  'take-kept': 'kept a recording by hand',
  'take-not-kept': 'keeps a recording no longer by hand',
  'takes-aged': 'erased recordings for their age',
  'keeping-set': 'set how long recordings are kept',
  'practice-exported': 'saved practice as a table',
  'everything-exported': 'saved everything as JSON',
  'backed-up': 'backed everything up',
  'backup-restored': 'restored a backup',
  'progress-printed': 'printed a progress page',
  'demonstration-erased': 'erased a demonstration',
  'lesson-erased': 'erased a lesson',
  'hour-erased': 'erased a lesson in the lesson book',
  'practice-erased': 'erased practice',
  'student-removed': 'took a student off the roster',
  'student-restored': 'brought a student back',
  'student-erased': 'erased a student for good',
  'student-handed-over': 'handed a student over',
  'teacher-added': 'added a teacher',
  'teacher-invited': 'made a letter for a teacher',
  'teacher-joined': 'took a letter up and chose a passphrase',
  'teacher-changed': 'changed a teacher’s name or role',
  'teacher-removed': 'let a teacher go',
  'passkey-added': 'added a passkey',
  'passkey-removed': 'removed a passkey',
} as const;

/** An entry. */
export const entries = {
  entry: '{$by}: {$what}',
  entryOf: '{$by}: {$what} ({$whom})',
  erasedStudent: 'a student who was erased',
  aged: '.input {$n :integer} .match $n one {{{$n} recording erased for its age}} * {{{$n} recordings erased for their age}}',
  doers,
  deeds,
} as const;
