/** Why a bar is as hard as it is, in English. */
import type { ReasonFact } from '@shedbook/composer';
import type { PlaceFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for reasons. */
export const difficulty = sentences<ReasonFact, PlaceFact>()({
  'fall-alone':
    '.input {$strokes :integer} .match $strokes one {{{$strokes} stroke falls alone: on {$places :list}}} * {{{$strokes} strokes fall alone: on {$places :list}}}',
  'fall-with':
    '.input {$strokes :integer} .match $strokes one {{{$strokes} stroke falls with {$voices :voices}: on {$places :list}}} * {{{$strokes} strokes fall with {$voices :voices}: on {$places :list}}}',
  silence:
    '.input {$bars :number maximumFractionDigits=1} .match $bars 1 {{1 is silent}} * {{1 is silent in {$bars} bars}}',
  'part-alone':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} stroke alone}} * {{{$count} strokes alone}}',
  'part-foot':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} stroke with a foot only}} * {{{$count} strokes with a foot only}}',
  'part-lead':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} stroke with the lead hand}} * {{{$count} strokes with the lead hand}}',
  'part-switch':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} change of company: with the lead hand, between its strokes, silent}} * {{{$count} changes of company: with the lead hand, between its strokes, silent}}',
  'part-unison':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} stroke of two limbs together}} * {{{$count} strokes of two limbs together}}',
  'part-interlock':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} hand-over from limb to limb within a beat}} * {{{$count} hand-overs from limb to limb within a beat}}',
  'part-wnbd':
    'its strokes pull against the beat ({$count :number maximumFractionDigits=1} by their distances from it)',
  'part-lhl': '{$count :number maximumFractionDigits=1} of syncopation (rests on strong places)',
  'part-offBeatness':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} stroke far off the beat}} * {{{$count} strokes far off the beat}}',
  'part-keith':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} stroke that starts too early for its length}} * {{{$count} strokes that start too early for their length}}',
  'part-pulse': 'it says little of the pulse ({$count :number maximumFractionDigits=1} against it)',
  'part-density':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} stroke in all}} * {{{$count} strokes in all}}',
  'part-memory':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} beat that is new in a later bar}} * {{{$count} beats that are new in later bars}}',
  'part-change':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} change of cell}} * {{{$count} changes of cell}}',
  'part-speed':
    'strokes follow one another fast ({$count :number maximumFractionDigits=1}, where three at the limit of a hand are 1)',
  'part-dynamics':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} change of dynamics}} * {{{$count} changes of dynamics}}',
});
