/** A school: signing in, the letter that lets a teacher in, and the head's list of teachers; in English. */

/** Every word of it. */
export const school = {
  signIn: {
    title: 'Sign in',
    lead: 'Others reach this desk, so it asks who comes.',
    name: 'Name',
    passphrase: 'Passphrase',
    wrong: 'This name and this passphrase do not go together.',
  },
  join: {
    title: 'You are invited',
    lead: 'Choose a passphrase that nobody else knows. From now on you sign in with it and your name.',
    passphrase: 'Your passphrase',
    again: 'The same once more',
    short: 'It needs {$least :integer} characters at least; a sentence is easy to remember.',
    differ: 'The two are not the same.',
    done: 'Come in',
  },
  teachers: {
    title: 'Teachers',
    lead: 'Each teacher has students of their own, whom no other sees: a head reads their names here and nothing else. Lessons and books lie on one shelf for everybody; whoever made them changes them, or a head.',
    unnamed: 'No name yet',
    you: '{$name} (you)',
    roles: { head: 'Head', teacher: 'Teacher' },
    roleOf: 'What {$name} is',
    students: '.input {$n :integer} .match $n 0 {{no students}} one {{{$n} student}} * {{{$n} students}}',
    notHere: 'invited, not here yet',
    invite: 'Invite a teacher',
    name: 'What the teacher is called',
    rename: 'Rename',
    renameThis: 'Rename {$name}',
    again: 'New letter',
    againThis: 'New letter for {$name}',
    letter: 'Letter for {$name}',
    once: 'Send this address to {$name} and nobody else. It opens once, within two weeks, to choose a passphrase; it is shown only now.',
    remove: 'Let go',
    removeThis: 'Let {$name} go',
    reallyRemove:
      '{$name} cannot come in any more. Their students, lessons and books are yours from then on.',
    removed: '{$name} cannot come in any more.',
    saved: 'Kept.',
    roster: 'Students of {$name}',
    handTo: 'Who teaches {$student}',
    handed: '{$student} is with {$name} from now on, with all that is kept.',
  },
} as const;
