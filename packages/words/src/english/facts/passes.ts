/** What a second pass made of an exercise and what a variation changes, in English. */
import type { PassFact, PassNoteFact, PassPartFact, VariationFact } from '@shedbook/composer';
import type { PlaceFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Names of what was done, and sentences on what could not be. */
export const passes = sentences<PassFact | PassNoteFact | PassPartFact | VariationFact, PlaceFact>()({
  'share-beats-below': 'On the beat {$lower :voice}, else {$upper :voice}',
  'share-long-below': 'Long strokes {$lower :voice}, short ones {$upper :voice}',
  'share-by-turns': '{$upper :voice} and {$lower :voice} by turns',
  'share-accents-below': 'Accents {$lower :voice}, the rest {$upper :voice}',
  'kit-by-beat': 'Each beat on another drum: {$voices :voices}',
  'kit-by-stroke': 'Each stroke on another drum: {$voices :voices}',
  'kit-down-the-bar': 'Down the kit through the bar: {$voices :voices}',
  'kit-accents-on-toms': 'Accents on the toms: {$voices :voices}',
  'accents-on-the-beat': 'Accents on the beat: {$places :list}',
  'accents-off-the-beat': 'Accents off the beat: {$places :list}',
  'accents-first-of-group': 'Accent on the first of each group: {$places :list}',
  'accents-last-of-group': 'Accent on the last of each group: {$places :list}',
  'accents-every-third': 'Every third stroke accented: {$places :list}',
  'accents-free': 'Accents on {$places :list}',
  'hands-by-turns': 'Hands by turns: {$hands}',
  'hands-by-place': 'Each place its own hand: {$hands}',
  'hands-doubles': 'Two strokes a hand: {$hands}',
  'hands-paradiddle': 'Paradiddle: {$hands}',
  fill: '.input {$beats :integer} .match $beats one {{{$bars :integer} bars that end in a fill of {$beats} beat on {$voices :voices}}} * {{{$bars :integer} bars that end in a fill of {$beats} beats on {$voices :voices}}}',
  'of-share': 'Two voices',
  'of-kit': 'Over the kit',
  'of-accents': 'Accents',
  'of-hands': 'Hands',
  'of-fill': 'Fill',
  'pass-of': '{$pass :say}: {$note :say}',
  'pass-no-stroke': 'There is no stroke that this would change.',
  'pass-every-stroke': 'Every stroke would go to the other voice: nothing would be left to share.',
  'pass-no-hand': 'The exercise is not played by a hand.',
  'pass-too-fast':
    'At the goal tempo the hands cannot keep up, or the groove needs both: lower the goal, or take fewer strokes.',
  'pass-otherwise':
    '.input {$strokes :integer} .match $strokes one {{{$strokes} stroke goes elsewhere: its limb is busy there, or could not keep up at the goal tempo.}} * {{{$strokes} strokes go elsewhere: their limb is busy there, or could not keep up at the goal tempo.}}',
  'variation-more': 'with {$place :say}',
  'variation-fewer': 'without {$place :say}',
  'variation-slot-later': 'all of it a place later',
  'variation-slot-earlier': 'all of it a place earlier',
  'variation-beat-later': 'all of it a beat later',
  'variation-backwards': 'backwards from 1',
  'variation-exchanged': 'strokes and silence exchanged',
});
