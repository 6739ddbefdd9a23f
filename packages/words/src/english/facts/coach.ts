/** What the coach tells, in English. */
import type { CoachFact } from '@shedbook/coach';
import type { PlaceFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Sentences, and the clauses in them. */
export const coach = sentences<CoachFact, PlaceFact>()({
  'sore-spot': '{$limb :side} ({$voice :voice}) on {$place :say}',
  cell: '"{$cell}"',
  'cell-move': '"{$from}" to "{$to}"',
  'skill-alone': '{$cells :say} in the {$limb :side}',
  'skill-over': '{$cells :say} in the {$limb :side} with {$over :sides}',
  'skill-clapped': '{$cells :say} clapped',
  'skill-hands': '{$cells :say} as {$hands}',
  'needs-skill':
    '.input {$more :integer} .match $more 0 {{This one needs it, and nothing else that is new.}} one {{This one needs it, and {$more} more that is new.}} * {{This one needs it, and {$more} more that are new.}}',
  'again-from': 'Give this one again, from {$bpm :number}.',
  'seldom-holds': '{$skill :say} holds about {$percent :integer} times in 100. {$follows :say}',
  'adds-nothing': 'it needs nothing that was not heard before',
  'adds-groove': 'it is the groove alone, which has to roll before anything is put over it',
  'adds-count':
    'count and clap it first, since it gives the subdivision that exercise {$exercise :exercise} needs',
  'adds-clapping': 'count and clap it first, since it gives the subdivision before the sticks are taken up',
  'adds-skill': 'it adds {$skill :say}',
  'adds-skills': 'it adds {$skill :say} and {$more :integer} more',
  'begin-lesson': 'To begin with: the first exercise of "{$lesson}".',
  'begin-swing':
    'To begin with: of the swing on your desk, "{$lesson}" starts easiest, and this is its first exercise.',
  'begin-easiest':
    'To begin with: of all on your desk, "{$lesson}" starts easiest, and this is its first exercise.',
  'after-set': 'Once what is set has been played, this comes next on the sheet: {$adds :say}.',
  'next-on-sheet': 'Nothing that was heard is shaky; this comes next on the sheet: {$adds :say}.',
  'beside-next': 'Beside what is not clean yet, this comes next on the sheet: {$adds :say}.',
  'beside-nearest': 'Beside what is not clean yet, this of what is new is nearest: {$adds :say}.',
  'nearest-new': 'Nothing that was heard is shaky; of what is new, this is nearest: {$adds :say}.',
  'not-steady': 'Not steady when last played. Again, from {$bpm :number}.',
  'not-steady-there': 'Not steady when last played: listen for the {$sore :say}. Again, from {$bpm :number}.',
  'teacher-set': 'Your teacher set this.',
  'teacher-pinned': 'Your teacher pinned this.',
  'up-to': 'Up to {$bpm :number}.',
  'up-to-by': 'Up to {$bpm :number}, to be ready {$day :day}.',
  'ready-by': 'To be ready {$day :day}.',
  'teacher-aims': '{$what :say} {$aim :say}',
  'set-not-played': 'Set, and not played yet.',
  'set-not-clean': 'Set and played, but at no tempo clean {$times :integer} times yet.',
  'set-not-there': 'Clean at {$bpm :number}; it is set up to {$aimBpm :number}.',
  'set-clean': 'Clean at {$bpm :number}, as far as it was set. On towards {$aimBpm :number}.',
  'set-passed': 'You passed it at {$bpm :number}. On towards {$aimBpm :number}.',
  'done-passed': 'You passed it at {$bpm :number}, its goal. It can go.',
  'done-firm': 'It holds at {$bpm :number}, its goal. It can go.',
  'teacher-noted': '{$what :say} {$note}',
  'played-shaky': 'Last played {$day :day} and not steady then.',
  'played-firm': 'Last played {$day :day} and firm; time to see that it still is.',
  'played-learning': 'Last played {$day :day} and on its way.',
  'played-clean': 'Last played {$day :day} and clean at {$bpm :integer} on the way to {$goalBpm :number}.',
  'listen-for': '{$what :say} Listen for the {$sore :say}.',
  'new-today': 'New today: the next on the sheet. Slowly, and twice, with something else between.',
  'comes-first': 'This comes first: “{$before}” stands on it.',
  'once-more': 'Once more, after something else: see what is still there.',
  'warm-up': 'Warm up first: soft, relaxed, slower than you could. Set up so that nothing has to stretch.',
  'time-alone': 'Time alone: let it roll, and listen to the balance of the limbs.',
  'play-freely': 'The rest is yours: play what you like over it.',
  apart: 'The tempo has stood still for some days: one part of it alone, slower.',
  'apart-there':
    'The tempo has stood still for some days: one part of it alone, slower. It is the {$sore :say}.',
  'put-back': 'Now the whole again: the part goes back in its place.',
  'rest-now': 'Put the sticks down, stand up, let hands and ears rest.',
  'exercise-title': '{$name}',
  'groove-title': '{$lesson}: the groove alone',
  'break-title': 'Break',
  'no-time-today': 'No time today: everything waits, nothing is lost.',
  'no-lesson-yet': 'There is no lesson to practise from yet.',
  'taken-apart':
    '.input {$exercises :integer} .match $exercises one {{{$exercises} exercise has stood still for some days. It is taken apart, and the rest of the sheet goes on.}} * {{{$exercises} exercises have stood still for some days. They are taken apart in turn, and the rest of the sheet goes on.}}',
  'set-and-gone':
    '.input {$exercises :integer} .match $exercises one {{{$exercises} of the exercises that your teacher set is no longer in the lessons.}} * {{{$exercises} of the exercises that your teacher set are no longer in the lessons.}}',
});
