/** The line check, in which the ear learns a kit, in English. */

/** Every word of it. */
export const lineCheck = {
  title: 'Teach it your kit',
  lead: 'A line check: you play each voice of this lesson alone, and the ear learns how it sounds here. Afterwards it misses fewer feet and hats.',
  how: '.input {$voices :integer} .input {$seconds :integer} .match $voices one {{{$voices} voice, {$seconds} seconds: after a count of four eight even strokes, as loud as in the groove.}} * {{{$voices} voices, {$seconds} seconds: for each a count of four, then eight even strokes, as loud as in the groove. While the next one is counted, stop with the hand what rings.}}',
  holds:
    'It holds for this kit, in this room, with this microphone. What was learnt is kept on this device; the sound is not.',
  needs: 'The microphone has to be on.',
  start: 'Begin the line check',
  leave: 'Break off',
  next: '{$voice :voice at=start}: get ready',
  now: '{$voice :voice at=start}: play',
  order: 'In this order',
  states: { done: 'done', now: 'now', next: 'to come' },
  learning: 'Learning: about ten seconds, longer on a phone …',
  failed: 'Learning broke off, and nothing was changed. Try again.',
  result: {
    all: 'Every voice was heard.',
    some: 'Not heard well: {$voices :voices}. Play again what is missing, or keep the rest.',
    none: 'Too little was heard to learn from. Put the device nearer, and play again.',
    nothing: 'Every voice was heard. The ear knew this kit already: the line check adds nothing.',
  },
  missing: 'Play what is missing',
  whole: 'Play all of it again',
  name: 'What you call this kit',
  own: 'My kit',
  keep: 'Keep it',
  kept: 'Kept: the ear hears with “{$name}” from the next start on.',
  full: 'It could not be kept: this browser has no room for it, or keeps nothing.',
  hears: 'The ear hears with',
  without: 'no line check',
  old: '“{$name}” was made with an earlier ear and is not used. Make it again.',
  others:
    '“{$name}” lacks voices of this lesson: {$voices :voices}. They may be lost until you make it again.',
  rename: 'Change its name',
  taken: 'Another one has this name.',
  forget: 'Forget “{$name}”',
} as const;
