/** What a change of meter or feel does to a lesson, in German. */
import type { ChangeFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Sentences for what is told before anything changes. */
export const changes = sentences<ChangeFact>()({
  'strokes-without-place':
    '.input {$strokes :integer} .match $strokes one {{{$strokes} Schlag hat keinen Platz und fällt weg: Übung {$exercises :list}.}} * {{{$strokes} Schläge haben keinen Platz und fallen weg: Übung {$exercises :list}.}}',
  'strokes-moved':
    '.input {$strokes :integer} .match $strokes one {{{$strokes} Schlag rückt auf die Stelle davor: Übung {$exercises :list}.}} * {{{$strokes} Schläge rücken auf die Stelle davor: Übung {$exercises :list}.}}',
  'groove-loses-beats':
    '.input {$beats :integer} .match $beats one {{Der Groove verliert seine letzte Zählzeit.}} * {{Der Groove verliert seine letzten {$beats} Zählzeiten.}}',
  'groove-loses-strokes':
    '.input {$strokes :integer} .match $strokes one {{{$strokes} Schlag des Grooves fällt weg: Dieselbe Hand oder derselbe Fuß hätte sonst zwei zugleich.}} * {{{$strokes} Schläge des Grooves fallen weg: Dieselbe Hand oder derselbe Fuß hätte sonst zwei zugleich.}}',
  'groove-goes-on':
    '.input {$beats :integer} .match $beats one {{Der Groove geht {$beats} Zählzeit weiter, wie zwei Zählzeiten davor.}} * {{Der Groove geht {$beats} Zählzeiten weiter, wie zwei Zählzeiten davor.}}',
  'beats-in-three':
    '.input {$beats :integer} .match $beats one {{{$beats} zweigeteilte Zählzeit wird dreigeteilt geschrieben, lang und kurz.}} * {{{$beats} zweigeteilte Zählzeiten werden dreigeteilt geschrieben, lang und kurz.}}',
  'beats-in-two':
    '.input {$beats :integer} .match $beats one {{{$beats} Triole lässt sich in Achteln schreiben und klingt dann gerade.}} * {{{$beats} Triolen lassen sich in Achteln schreiben und klingen dann gerade.}}',
  'beats-stay-in-three':
    '.input {$beats :integer} .match $beats one {{{$beats} Zählzeit hat einen Schlag in der Mitte und bleibt eine Triole.}} * {{{$beats} Zählzeiten haben einen Schlag in der Mitte und bleiben Triolen.}}',
  'silent-beats-added':
    '.input {$beats :integer} .match $beats one {{Jeder Takt einer Übung endet mit {$beats} stillen Zählzeit mehr.}} * {{Jeder Takt einer Übung endet mit {$beats} stillen Zählzeiten mehr.}}',
  'exercises-become-twins': 'Dann gleich wie eine andere, und fällt weg: Übung {$exercises :list}.',
  'dynamics-without-place':
    'Eine Dynamik steht auf einer Zählzeit, die wegfällt, und fällt mit ihr weg: Übung {$exercises :list}.',
  'fill-on-last-beat': 'Das Fill beginnt auf der letzten Zählzeit: Übung {$exercises :list}.',
  'ending-on-last-beat': 'Der Schluss von „{$form}“ kommt auf die letzte Zählzeit.',
});
