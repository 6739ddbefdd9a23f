/** What a block of a page is about and what each line makes of it, in German. */
import type {
  CellFact,
  IdeaFact,
  PreparationFact,
  TermFact,
  ThemeFact,
  ThemePartFact,
} from '@shedbook/composer';
import type { PlaceFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Headings of blocks, and clauses for lines. */
export const ideas = sentences<
  ThemeFact | ThemePartFact | IdeaFact | TermFact | CellFact | PreparationFact,
  PlaceFact
>()({
  preparation: 'Vor dem ersten Takt',
  'preparation-of': 'Vor „{$heading}“',
  'preparation-text':
    'Zähl laut und klatsch. Hör erst zu; dann bist du dran, und der Klick wird immer weniger, bis er schweigt. Zähl weiter.',
  'clap-beat': 'Die Zählzeiten',
  'clap-every': 'Jeder Teil der Zählzeit',
  'clap-first-and-last': 'Der erste und der letzte',
  'clap-last': 'Der letzte allein',
  'clap-middle': 'Der mittlere allein',
  'figure-every-beat': 'Jeder Schlag',
  'figure-on-one': 'Die Eins',
  'figure-on-last': 'Der letzte Schlag',
  'figure-back-beat': 'Der Backbeat',
  'figure-one-and-three': 'Eins und drei',
  'figure-after-one': 'Zwei und drei',
  'figure-dotted-quarter': 'Die punktierte Viertel',
  'figure-dotted-quarter-later': 'Die punktierte Viertel, einen Schlag später',
  'figure-lets-two-four': 'Neben dem Schlag nach 2 und 4',
  'figure-lets-one-two': 'Neben dem Schlag nach 1 und 2',
  'figure-lets-three-four': 'Neben dem Schlag nach 3 und 4',
  'figure-let-last': 'In den nächsten Takt',
  'figure-three-side': 'Drei im Raum von zwei',
  'figure-ghosts-after': 'Ghost Notes nach dem Backbeat',
  'figure-ghosts-before': 'Ghost Notes vor dem Backbeat',
  'figure-ghosts-between': 'Ghost Notes zwischen den Backbeats',
  'theme-figure-later': '{$figure :say}, {$later :say}',
  'beats-later':
    '.input {$beats :integer} .match $beats one {{{$beats} Schlag später}} * {{{$beats} Schläge später}}',
  'bars-later': '.input {$bars :integer} .match $bars one {{einen Takt später}} * {{{$bars} Takte später}}',
  'theme-groups': 'Auf {$groups :list type=apart}',
  'theme-ghosts': 'Ghost Notes auf {$groups :list type=apart}',
  'theme-two-bars': 'Auf {$first :list type=apart}, dann auf {$second :list type=apart}',
  'theme-twice': 'In beiden Takten auf {$groups :list type=apart}',
  'theme-begins': 'Von {$groups :list type=apart} an',
  'theme-shared': '{$voices :list type=apart}',
  'theme-figure-shared': '{$figure :say}: {$voices :list type=apart}',
  'voice-strikes': '{$voice :voice at=start} auf {$groups :list type=apart}',
  'theme-strokes': '{$strokes :integer} Schläge',
  'group-beats': '{$beats :list}',
  'group-whole': 'allem von {$beats :list}',
  'group-between': '{$syllables :list} der {$beats :list}',
  'group-with':
    '.input {$count :integer} .match $count one {{{$beats :list} mit {$syllables :list}}} * {{{$beats :list}, je mit {$syllables :list}}}',
  counted: '„{$syllable :syllable}“',
  'idea-stated': 'die Figur selbst',
  'idea-displaced': 'die Figur, {$later :say}',
  'idea-filled': 'voller: mit {$places :list}',
  'idea-thinned': 'dünner: ohne {$places :list}',
  'idea-turned': 'anders auf {$beats :list}',
  'idea-joined': 'auf {$beats :list} mit einer anderen Figur verbunden',
  'idea-joins-before': 'auf {$beats :list} mit der Figur davor verbunden',
  'idea-figure': '{$figure :say}',
  'idea-displaced-filled': '{$later :say} und voller',
  'idea-displaced-thinned': '{$later :say} und dünner',
  'idea-displaced-turned': '{$later :say}, ein Schlag anders',
  'term-page': 'Seite {$page :integer}',
  'term-cells': 'Neu hier: {$cells :list type=apart}.',
  'cell-silent': 'ein stiller Schlag',
  'cell-beat': 'der Schlag',
  'cell-between': '{$syllables :list} allein',
  'cell-with': 'der Schlag mit {$syllables :list}',
  'term-new-moves':
    '.input {$moves :integer} .match $moves one {{{$moves} neuer Wechsel von einer Zelle zur nächsten.}} * {{{$moves} neue Wechsel von einer Zelle zur nächsten.}}',
  'term-moves-back':
    '.input {$moves :integer} .match $moves one {{{$moves} Wechsel kommt wieder.}} * {{{$moves} Wechsel früherer Seiten kommen wieder.}}',
});
