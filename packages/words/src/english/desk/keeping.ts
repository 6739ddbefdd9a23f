/** How long recordings are kept, the journal, and the coach's switch, in English. */
import { entries } from '../journal.ts';

/** Words of `keeping`. */
export const keeping = {
  label: 'How long recordings are kept',
  always: 'until somebody erases them',
  weeks: '.input {$n :integer} .match $n one {{{$n} week}} * {{{$n} weeks}}',
  lead: 'Older ones are erased and overwritten on the disk, but for those that you keep by hand. Students see how long theirs stay.',
  due: '.input {$n :integer} .match $n one {{{$n} recording is older and goes within the hour.}} * {{{$n} recordings are older and go within the hour.}}',
  saved: 'Set. Students see it on their next visit.',
  keepThis: 'Keep this recording',
  goes: 'else it is erased on {$day}',
} as const;

/** Words of `journal`. */
export const journal = {
  title: 'Journal',
  lead: 'Who did what, and when, for a year. Nothing of what was said, played or written is in it.',
  more: 'Show more',
  entries,
} as const;

/** Words of `coachSwitch`. */
export const coachSwitch = {
  title: 'The coach',
  label: 'What the coach proposes to {$name}',
  states: { on: 'proposes what comes next', paused: 'is paused', off: 'is off' },
  until: 'Proposes again from',
  speaks: 'What you set for {$name} comes first; the coach fills the rest of the minutes and says why.',
  silent: '{$name} has what you set and nothing beside it; nothing is proposed to you either.',
} as const;
