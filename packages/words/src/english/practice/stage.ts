/** Playing an exercise, in English. */

/** Words of `stage`. */
export const stage = {
  back: 'The sheet',
  next: 'Next exercise',
  previous: 'Previous exercise',
  play: 'Play',
  stop: 'Stop',
  loading: 'Setting up the kit …',
  failed: 'This browser gives no sound.',
  held: 'The sound was taken away, by a call or another program. Play goes on from the bar where it stopped.',
  ready: 'Ready',
  countIn: 'Count-in',
  barOf: 'bar {$bar :integer} of {$bars :integer}',
  listen: 'Listen',
  answer: 'You',
  time: 'Time',
  round: 'round {$n :integer}',
  ending: 'Last bar: {$what} on {$beat}',
  groove: 'Time: the groove alone',
  ledge: 'Playing',
  keys: 'Keys and pedal',
  keyList: [
    ['Space', 'play, stop'],
    ['← →', 'previous, next exercise'],
    ['↑ ↓', 'faster, slower'],
    ['T', 'tap the tempo'],
    ['C', 'that was clean'],
    ['S', 'I stumbled'],
    ['Page ↓', 'right pedal: play; on the ladder: that was clean'],
    ['Page ↑', 'left pedal: stop; when silent: next exercise'],
    ['Esc', 'back to the sheet'],
  ],
} as const;

/** Words of `pedal`. */
export const pedal = {
  title: 'Foot switch over MIDI',
  lead: 'A page-turning pedal works as it is. A MIDI foot switch or pad has to be shown once.',
  connect: 'Listen for MIDI',
  status: {
    off: 'The browser asks whether MIDI may be heard.',
    asking: 'Waiting for the browser to allow it …',
    on: 'MIDI is heard.',
    missing: 'This browser has no MIDI; keys and touch work all the same.',
    refused: 'The browser was told not to allow MIDI; keys and touch work all the same.',
  },
  learn: 'Learn',
  press: 'Press the switch now …',
  none: 'none',
  control: 'controller {$n :integer}, channel {$channel :integer}',
  note: 'note {$n :integer}, channel {$channel :integer}',
  actions: {
    next: 'Right pedal',
    previous: 'Left pedal',
    toggle: 'Play or stop',
  },
} as const;

/** Words of `tempo`. */
export const tempo = {
  title: 'Tempo',
  bpm: 'bpm',
  slower: 'Slower',
  faster: 'Faster',
  tap: 'Tap',
  slider: 'Tempo in quarter notes a minute',
} as const;
