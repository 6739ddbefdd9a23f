/** What a composed page could not have, in German. */
import type { MoveFact, NoteFact } from '@shedbook/composer';
import { sentences } from '../../facts/sentences.ts';

/** Sentences on a composed page. */
export const notes = sentences<NoteFact | MoveFact>()({
  move: '{$from} zu {$to}',
  'strange-cell': 'Die Grenzen nennen die Zelle „{$cell}“, die nicht im Wortschatz ist.',
  'strange-beat': 'Die Grenzen nennen Schlag {$beat}, aber ein {$meter}-Takt hat {$beats :integer}.',
  'no-vocabulary': 'Der Wortschatz ist leer: Zellen wie „..x“ hineintun.',
  'no-bar-left':
    'Die Grenzen lassen keinen Takt übrig: sie weiten, das Zieltempo senken oder Zellen hinzunehmen.',
  'few-exercises':
    '.input {$asked :integer} .match $asked one {{{$asked} Übung verlangt, aber Wortschatz und Grenzen lassen nur {$left :integer} verschiedene zu.}} * {{{$asked} Übungen verlangt, aber Wortschatz und Grenzen lassen nur {$left :integer} verschiedene zu.}}',
  'missed-moves': 'Wechsel, die auf der Seite fehlen: {$moves :list type=series}.',
  'too-many-moves':
    '.input {$exercises :integer} .match $exercises one {{Wechsel, die auf der Seite fehlen: {$moves :list type=series}; für alle braucht es mindestens {$exercises} Übung.}} * {{Wechsel, die auf der Seite fehlen: {$moves :list type=series}; für alle braucht es mindestens {$exercises} Übungen.}}',
  'no-themes':
    'Es gibt so viele Wechsel zwischen Zellen, dass jede Zeile für sie gebraucht wird und die Zeilen keine gemeinsame Figur haben; ab {$exercises :integer} Übungen haben sie eine.',
  'easier-than-before':
    'Übung {$exercise :exercise} ist leichter als {$before :exercise}: behaltene Übungen stehen, wo sie standen.',
  'fast-pairs':
    'Im Zieltempo kommen in {$exercises :list} zwei Schläge mit {$rate :number maximumFractionDigits=1} in der Sekunde; der schnellste bekannte Arm oder Fuß schafft {$published :number maximumFractionDigits=1}: auf zwei verteilen oder das Ziel senken.',
  'fast-doubles':
    'Im Zieltempo kommen in {$exercises :list} zwei Schläge mit {$rate :number maximumFractionDigits=1} in der Sekunde, schneller als ein Arm oder Bein durchhält ({$published :number maximumFractionDigits=1}): als Doppelschlag spielen.',
  'fast-runs':
    'Im Zieltempo kommen in {$exercises :list} drei Schläge hintereinander mit {$rate :number maximumFractionDigits=1} in der Sekunde; ein Arm oder Bein hält höchstens {$published :number maximumFractionDigits=1} durch: auf zwei verteilen oder das Ziel senken.',
  'cells-too-fast':
    'Weggelassen, weil ein Arm oder Bein im Zieltempo {$rate :number maximumFractionDigits=1} Schläge in der Sekunde durchhält, zwei hintereinander etwas schneller: {$cells :list}. Das Ziel senken oder „handSpeed“ unter „limits“ erhöhen.',
  'moves-too-fast':
    'Wechsel, die wegbleiben, weil ein Arm oder Bein im Zieltempo {$rate :number maximumFractionDigits=1} Schläge in der Sekunde durchhält, zwei hintereinander etwas schneller: {$moves :list type=series}. Das Ziel senken, den Rhythmus auf zwei verteilen oder „handSpeed“ unter „limits“ erhöhen.',
  'moves-for-later':
    '.input {$moves :integer} .match $moves one {{{$moves} Wechsel zwischen den beiden Stimmen bleibt für eine spätere Seite.}} * {{{$moves} Wechsel zwischen den beiden Stimmen bleiben für spätere Seiten.}}',
  'large-step':
    'Der größte Schritt in der Schwierigkeit ist {$step :number minimumFractionDigits=1 maximumFractionDigits=1}, über {$bound :number minimumFractionDigits=1 maximumFractionDigits=1}.',
});
