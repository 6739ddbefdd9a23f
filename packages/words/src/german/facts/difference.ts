/** Why one bar is harder than another, in German. */
import type { ComparisonFact, DifferenceFact, WorthFact } from '@shedbook/composer';
import type { PlaceFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for differences, and the sentence that they stand in. */
export const difference = sentences<DifferenceFact | WorthFact | ComparisonFact, PlaceFact>()({
  'more-alone':
    '.input {$strokes :integer} .match $strokes one {{ein Schlag mehr fällt allein (auf {$places :list})}} * {{{$strokes} Schläge mehr fallen allein (auf {$places :list})}}',
  'fewer-alone':
    '.input {$strokes :integer} .match $strokes one {{ein Schlag weniger fällt allein (auf {$places :list})}} * {{{$strokes} Schläge weniger fallen allein (auf {$places :list})}}',
  'moved-alone':
    '.input {$strokes :integer} .match $strokes one {{ein Schlag fällt allein auf {$come :list} statt auf {$gone :list}}} * {{{$strokes} Schläge fallen allein auf {$come :list} statt auf {$gone :list}}}',
  'more-foot':
    '.input {$strokes :integer} .match $strokes one {{ein Schlag mehr fällt nur mit einem Fuß zusammen (auf {$places :list})}} * {{{$strokes} Schläge mehr fallen nur mit einem Fuß zusammen (auf {$places :list})}}',
  'fewer-foot':
    '.input {$strokes :integer} .match $strokes one {{ein Schlag weniger fällt nur mit einem Fuß zusammen (auf {$places :list})}} * {{{$strokes} Schläge weniger fallen nur mit einem Fuß zusammen (auf {$places :list})}}',
  'moved-foot':
    '.input {$strokes :integer} .match $strokes one {{ein Schlag fällt nur mit einem Fuß zusammen auf {$come :list} statt auf {$gone :list}}} * {{{$strokes} Schläge fallen nur mit einem Fuß zusammen auf {$come :list} statt auf {$gone :list}}}',
  'more-lead':
    '.input {$strokes :integer} .match $strokes one {{ein Schlag mehr fällt mit der führenden Hand zusammen (auf {$places :list})}} * {{{$strokes} Schläge mehr fallen mit der führenden Hand zusammen (auf {$places :list})}}',
  'fewer-lead':
    '.input {$strokes :integer} .match $strokes one {{ein Schlag weniger fällt mit der führenden Hand zusammen (auf {$places :list})}} * {{{$strokes} Schläge weniger fallen mit der führenden Hand zusammen (auf {$places :list})}}',
  'moved-lead':
    '.input {$strokes :integer} .match $strokes one {{ein Schlag fällt mit der führenden Hand zusammen auf {$come :list} statt auf {$gone :list}}} * {{{$strokes} Schläge fallen mit der führenden Hand zusammen auf {$come :list} statt auf {$gone :list}}}',
  'more-of-silence': 'die 1 ist still',
  'less-of-silence': 'die 1 wird gespielt',
  'more-of-unison': 'Hände und Füße schlagen öfter zusammen',
  'less-of-unison': 'Hände und Füße schlagen seltener zusammen',
  'more-of-interlock': 'es geht öfter von einer Hand oder einem Fuß zum anderen',
  'less-of-interlock': 'es geht seltener von einer Hand oder einem Fuß zum anderen',
  'more-of-memory': 'spätere Takte bringen mehr Neues',
  'less-of-memory': 'spätere Takte bringen weniger Neues',
  'more-of-switch': 'die Begleitung wechselt öfter',
  'less-of-switch': 'die Begleitung wechselt seltener',
  'more-of-wnbd': 'die Schläge ziehen stärker gegen die Zählzeit',
  'less-of-wnbd': 'die Schläge liegen näher an der Zählzeit',
  'more-of-lhl': 'mehr schwere Stellen sind nach leichteren Schlägen still',
  'less-of-lhl': 'weniger schwere Stellen sind nach leichteren Schlägen still',
  'more-of-offBeatness': 'mehr Schläge liegen weit neben der Zählzeit',
  'less-of-offBeatness': 'weniger Schläge liegen weit neben der Zählzeit',
  'more-of-keith': 'mehr Schläge kommen für ihre Länge zu früh',
  'less-of-keith': 'weniger Schläge kommen für ihre Länge zu früh',
  'more-of-pulse': 'der Puls ist weniger zu hören',
  'less-of-pulse': 'der Puls ist besser zu hören',
  'more-of-density': 'es sind mehr Schläge',
  'less-of-density': 'es sind weniger Schläge',
  'more-of-change': 'die Zelle wechselt öfter',
  'less-of-change': 'die Zelle wechselt seltener',
  'more-of-speed': 'die Schläge folgen schneller aufeinander',
  'less-of-speed': 'die Schläge folgen weniger schnell aufeinander',
  'more-of-dynamics': 'die Lautstärke wechselt öfter',
  'less-of-dynamics': 'die Lautstärke wechselt seltener',
  'worth-more': '{$what :say} (+{$points :number minimumFractionDigits=1 maximumFractionDigits=1})',
  'worth-less': '{$what :say} (−{$points :number minimumFractionDigits=1 maximumFractionDigits=1})',
  'as-hard':
    '{$number :exercise} ist so schwer wie {$other :exercise}: Unterschied {$points :number minimumFractionDigits=1 maximumFractionDigits=1}.',
  harder: '{$number :exercise} ist schwerer als {$other :exercise}: {$why :list}.',
  easier: '{$number :exercise} ist leichter als {$other :exercise}: {$why :list}.',
  'harder-but':
    '{$number :exercise} ist schwerer als {$other :exercise}: {$why :list}; leichter macht: {$but :list}.',
  'easier-but':
    '{$number :exercise} ist leichter als {$other :exercise}: {$why :list}; schwerer macht: {$but :list}.',
});
