/** Settings, and what the server refuses, in English. */

/** Words of `settings`. */
export const settings = {
  theme: 'Light or dark',
  trySound: 'Try the sound of this device',
  themes: {
    system: 'as the system',
    light: 'light',
    dark: 'dark',
  },
  language: 'Language',
} as const;

/** Words of `refusals`. */
export const refusals = {
  'no-such-lesson': 'There is no such lesson any more.',
  'no-such-step': 'The history does not reach that far.',
  'no-such-student': 'This student is not on the roster any more.',
  'lesson-changed': 'The lesson was changed in another window.',
  'student-changed': 'This student was changed in another window.',
  'bad-request': 'The server did not understand this.',
  'too-large': 'This is too large.',
  'foreign-origin': 'The server answers only to its own pages.',
  'no-such-film': 'There is no such film any more.',
  'no-ffmpeg':
    'The computer that runs the desk has no FFmpeg, a program of its own that does not come with Shedbook, and this browser encodes no films. Install FFmpeg there, or open the desk in a current Chrome, Edge or Firefox.',
  'no-such-demonstration': 'It is not there any more.',
  'no-such-performance': 'This recording is not there any more. Add it again.',
  'performance-unreadable': 'There is no sound in it that can be read.',
  'performance-not-followed':
    'The exercise could not be followed in it. Does the whole exercise sound, in the form that is chosen?',
  'performance-of-another': 'Another exercise of this lesson is played in it.',
  'no-such-book': 'There is no such book; it was erased in another window.',
  'book-changed': 'This book was changed in another window.',
  'book-unfinished': 'A book needs lessons and sections that are there, without errors.',
  'no-such-hour': 'There is no such lesson in the book; it was erased in another window.',
  'hour-changed': 'This lesson was written on in another window.',
  'no-such-take': 'This take was taken back by the student.',
  'not-a-take': 'That is no take from the practice page.',
  'no-such-medium': 'This file is not there any more.',
  'medium-refused':
    'That file cannot be shown: pictures are PNG, JPEG, GIF or plain SVG (up to 5 MB), sound MP3, M4A, WAV or FLAC (12 MB), video MP4 or WebM (30 MB).',
  'not-a-voice-note': 'That is no recording that can be sent.',
  'no-consent': 'No guardian has consented to recordings of this student.',
  'no-room': 'Takes of this student fill all the room that there is for them.',
  'no-such-link': 'This private link was taken back already.',
  'no-such-teacher': 'This teacher is not here any more.',
  'no-such-invitation': 'This letter opens nothing: it was used, or is too old. Ask for another.',
  'no-passkeys-here': 'This address allows of no passkeys.',
  'passkey-refused': 'This passkey opens nothing here.',
  'no-such-passkey': 'This passkey is gone already.',
  'name-taken': 'Another teacher has this name.',
  'first-stays': 'The first teacher stays, as a head.',
  'no-passphrase': 'Set a passphrase first: "shedbook passphrase".',
  'school-backup': 'With several teachers, backups are made on the computer: "shedbook backup".',
  'head-only': 'A head of the school does this.',
  'not-yours': 'Another teacher made this. Duplicate it to change it.',
  'sign-in-first': 'Sign in first: open the desk anew.',
  'wrong-passphrase': 'That is not the passphrase.',
  'too-often': 'That was tried too often. Wait a quarter of an hour.',
  'unreadable-file': 'The file could not be read.',
  unreadable: 'The file could not be read: {$why}.',
  'lesson-has-errors': 'The text has problems; mend them first.',
  damaged:
    'What is kept here is damaged on the disk. Run "shedbook doctor": it saves what can still be read.',
  'disk-full':
    'The disk on which the desk keeps everything is full, so this is not kept yet. Make room; nothing is lost.',
  'too-much': 'This takes more time or memory than the desk gives to one thing. Make it smaller.',
  'store-away':
    'The store of the desk does not answer just now, so this is not kept yet. Try again in a moment.',
  internal: 'Something broke in the server.',
  unreachable: 'The server does not answer.',
} as const;
