/** What a change of meter or feel does to a lesson, in English. */
import type { ChangeFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Sentences for what is told before anything changes. */
export const changes = sentences<ChangeFact>()({
  'strokes-without-place':
    '.input {$strokes :integer} .match $strokes one {{{$strokes} stroke has no place and goes: exercise {$exercises :list}.}} * {{{$strokes} strokes have no place and go: exercise {$exercises :list}.}}',
  'strokes-moved':
    '.input {$strokes :integer} .match $strokes one {{{$strokes} stroke goes to the place before it: exercise {$exercises :list}.}} * {{{$strokes} strokes go to the place before them: exercise {$exercises :list}.}}',
  'groove-loses-beats':
    '.input {$beats :integer} .match $beats one {{The groove loses its last beat.}} * {{The groove loses its last {$beats} beats.}}',
  'groove-loses-strokes':
    '.input {$strokes :integer} .match $strokes one {{{$strokes} stroke of the groove is left out, since its limb would have two at once.}} * {{{$strokes} strokes of the groove are left out, since their limbs would have two at once.}}',
  'groove-goes-on':
    '.input {$beats :integer} .match $beats one {{The groove goes on for {$beats} beat as it went two beats before.}} * {{The groove goes on for {$beats} beats as it went two beats before.}}',
  'beats-in-three':
    '.input {$beats :integer} .match $beats one {{{$beats} beat in two is written in three, long and short.}} * {{{$beats} beats in two are written in three, long and short.}}',
  'beats-in-two':
    '.input {$beats :integer} .match $beats one {{{$beats} beat in three can be written in two, and is then played evenly.}} * {{{$beats} beats in three can be written in two, and are then played evenly.}}',
  'beats-stay-in-three':
    '.input {$beats :integer} .match $beats one {{{$beats} beat has a stroke in its middle and stays a triplet.}} * {{{$beats} beats have a stroke in their middle and stay triplets.}}',
  'silent-beats-added':
    '.input {$beats :integer} .match $beats one {{Every bar of an exercise ends with {$beats} silent beat more.}} * {{Every bar of an exercise ends with {$beats} silent beats more.}}',
  'exercises-become-twins': 'The same as another one by then, and goes: exercise {$exercises :list}.',
  'dynamics-without-place':
    'A dynamic stands on a beat that goes, and goes too: exercise {$exercises :list}.',
  'fill-on-last-beat': 'The fill begins on the last beat: exercise {$exercises :list}.',
  'ending-on-last-beat': 'The ending of "{$form}" comes on the last beat.',
});
