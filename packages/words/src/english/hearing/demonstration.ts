/** How the teacher plays an exercise, in English. */

/** Words of `demonstration`. */
export const demonstration = {
  title: 'Your teacher plays it',
  play: 'Hear your teacher',
  stop: 'Stop your teacher',
  speed: 'How fast',
  percent: '{$n :integer} %',
  tempo: 'about {$bpm :integer} bpm',
  preparing: 'Setting up …',
  broken: 'It could not be played.',
  film: 'Watch it as a film',
} as const;
