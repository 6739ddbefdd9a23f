/** Recordings of exercises, in English. */

/** Words of `recordings`. */
export const recordings = {
  title: 'Recordings',
  hint: 'Exercises as files to play along with: in any form, layer and tempo.',
  opens: 'Make recordings',
  which: 'Which exercises',
  all: '.input {$n :integer} .match $n one {{the one}} * {{all {$n}}}',
  some: 'some',
  usualForm: 'the form that plays here',
  stages: 'a recording of each layer joining in',
  startTempo: 'as written: {$bpm :number}',
  format: 'File',
  formats: {
    wav: 'WAV',
    mp3: 'MP3',
    ogg: 'Ogg',
    flac: 'FLAC',
  },
  make: '.input {$n :integer} .match $n 0 {{Choose an exercise}} one {{Make the recording}} * {{Make {$n} recordings}}',
  cancel: 'Cancel',
  making: '{$n :integer} of {$of :integer} is being recorded …',
  made: '{$name} is in your downloads.',
  cancelled: 'Cancelled; nothing was kept.',
  failed: 'The recordings could not be made.',
} as const;
