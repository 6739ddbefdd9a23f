/** Why a bar is as hard as it is, in German. */
import type { ReasonFact } from '@shedbook/composer';
import type { PlaceFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for reasons. */
export const difficulty = sentences<ReasonFact, PlaceFact>()({
  'fall-alone':
    '.input {$strokes :integer} .match $strokes one {{{$strokes} Schlag fällt allein: auf {$places :list}}} * {{{$strokes} Schläge fallen allein: auf {$places :list}}}',
  'fall-with':
    '.input {$strokes :integer} .match $strokes one {{{$strokes} Schlag fällt mit {$voices :voices} zusammen: auf {$places :list}}} * {{{$strokes} Schläge fallen mit {$voices :voices} zusammen: auf {$places :list}}}',
  silence:
    '.input {$bars :number maximumFractionDigits=1} .match $bars 1 {{die 1 ist still}} * {{die 1 ist in {$bars} Takten still}}',
  'part-alone':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} Schlag allein}} * {{{$count} Schläge allein}}',
  'part-foot':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} Schlag nur mit einem Fuß}} * {{{$count} Schläge nur mit einem Fuß}}',
  'part-lead':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} Schlag mit der führenden Hand}} * {{{$count} Schläge mit der führenden Hand}}',
  'part-switch':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} Wechsel der Begleitung: mit der Führungshand, zwischen ihren Schlägen, still}} * {{{$count} Wechsel der Begleitung: mit der Führungshand, zwischen ihren Schlägen, still}}',
  'part-unison':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} gemeinsamer Schlag}} * {{{$count} gemeinsame Schläge}}',
  'part-interlock':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} Übergabe innerhalb eines Schlages}} * {{{$count} Übergaben innerhalb eines Schlages}}',
  'part-wnbd':
    'die Schläge ziehen gegen die Zählzeit ({$count :number maximumFractionDigits=1} nach ihrem Abstand von ihr)',
  'part-lhl': '{$count :number maximumFractionDigits=1} an Synkopierung (Pausen auf schweren Stellen)',
  'part-offBeatness':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} Schlag weit neben der Zählzeit}} * {{{$count} Schläge weit neben der Zählzeit}}',
  'part-keith':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} Schlag, der für seine Länge zu früh beginnt}} * {{{$count} Schläge, die für ihre Länge zu früh beginnen}}',
  'part-pulse': 'der Puls ist wenig zu hören ({$count :number maximumFractionDigits=1} gegen ihn)',
  'part-density':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} Schlag im Ganzen}} * {{{$count} Schläge im Ganzen}}',
  'part-memory':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} Schlag, der in einem späteren Takt neu ist}} * {{{$count} Schläge, die in späteren Takten neu sind}}',
  'part-change':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} Wechsel der Zelle}} * {{{$count} Wechsel der Zelle}}',
  'part-speed':
    'die Schläge folgen schnell aufeinander ({$count :number maximumFractionDigits=1}; drei an der Grenze einer Hand sind 1)',
  'part-dynamics':
    '.input {$count :number maximumFractionDigits=1} .match $count one {{{$count} Wechsel der Lautstärke}} * {{{$count} Wechsel der Lautstärke}}',
});
