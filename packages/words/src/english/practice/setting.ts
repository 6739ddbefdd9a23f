/** How to practise, in English. */
import { SET_UP_NAMES } from '../set-ups.ts';

/** Words of `setting`. */
export const setting = {
  title: 'How to practise',
  open: 'More',
  done: 'Done',
  form: 'Form',
  forms: {
    loop: 'Loop',
    'four and two': 'Four and two',
    time: 'Time',
    example: 'Example',
  },
  buildUp: 'Layer by layer',
  trade: 'Trade {$bars :integer}s',
  layers: 'What plays',
  layer: '{$n :integer}. {$names}',
  pattern: 'exercise',
  mine: 'I play',
  mineHint: 'What you play yourself falls silent in the recording.',
  limb: '{$limb}: {$what}',
  click: 'Click',
  clicks: {
    all: 'All beats',
    bar: 'One a bar',
    off: 'Off',
  },
  clickOn: 'On {$beats}',
  and: 'and',
  gap: 'Gap bars',
  gaps: '.input {$off :integer} .match $off 0 {{None}} * {{{$on :integer} on, {$off} off}}',
  countAloud: 'Count aloud over the click',
  guide: 'Guide inside the beat',
  guides: {
    1: 'None',
    2: 'Eighths',
    3: 'Triplets',
    4: 'Sixteenths',
  },
  staff: 'Notes',
  staffs: {
    own: 'The exercise',
    full: 'Every limb',
  },
  setUp: 'Set-up',
  setUps: SET_UP_NAMES,
} as const;

/** Words of `ladder`. */
export const ladder = {
  title: 'Tempo ladder',
  on: 'Climb the ladder',
  clean: 'That was clean',
  stumbled: 'I stumbled',
  progress:
    '.input {$of :integer} .match $of one {{{$clean :integer} of {$of} clean loop at {$bpm :number}}} * {{{$clean :integer} of {$of} clean loops at {$bpm :number}}}',
  up: 'Up to {$bpm :number} from the next round.',
  down: 'Down to {$bpm :number} from the next round.',
  lowest: '{$bpm :number} is the lowest rung: staying here.',
  stay: 'Staying at {$bpm :number}.',
  more: '.input {$n :integer} .match $n one {{One more clean loop.}} * {{{$n} more clean loops.}}',
  unheard: 'That round was not heard.',
  answers: {
    'no round yet': 'Play a round to its end, then say how it was.',
    'told already': 'That round is told. The next one counts when it has gone by.',
    waits: 'Noted: it counts when the round is over.',
    noted: 'Noted. The ladder stays where it is.',
  },
  arrived: '{$bpm :number}: that is the goal. Well played.',
} as const;
