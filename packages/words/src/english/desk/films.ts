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
  plan: '{$duration} of film, {$width :integer useGrouping=never} × {$height :integer useGrouping=never}, about {$size}',
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
