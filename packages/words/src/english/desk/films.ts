/** Films of exercises, in English. */

/** Words of `films`. */
export const films = {
  title: 'Film',
  hint: 'Exercises as a film: the groove limb by limb, then each with count-in, ball, counts, chapters and captions.',
  opens: 'Make a film',
  shape: 'Shape',
  shapes: { landscape: 'wide', portrait: 'tall' },
  scheme: 'Paper',
  schemes: { light: 'light', dark: 'dark' },
  buildUp: 'Begin with the groove, limb by limb',
  countAloud: 'Count aloud over a click',
  rate: 'Frames a second',
  over: 'Over your own playing',
  overHint:
    'A video or a recording of an exercise as you play it: page and ball keep to you. Of several of one exercise the one with the fewest faults is shown; take the others out to choose.',
  whichPlayed: 'What is played',
  add: 'Add a video or a recording',
  sending: 'is being sent: {$percent :integer} % …',
  hearing: 'is being listened to …',
  heard:
    '.input {$faults :integer} .match $faults 0 {{{$duration}, without a fault.}} one {{{$duration}, {$faults} fault.}} * {{{$duration}, {$faults} faults.}}',
  playedIn: 'Exercise {$n :exercise}: {$file}',
  isShown: 'This one is shown.',
  takeOut: 'Take {$file} out',
  picturePlace: 'Your picture',
  places: {
    usual: 'where it fits',
    beside: 'beside',
    above: 'above',
    corner: 'in a corner',
    none: 'not shown',
  },
  needsFfmpeg:
    'Your own playing can be followed only where the computer that runs the desk has FFmpeg, a program of its own that does not come with Shedbook. Films that follow none of it do not need it.',
  heardFrom: 'Sound',
  sounds: { teacher: 'yours', both: 'both', model: 'the model' },
  speed: 'Speed',
  speeds: { full: 'as played', half: 'half as fast', both: 'one after the other' },
  plan: '{$duration} of film, {$width :integer useGrouping=never} × {$height :integer useGrouping=never}, about {$size}',
  madeHere:
    'The computer that runs the desk has no FFmpeg, so this browser makes the film. Leave this page open until it is there.',
  make: '.input {$n :integer} .match $n 0 {{Choose an exercise}} * {{Make the film}}',
  waiting: 'Another film comes first …',
  sound: 'Sound: {$percent :integer} % …',
  picture: 'Picture: {$percent :integer} % …',
  left: '{$duration} left',
  made: 'The film is there:',
  parts: {
    film: 'Film',
    'captions-en': 'Captions, English',
    'captions-de': 'Captions, German',
    chapters: 'List of chapters',
    cover: 'Cover',
  },
  failed: 'The film could not be made.',
} as const;
