/** Recordings of students, in English. */

/** Words of `takes`. */
export const takes = {
  whatOf: '{$file}: what was to be played?',
  whose: '{$file}: whose recording is it? Add the student; it waits here.',
  anyTempo: 'any; written: {$bpm :number}',
  listen: 'Listen',
  leave: 'Leave it',
  reading: 'The recording is being opened …',
  listening: 'Listening …',
  measuring: 'Working out what was played …',
  failed: 'This file is no recording that can be heard here: WAV, MP3, M4A, Ogg, FLAC or MIDI.',
  nothingToPlay: 'There is no lesson with an exercise yet that this could be a recording of.',
  whichever: 'whichever was played',
  untold: 'It cannot be told which exercise was played: choose it, then listen once more.',
  hearAsExercise: 'Hear it as exercise {$n :exercise}',
  hearAs: 'Hear it as “{$form}”',
  title: '{$lesson} · exercise {$exercise}',
  picture: 'What was played, as a picture: {$title}',
  keep: 'Keep with {$name}',
  kept: 'Kept with {$name}.',
  of: 'Recordings that were heard here',
  gone: 'Its exercise is no longer in the lessons.',
} as const;
