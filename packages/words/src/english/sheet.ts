/** What a printed sheet says, and what is read out of it, in English. */

/** The names of the forms that every lesson has, as they stand within a sentence. */
export const forms = {
  loop: 'loop',
  'four and two': 'four and two',
  time: 'time',
} as const;

/** The messages. */
export const sheet = {
  groove: 'Groove',
  buildUp: 'Build it up',
  feathered: 'feathered',
  part: '{$voice}, {$loudness}',
  exercisePart: 'the exercise, {$loudness}',
  goal: 'goal {$bpm :number}',
  straight: 'straight',
  swing: 'swing',
  swingByTempo: 'swing by tempo',
  swingOf: 'swing {$ratio :number maximumFractionDigits=4}:1',
  swingOfSixteenths: 'swing {$ratio :number maximumFractionDigits=4}:1 on sixteenths',
  leftHanded: 'left-handed',
  playedWith: { sticks: 'sticks', brushes: 'brushes' },
  key: {
    accent: 'accent',
    ghost: 'ghost note',
    flam: 'flam',
    drag: 'drag',
    buzz: 'buzz',
    sweep: 'sweep of the brush',
    bell: 'bell of the ride',
    splash: 'splash with the foot',
  },
  fill: 'Fill',
  fillWithout: 'Fill, without {$voices}',
  without: 'without {$voices}',
  contents: 'Contents',
  keyToNotation: 'Key to the notation',
  index: 'Index by voice and rhythm',
  rhythms: {
    beats: 'beats',
    quarters: 'quarters',
    eighths: 'eighths',
    triplets: 'triplets',
    sixteenths: 'sixteenths',
    sextuplets: 'sextuplets',
    'thirty-seconds': 'thirty-seconds',
    duplets: 'duplets',
    quadruplets: 'quadruplets',
    quintuplets: 'quintuplets',
    septuplets: 'septuplets',
  },
  playTimes: 'play {$times :integer} times',
  repeated:
    '.input {$times :integer} .match $times 2 {{Bars {$bars} are played twice.}} * {{Bars {$bars} are played {$times} times.}}',
  ending: 'Ending of time {$times}: bars {$bars}.',
  inExercises: '{$voice} (exercises)',
  hands: 'right, left hand',
  manner: {
    accent: 'accent',
    ghost: 'ghost',
    flam: 'flam',
    drag: 'drag',
    buzz: 'buzz',
    sweep: 'sweep',
    bell: 'bell',
    splash: 'splash',
  },
  nothingPlayed: 'Nothing is played.',
  bar: 'Bar {$bar :integer}. {$text}',
  exercise: 'Exercise {$number :integer}',
  exerciseNamed: 'Exercise {$number :integer}: {$name}',
  fromBar: '{$exercise}, from bar {$bar :integer}',
  page: '{$title}, page {$page :integer} of {$pages :integer}',
} as const;

/** The parts of the sentence that tells a form. */
export const form = {
  pattern:
    '.input {$bars :integer} .match $bars one {{{$bars} bar of the pattern}} * {{{$bars} bars of the pattern}}',
  time: '.input {$bars :integer} .match $bars one {{{$bars} bar of time}} * {{{$bars} bars of time}}',
  rest: '.input {$bars :integer} .match $bars one {{{$bars} bar of rest}} * {{{$bars} bars of rest}}',
  ending: '{$section}, ending on {$strokes}',
  lastEnding: '{$section}, the last ending on {$strokes}',
  restOn: 'a rest on {$beat :integer}',
  strokesOn: '{$voices} on {$places :list}',
  beat: '{$beat :integer}',
  slot: 'the “{$syllable :syllable}” of {$beat :integer}',
  middleTriplet: 'the middle triplet of {$beat :integer}',
  lastTriplet: 'the last triplet of {$beat :integer}',
  next: '{$before}; then {$section}',
  whole:
    '.input {$times :integer} .match $times 1 {{{$sections}.}} 2 {{{$sections}; all of it twice.}} * {{{$sections}; all of it {$times} times.}}',
} as const;
