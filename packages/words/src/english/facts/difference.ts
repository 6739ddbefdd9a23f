/** Why one bar is harder than another, in English. */
import type { ComparisonFact, DifferenceFact, WorthFact } from '@shedbook/composer';
import type { PlaceFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for differences, and the sentence that they stand in. */
export const difference = sentences<DifferenceFact | WorthFact | ComparisonFact, PlaceFact>()({
  'more-alone':
    '.input {$strokes :integer} .match $strokes one {{one more stroke falls alone ({$places :list})}} * {{{$strokes} more strokes fall alone ({$places :list})}}',
  'fewer-alone':
    '.input {$strokes :integer} .match $strokes one {{one stroke fewer falls alone ({$places :list})}} * {{{$strokes} fewer strokes fall alone ({$places :list})}}',
  'moved-alone':
    '.input {$strokes :integer} .match $strokes one {{{$come :list} falls alone instead of {$gone :list}}} * {{{$come :list} fall alone instead of {$gone :list}}}',
  'more-foot':
    '.input {$strokes :integer} .match $strokes one {{one more stroke falls with a foot only ({$places :list})}} * {{{$strokes} more strokes fall with a foot only ({$places :list})}}',
  'fewer-foot':
    '.input {$strokes :integer} .match $strokes one {{one stroke fewer falls with a foot only ({$places :list})}} * {{{$strokes} fewer strokes fall with a foot only ({$places :list})}}',
  'moved-foot':
    '.input {$strokes :integer} .match $strokes one {{{$come :list} falls with a foot only instead of {$gone :list}}} * {{{$come :list} fall with a foot only instead of {$gone :list}}}',
  'more-lead':
    '.input {$strokes :integer} .match $strokes one {{one more stroke falls with the lead hand ({$places :list})}} * {{{$strokes} more strokes fall with the lead hand ({$places :list})}}',
  'fewer-lead':
    '.input {$strokes :integer} .match $strokes one {{one stroke fewer falls with the lead hand ({$places :list})}} * {{{$strokes} fewer strokes fall with the lead hand ({$places :list})}}',
  'moved-lead':
    '.input {$strokes :integer} .match $strokes one {{{$come :list} falls with the lead hand instead of {$gone :list}}} * {{{$come :list} fall with the lead hand instead of {$gone :list}}}',
  'more-of-silence': '1 is silent',
  'less-of-silence': '1 is played',
  'more-of-unison': 'limbs strike together more often',
  'less-of-unison': 'limbs strike together less often',
  'more-of-interlock': 'it is handed from limb to limb more often',
  'less-of-interlock': 'it is handed from limb to limb less often',
  'more-of-memory': 'later bars bring more that is new',
  'less-of-memory': 'later bars bring less that is new',
  'more-of-switch': 'it changes company more often',
  'less-of-switch': 'it changes company less often',
  'more-of-wnbd': 'its strokes pull harder against the beat',
  'less-of-wnbd': 'its strokes lie closer to the beat',
  'more-of-lhl': 'more strong places are silent after weaker strokes',
  'less-of-lhl': 'fewer strong places are silent after weaker strokes',
  'more-of-offBeatness': 'more strokes lie far off the beat',
  'less-of-offBeatness': 'fewer strokes lie far off the beat',
  'more-of-keith': 'more strokes come early for their length',
  'less-of-keith': 'fewer strokes come early for their length',
  'more-of-pulse': 'it says less of the pulse',
  'less-of-pulse': 'it says more of the pulse',
  'more-of-density': 'it has more strokes',
  'less-of-density': 'it has fewer strokes',
  'more-of-change': 'the cell changes more often',
  'less-of-change': 'the cell changes less often',
  'more-of-speed': 'strokes follow one another faster',
  'less-of-speed': 'strokes follow one another less fast',
  'more-of-dynamics': 'loudness changes more often',
  'less-of-dynamics': 'loudness changes less often',
  'worth-more': '{$what :say} (+{$points :number minimumFractionDigits=1 maximumFractionDigits=1})',
  'worth-less': '{$what :say} (−{$points :number minimumFractionDigits=1 maximumFractionDigits=1})',
  'as-hard':
    '{$number :exercise} is as hard as {$other :exercise}: {$points :number minimumFractionDigits=1 maximumFractionDigits=1} apart.',
  harder: '{$number :exercise} is harder than {$other :exercise} because {$why :list}.',
  easier: '{$number :exercise} is easier than {$other :exercise} because {$why :list}.',
  'harder-but':
    '{$number :exercise} is harder than {$other :exercise} because {$why :list}; what makes it easier: {$but :list}.',
  'easier-but':
    '{$number :exercise} is easier than {$other :exercise} because {$why :list}; what makes it harder: {$but :list}.',
});
