/** Takes, in English. */

/** Words of `takes`. */
export const takes = {
  title: 'Takes',
  lead: 'Recordings stay on this device until you delete them or send them.',
  keepAll: 'Keep every take',
  keep: 'Keep this take',
  kept: 'The take is kept.',
  full: 'There is no room left on this device. Delete some takes first.',
  empty: 'No takes yet.',
  timeAlone: 'Time alone',
  exercise: 'Exercise {$n :integer}',
  about: '{$when}, {$bpm :number} bpm, {$seconds :number} s',
  rounds:
    '.input {$all :integer} .match $all one {{{$clean :integer} of {$all} round clean}} * {{{$clean :integer} of {$all} rounds clean}}',
  unheard: 'not judged',
  report: 'The whole report',
  reportOf: 'Report on {$title}',
  listen: 'Listen',
  preparing: 'Setting up …',
  play: 'Play',
  stop: 'Stop',
  side: 'What you hear',
  sides: {
    take: 'You',
    model: 'The model',
    both: 'Both',
  },
  other: 'The lesson has changed; there is no model for this take any more.',
  export: 'Save for your teacher',
  remove: 'Delete',
  removed: 'The take was deleted.',
  undo: 'Undo',
  space: 'Takes use {$used}.',
  spaceLeft: 'Takes use {$used}; {$left} are left.',
  broken: 'This take could not be played.',
} as const;
