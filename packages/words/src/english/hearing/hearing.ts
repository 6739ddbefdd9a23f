/** Hearing oneself, in English. */
import { LEVEL_NAMES } from '../levels.ts';

/** Its single texts. */
export const page = {
  close: 'Done',
} as const;

/** Words of `hearing`. */
export const hearing = {
  title: 'Hear yourself',
  lead: 'Play along, and each stroke is shown where it fell: left of its note when early, right when late. After every round it says what to listen for.',
  privacy:
    'What is heard stays on this device. For the microphone, the browser will ask whether this page may use it.',
  headphones: 'Wear headphones for the recording: a loudspeaker would be heard along with you.',
  microphone: 'Use the microphone',
  kit: 'Use an electronic kit',
  lineCheck: 'Teach it your kit',
  oldLineCheck:
    'The line check “{$name}” was made with an earlier ear and is not used. Teach it your kit again.',
  stop: 'Stop listening',
  cautions: {
    changed:
      'This device changes what its microphone hears, as for a telephone call: takes may pump or lose cymbals. A microphone that you plug in, or another browser, may leave it alone.',
    'two devices':
      'You hear by one device and are heard by another. Check the timing once with these two together.',
  },
  opening: {
    microphone: 'Waiting for the microphone …',
    kit: 'Looking for a kit …',
  },
  on: {
    microphone: 'Listening with the microphone.',
    kit: 'Listening to the kit.',
  },
  refusals: {
    microphone: {
      denied:
        'The browser was not allowed to use the microphone. Allow it in the settings of this page and try again.',
      missing: 'No microphone was found. Plug one in and try again.',
      busy: 'The microphone could not be opened; perhaps another program is using it.',
      'no consent':
        'Nothing is recorded here yet: a parent or guardian has to agree first. Ask them to tell your teacher.',
      'not here': 'This browser gives no microphone to this page. An address that begins with https helps.',
      none: 'No microphone was found. Plug one in and try again.',
      broken: 'Listening broke off. Switch it on again; if it breaks off again, open the page anew.',
    },
    kit: {
      'no consent': 'Nothing is recorded here yet.',
      denied: 'The browser was not allowed to use MIDI. Allow it in the settings of this page and try again.',
      missing: 'No kit was found. Plug it in, switch it on and try again.',
      busy: 'The kit could not be opened; perhaps another program is using it.',
      'not here': 'This browser knows no MIDI. Another one may, or use the microphone.',
      none: 'No kit was found. Plug it in, switch it on and try again.',
      broken: 'Listening broke off. Switch it on again; if it breaks off again, open the page anew.',
    },
  },
  goesOn: 'Everything else goes on without it.',
  levels: {
    silent: 'Nothing is heard yet.',
    soft: 'Very soft: move the device nearer.',
    good: 'Heard well.',
    loud: 'Too loud: move the device away.',
  },
  waiting: 'Press play; listening begins with the first bar.',
  picture: 'What was heard',
  legend:
    'Drawn {$times :integer} times as early or late as it was. A ring is a stroke that was not heard, a plus one too many. Dotted marks and question marks are not sure. When a bar is over, its marks are put right.',
  level: 'How strict',
  strictness: LEVEL_NAMES,
  handsFree: 'Go on by itself',
  handsFreeHint:
    '.input {$loops :integer} .match $loops one {{After {$loops} clean round the next exercise comes.}} * {{After {$loops} clean rounds the next exercise comes.}}',
  loops: 'Clean rounds before the next exercise',
  stay: 'Stay here',
  goOn: 'Go on again',
  said: {
    next: 'Next: exercise {$n :exercise}.',
    staying: 'Staying until you say go on.',
    held: 'Comfortable. Staying, as you asked.',
    'going on': 'Going on when this one is comfortable.',
    more: '.input {$n :integer} .match $n one {{One more clean round, then the next exercise.}} * {{{$n} more clean rounds, then the next exercise.}}',
    'all done': 'That was the last exercise.',
  },
} as const;

/** Words of `after`. */
export const after = {
  title: 'After the round',
  verdicts: {
    clean: 'Clean.',
    nearly: 'Nearly there.',
    'not yet': 'Not yet.',
    'not judged': 'Not judged.',
  },
  figures: 'The figures',
  ask: 'How was it?',
  short: {
    clean: 'clean',
    nearly: 'nearly',
    'not yet': 'not yet',
    'not judged': 'not judged',
  },
  round: 'Round {$n :integer} at {$bpm :number}: {$verdict}',
  rounds: 'The last rounds',
  nothing: 'The first round has not been played to its end yet.',
} as const;

/** Words of `latency`. */
export const latency = {
  title: 'Timing check',
  known: 'Sound takes {$ms :number} ms there and back; that is taken off.',
  guessed: 'Not checked yet: early and late are only roughly right.',
  fromPlaying:
    'Not checked, but found from your first rounds: about {$ms :number} ms, taken off. Early or late as a whole is no fault.',
  check: 'Check the timing',
  again: 'Check again',
  leadMicrophone:
    'Ten clicks will sound, and the microphone listens for them. Lay the headphones on the microphone, or turn the loudspeaker up, and keep quiet.',
  leadKit: 'Sixteen clicks will sound. Play along with them on one pad, as closely as you can.',
  start: 'Start the check',
  running: 'Checking …',
  result:
    '{$ms :number} ms there and back, give or take {$spread :number} ms; {$heard :integer} of {$played :integer} clicks heard.',
  failed: 'Too few clicks were heard. Make them louder, or the room quieter, and try again.',
  hand: 'Or by hand, in milliseconds',
  keep: 'Keep',
  kept: 'Kept for these devices.',
} as const;

/** Words of `pad`. */
export const pad = {
  title: 'Setting up the pad',
  surface: 'I play on',
  surfaces: {
    kit: 'Drum set',
    pad: 'Pad or table',
  },
  lead: 'Play the rhythm of the exercise on one surface; the page plays the rest. Any short tap counts. Wear headphones, so that only you are heard.',
  clapLead:
    'Clap, and count aloud if you like. Any short clap or tap counts. Wear headphones, so that only you are heard.',
  midi: 'Use a MIDI pad: any key',
  steps: {
    place: 'Lay the device on the same table, a hand away from where you tap, its microphone towards you.',
    loud: 'Tap four times, as loud as you will play, with a little pause between.',
    timing: 'Now the timing: lay the headphones on the microphone and keep quiet while ten clicks sound.',
    ready: 'Ready. Headphones on, and press play.',
  },
  taps: '{$n :integer} of {$of :integer} heard well',
  tooLoud: 'That was too loud: move the device a little away.',
  checking: 'Listening to the clicks …',
  notHeard: 'Too few clicks were heard. Make them louder and try again, or go on without.',
  lies: 'It lies there',
  click: 'Play the clicks',
  skip: 'Go on without',
} as const;
