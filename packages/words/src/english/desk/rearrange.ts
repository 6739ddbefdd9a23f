/** Copying, turning and moving, in English. */

/** Words of `rearrange`. */
export const rearrange = {
  title: 'Copy, turn and move',
  what: 'What',
  beat: 'beat',
  bar: 'bar',
  exercise: 'exercise',
  exercises: '.input {$n :integer} .match $n one {{{$n} exercise}} * {{{$n} exercises}}',
  selectSeveral: 'Select several',
  onVoice: 'Played on',
  acts: {
    copy: 'Copy',
    cut: 'Cut',
    paste: 'Paste',
    backwards: 'Backwards',
    earlier: 'Earlier',
    later: 'Later',
  },
  copied: {
    beat: 'The beat is copied.',
    bar: 'The bar is copied.',
  },
  copiedExercises:
    '.input {$n :integer} .match $n one {{{$n} exercise copied.}} * {{{$n} exercises copied.}}',
  cutExercises: '.input {$n :integer} .match $n one {{{$n} exercise cut.}} * {{{$n} exercises cut.}}',
  pasted: '.input {$n :integer} .match $n one {{{$n} exercise put in.}} * {{{$n} exercises put in.}}',
  otherMeter: 'What was copied has {$found :integer} beats in a bar; here a bar has {$expected :integer}.',
  isSelected: 'selected',
} as const;
