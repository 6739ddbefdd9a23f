/** One lesson, its heading and what happens to it, in English. */
import type { FeelName } from '@shedbook/core';

/** Words of `lesson`. */
export const lesson = {
  backToDesk: 'All lessons',
  opening: 'Opening the lesson …',
  missing: 'This lesson is not here. It may have been deleted.',
  undo: 'Undo',
  redo: 'Redo',
  kept: 'Saved',
  keeping: 'Saving …',
  unreachable: 'Not saved yet: the server does not answer. Trying again …',
  refused: 'The server refused this change.',
  conflict: 'Changed in another window',
  freshened: 'Changed in another window; this is the new text.',
  views: {
    page: 'Page',
    groove: 'Groove',
    compose: 'Compose',
    text: 'Text',
    print: 'Print',
    room: 'Lesson room',
  },
  viewsLabel: 'Views of the lesson',
  brokenText: 'The text has problems, so this shows the lesson as it last could be read.',
  mend: 'Mend the text',
  nothingReadable: 'The text cannot be read as a lesson yet.',
} as const;

/** Words of `conflict`. */
export const conflict = {
  title: 'Two versions of this lesson',
  lead: 'It was changed in another window while this one had changes of its own. Nothing is lost: choose which one goes on.',
  mine: 'This window',
  theirs: 'The other window',
  keepMine: 'Go on with this one',
  keepTheirs: 'Go on with the other one',
  keepBoth: 'Keep both as two lessons',
  changedLine: 'differs',
  leftOut: '.input {$n :integer} .match $n one {{{$n} line the same}} * {{{$n} lines the same}}',
} as const;

/** Words of `heading`. */
export const heading = {
  title: 'Title of the lesson',
  by: 'Written by',
  meter: 'Meter',
  feel: 'Feel',
  tempo: 'Tempo',
  start: 'Start',
  goal: 'Goal',
  step: 'Step',
  bpm: '{$bpm :number} bpm',
  tempi: '{$from :number} to {$to :number}',
  edit: 'Change meter, feel and tempo',
  feels: {
    even: 'straight',
    triplet: 'triplet swing (2:1)',
    'by tempo': 'by tempo',
    ratio: 'ratio',
  } satisfies Readonly<Record<FeelName | 'ratio', string>>,
  playedWith: 'Played with',
  beaters: { sticks: 'sticks', brushes: 'brushes' },
  ratio: 'Ratio, long to short',
  changeTitle: 'What becomes of what is written',
  change: 'Change it',
  cancel: 'Leave it as it is',
  onlyFeel: 'Only the feel',
  rewrite: 'Write them in two',
  otherMeter: 'Another meter',
  setUp: 'Set-up',
  'right-handed': 'right-handed',
  'left-handed': 'left-handed',
  comping: 'exercises for the {$voice}',
  close: 'Done',
} as const;
