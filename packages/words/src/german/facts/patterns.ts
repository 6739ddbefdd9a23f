/** What is wrong with a pattern text, in German. */
import type { PatternFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for pattern texts. */
export const patterns = sentences<PatternFact>()({
  'bar-without-beats': 'ein Takt ohne Schläge',
  beats: '.input {$beats :integer} .match $beats one {{{$beats} Schlag}} * {{{$beats} Schläge}}',
  'beats-in-bar':
    '.input {$beats :integer} .match $beats one {{{$beats} Schlag in einem {$meter}-Takt}} * {{{$beats} Schläge in einem {$meter}-Takt}}',
  'slots-in-beat': '{$slots :integer} Stellen in einem Schlag („{$text}“)',
  'slots-a-beat': '{$slots :list type=or} Stellen je Schlag',
  character: '„{$character}“',
  'one-of-marks': 'eines der Zeichen {$marks}',
  'marks-for-voice': 'eines von {$marks}',
  'held-after': 'davor einen Wirbel oder ein Wischen, das weitergeht: {$marks}',
  'separate-beats': 'die Schläge durch Leerzeichen trennen',
  'end-bar': 'den Takt mit „|“ beenden oder Schläge herausnehmen',
  'fill-bar': 'den Takt füllen: „.“ ist ein stummer Schlag',
  'write-mark': '„{$mark}“ schreiben',
});
