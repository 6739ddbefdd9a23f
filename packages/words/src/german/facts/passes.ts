/** What a second pass made of an exercise and what a variation changes, in German. */
import type { PassFact, PassNoteFact, PassPartFact, VariationFact } from '@shedbook/composer';
import type { PlaceFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Names of what was done, and sentences on what could not be. */
export const passes = sentences<PassFact | PassNoteFact | PassPartFact | VariationFact, PlaceFact>()({
  'share-beats-below': 'Auf dem Schlag {$lower :voice}, sonst {$upper :voice}',
  'share-long-below': 'Lange Schläge {$lower :voice}, kurze {$upper :voice}',
  'share-by-turns': '{$upper :voice} und {$lower :voice} im Wechsel',
  'share-accents-below': 'Akzente {$lower :voice}, alles andere {$upper :voice}',
  'kit-by-beat': 'Mit jedem Schlag eine andere Trommel: {$voices :voices}',
  'kit-by-stroke': 'Mit jedem Ton eine andere Trommel: {$voices :voices}',
  'kit-down-the-bar': 'Im Lauf des Taktes die Trommeln hinab: {$voices :voices}',
  'kit-accents-on-toms': 'Akzente auf den Toms: {$voices :voices}',
  'accents-on-the-beat': 'Akzente auf dem Schlag: {$places :list}',
  'accents-off-the-beat': 'Akzente neben dem Schlag: {$places :list}',
  'accents-first-of-group': 'Akzent auf dem Ersten jeder Gruppe: {$places :list}',
  'accents-last-of-group': 'Akzent auf dem Letzten jeder Gruppe: {$places :list}',
  'accents-every-third': 'Jeder dritte Ton betont: {$places :list}',
  'accents-free': 'Akzente auf {$places :list}',
  'hands-by-turns': 'Hände im Wechsel: {$hands}',
  'hands-by-place': 'Jede Stelle hat ihre Hand: {$hands}',
  'hands-doubles': 'Zwei Schläge jede Hand: {$hands}',
  'hands-paradiddle': 'Als Paradiddle: {$hands}',
  fill: '.input {$beats :integer} .match $beats one {{{$bars :integer} Takte, am Ende ein Fill von {$beats} Schlag: {$voices :voices}}} * {{{$bars :integer} Takte, am Ende ein Fill von {$beats} Schlägen: {$voices :voices}}}',
  'of-share': 'Zwei Stimmen',
  'of-kit': 'Über die Trommeln',
  'of-accents': 'Akzente',
  'of-hands': 'Hände',
  'of-fill': 'Fill',
  'pass-of': '{$pass :say}: {$note :say}',
  'pass-no-stroke': 'Kein Ton würde sich dadurch ändern.',
  'pass-every-stroke': 'Alle Töne kämen auf die andere Stimme: es bliebe nichts zu teilen.',
  'pass-no-hand': 'Die Übung wird nicht mit der Hand gespielt.',
  'pass-too-fast':
    'Im Zieltempo kommen die Hände nicht mit, oder der Groove braucht beide: das Ziel senken oder weniger Töne nehmen.',
  'pass-otherwise':
    '.input {$strokes :integer} .match $strokes one {{{$strokes} Ton geht anderswohin: Hand oder Fuß ist dort beschäftigt oder käme im Zieltempo nicht mit.}} * {{{$strokes} Töne gehen anderswohin: Hand oder Fuß ist dort beschäftigt oder käme im Zieltempo nicht mit.}}',
  'variation-more': 'mit {$place :say}',
  'variation-fewer': 'ohne {$place :say}',
  'variation-slot-later': 'alles eine Stelle später',
  'variation-slot-earlier': 'alles eine Stelle früher',
  'variation-beat-later': 'alles einen Schlag später',
  'variation-backwards': 'rückwärts ab 1',
  'variation-exchanged': 'Schläge und Stille vertauscht',
});
