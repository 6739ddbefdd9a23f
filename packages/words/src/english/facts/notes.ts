/** What a composed page could not have, in English. */
import type { MoveFact, NoteFact } from '@shedbook/composer';
import { sentences } from '../../facts/sentences.ts';

/** Sentences on a composed page. */
export const notes = sentences<NoteFact | MoveFact>()({
  move: '{$from} to {$to}',
  'strange-cell': 'The limits name the cell "{$cell}", which is not in the vocabulary.',
  'strange-beat': 'The limits name beat {$beat}, but a bar of {$meter} has {$beats :integer}.',
  'no-vocabulary': 'The vocabulary is empty: add cells such as "..x" to it.',
  'no-bar-left':
    'The limits leave no bar: widen "limits" under "compose", lower the goal tempo, or add cells.',
  'few-exercises':
    '.input {$asked :integer} .match $asked one {{{$asked} exercise asked for, but the vocabulary and its limits leave only {$left :integer} different.}} * {{{$asked} exercises asked for, but the vocabulary and its limits leave only {$left :integer} different.}}',
  'missed-moves': 'Moves not on the page: {$moves :list type=series}.',
  'too-many-moves':
    '.input {$exercises :integer} .match $exercises one {{Moves not on the page: {$moves :list type=series}; all of them need at least {$exercises} exercise.}} * {{Moves not on the page: {$moves :list type=series}; all of them need at least {$exercises} exercises.}}',
  'no-themes':
    'There are so many moves between cells that every line is needed for them and lines have no figure in common; from {$exercises :integer} exercises on they have.',
  'easier-than-before':
    'Exercise {$exercise :exercise} is easier than {$before :exercise}: kept exercises stand there as they did.',
  'fast-pairs':
    'At the goal tempo two strokes come as fast as {$rate :number maximumFractionDigits=1} a second in {$exercises :list}; the fastest that is known of one limb is {$published :number maximumFractionDigits=1}: share them between two limbs, or lower the goal.',
  'fast-doubles':
    'At the goal tempo two strokes come as fast as {$rate :number maximumFractionDigits=1} a second in {$exercises :list}, faster than one limb keeps up ({$published :number maximumFractionDigits=1}): play them as a double stroke.',
  'fast-runs':
    'At the goal tempo three strokes in a row come as fast as {$rate :number maximumFractionDigits=1} a second in {$exercises :list}; one limb keeps up {$published :number maximumFractionDigits=1} at most: share them between two limbs, or lower the goal.',
  'cells-too-fast':
    'Left out, since one limb keeps up {$rate :number maximumFractionDigits=1} strokes a second, two in a row somewhat faster, at the goal tempo: {$cells :list}. Lower the goal, or raise "handSpeed" under "limits".',
  'moves-too-fast':
    'Moves left out, since one limb keeps up {$rate :number maximumFractionDigits=1} strokes a second, two in a row somewhat faster, at the goal tempo: {$moves :list type=series}. Lower the goal, share the rhythm between two limbs, or raise "handSpeed" under "limits".',
  'moves-for-later':
    '.input {$moves :integer} .match $moves one {{{$moves} move between the two voices is left for a later page.}} * {{{$moves} moves between the two voices are left for later pages.}}',
  'large-step':
    'The largest step in difficulty is {$step :number minimumFractionDigits=1 maximumFractionDigits=1}, above {$bound :number minimumFractionDigits=1 maximumFractionDigits=1}.',
});
