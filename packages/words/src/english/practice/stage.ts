/** Playing an exercise, in English. */
import { footSwitch } from '../foot-switch.ts';

/** Words of `stage`. */
export const stage = {
  back: 'The sheet',
  next: 'Next exercise',
  previous: 'Previous exercise',
  play: 'Play',
  stop: 'Stop',
  ready: 'Ready',
  countIn: 'Count-in',
  bar: 'bar',
  beat: 'beat',
  layer: 'Layer {$n :integer} of {$of :integer}: {$names}',
  hearExample: 'Hear the example',
  example: 'Example: your teacher shows it first',
  everyLimb: 'Every limb',
  barOf: 'bar {$bar :integer} of {$bars :integer}',
  listen: 'Listen',
  answer: 'You',
  time: 'Time',
  round: 'round {$n :integer}',
  ending: 'Last bar: {$what} on {$beat}',
  groove: 'Time: the groove alone',
  free: 'Free play',
  freeLead: 'Play anything. Nothing is judged; the minutes are logged.',
  freeWith: 'With',
  freeGroove: 'The groove',
  freeClick: 'The click alone',
  ledge: 'Playing',
  keys: 'Keys and pedal',
  keyList: [
    ['Space', 'play, stop'],
    ['← →', 'previous, next exercise'],
    ['↑ ↓', 'faster, slower'],
    ['T', 'tap the tempo'],
    ['C', 'that was clean'],
    ['S', 'I stumbled'],
    ['G', 'every limb, or the exercise alone'],
    ['Page ↓', 'right pedal: play; on the ladder: that was clean'],
    ['Page ↑', 'left pedal: stop; when silent: next exercise'],
    ['Esc', 'back to the sheet'],
  ],
} as const;

/** Words of `pedal`. */
export const pedal = {
  title: 'Foot switch over MIDI',
  ...footSwitch,
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
  slider: 'Tempo in beats a minute',
} as const;
