/** Hearing, composing and the lesson room, in English. */
import { footSwitch } from '../foot-switch.ts';
import { forms } from '../sheet.ts';

/** Words of `sound`. */
export const sound = {
  play: 'Play',
  stop: 'Stop',
  ledge: 'Sound',
  what: 'What plays',
  exercise: 'Exercise {$n :integer}',
  timeOnly: 'Time only',
  tempo: 'Tempo',
  slower: 'Slower',
  faster: 'Faster',
  feel: 'Feel',
  swing: 'Swing, long to short',
  click: 'Click',
  loop: 'Loop',
  loopBar: 'Loop bar {$n :integer}',
  oneBar: 'Loop one bar',
  barOf: '{$what}, bar {$n :integer}',
  compare: 'A B: side {$side} is heard; press for the other side',
  side: 'What is set below belongs to side',
  form: 'Form',
  forms,
  ownForm: '{$name} (this lesson’s)',
  layers: 'Layers',
  all: 'all',
  balance: 'Balance',
  mute: 'Mute the {$voice :voice}',
  settings: 'More sound settings',
  loading: 'Setting up the kit …',
  failed: 'This browser gives no sound.',
} as const;

/** Words of `compose`. */
export const compose = {
  title: 'Compose',
  lead: 'Choose what may happen inside a beat; the page writes itself, easiest first.',
  vocabulary: 'Vocabulary',
  count: 'How many bars',
  seed: 'Page number',
  another: 'Another page',
  strokesMost: 'Strokes in a bar at most',
  silenceMost: 'Silent beats in a bar at most',
  noLimit: 'no limit',
  idiom: 'Figures of the trade',
  everyMove: 'none: every move counts',
  idiomShare: '{$percent :integer} in 100',
  themes: 'as themes',
  headings: 'Name each block after its figure',
  locked: 'Keep exercise {$n :integer}',
  keep: 'Keep',
  use: 'Put on the page',
  difficulty: 'How hard each bar is against this groove',
  why: 'Why bar {$n :integer} is as hard as it is',
  points: '{$points :number minimumFractionDigits=1 maximumFractionDigits=1} points',
  easiest: 'easiest',
  hardest: 'hardest',
  impossible: 'Nothing can be composed from this yet',
  working: 'Composing …',
} as const;

/** Words of `room`. */
export const room = {
  leave: 'Leave the lesson room',
  next: 'Next exercise',
  previous: 'Previous exercise',
  of: '{$n :integer} of {$all :integer}',
  nextAfter: 'Next after',
  loops: '.input {$n :integer} .match $n 0 {{never}} one {{{$n} loop}} * {{{$n} loops}}',
  hint: 'Arrow keys change the exercise, space plays and stops.',
} as const;

/** Words of `pedal`. */
export const pedal = {
  title: 'Foot switch',
  ...footSwitch,
  actions: {
    next: 'Next exercise',
    previous: 'Previous exercise',
    toggle: 'Play or stop',
  },
} as const;
