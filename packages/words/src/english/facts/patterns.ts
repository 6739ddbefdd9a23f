/** What is wrong with a pattern text, in English. */
import type { PatternFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for pattern texts. */
export const patterns = sentences<PatternFact>()({
  'bar-without-beats': 'a bar without beats',
  beats: '.input {$beats :integer} .match $beats one {{{$beats} beat}} * {{{$beats} beats}}',
  'beats-in-bar':
    '.input {$beats :integer} .match $beats one {{{$beats} beat in a bar of {$meter}}} * {{{$beats} beats in a bar of {$meter}}}',
  'slots-in-beat': '{$slots :integer} places in one beat ("{$text}")',
  'slots-a-beat': '{$slots :list type=or} places a beat',
  character: '"{$character}"',
  'one-of-marks': 'one of the marks {$marks}',
  'marks-for-voice': 'one of {$marks}',
  'held-after': 'a roll or sweep before it that goes on: {$marks}',
  'separate-beats': 'separate the beats with spaces',
  'end-bar': 'end the bar with "|" or take beats out',
  'fill-bar': 'fill the bar: "." is a silent beat',
  'write-mark': 'write "{$mark}"',
});
