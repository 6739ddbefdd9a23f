/** What a block of a page is about and what each line makes of it, in English. */
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
  preparation: 'Before the first bar',
  'preparation-of': 'Before “{$heading}”',
  'preparation-text':
    'Count aloud and clap. First listen; then it is yours, and the click thins out until it is gone. Keep counting.',
  'clap-beat': 'The beat',
  'clap-every': 'Every part of the beat',
  'clap-first-and-last': 'The first and the last',
  'clap-last': 'The last alone',
  'clap-middle': 'The middle alone',
  'figure-every-beat': 'Every beat',
  'figure-on-one': 'One',
  'figure-on-last': 'The last beat',
  'figure-back-beat': 'The back beat',
  'figure-one-and-three': 'One and three',
  'figure-after-one': 'Two and three',
  'figure-dotted-quarter': 'The dotted quarter',
  'figure-dotted-quarter-later': 'The dotted quarter, a beat later',
  'figure-lets-two-four': 'Off the beat after 2 and 4',
  'figure-lets-one-two': 'Off the beat after 1 and 2',
  'figure-lets-three-four': 'Off the beat after 3 and 4',
  'figure-let-last': 'Into the next bar',
  'figure-three-side': 'Three in the space of two',
  'figure-ghosts-after': 'Ghost notes after the back beat',
  'figure-ghosts-before': 'Ghost notes before the back beat',
  'figure-ghosts-between': 'Ghost notes between the back beats',
  'theme-figure-later': '{$figure :say}, {$later :say}',
  'beats-later':
    '.input {$beats :integer} .match $beats one {{{$beats} beat later}} * {{{$beats} beats later}}',
  'bars-later': '.input {$bars :integer} .match $bars one {{a bar later}} * {{{$bars} bars later}}',
  'theme-groups': 'On {$groups :list type=apart}',
  'theme-ghosts': 'Ghost notes on {$groups :list type=apart}',
  'theme-two-bars': 'On {$first :list type=apart}, then on {$second :list type=apart}',
  'theme-twice': 'On {$groups :list type=apart} in both bars',
  'theme-begins': 'From {$groups :list type=apart}',
  'theme-shared': '{$voices :list type=apart}',
  'theme-figure-shared': '{$figure :say}: {$voices :list type=apart}',
  'voice-strikes': '{$voice :voice at=start} on {$groups :list type=apart}',
  'theme-strokes': '{$strokes :integer} strokes',
  'group-beats': '{$beats :list}',
  'group-whole': 'all of {$beats :list}',
  'group-between': 'the {$syllables :list} of {$beats :list}',
  'group-with':
    '.input {$count :integer} .match $count one {{{$beats :list} and its {$syllables :list}}} * {{{$beats :list}, each with its {$syllables :list}}}',
  counted: '{$syllable :syllable}',
  'idea-stated': 'the figure itself',
  'idea-displaced': 'the figure, {$later :say}',
  'idea-filled': 'fuller: with {$places :list}',
  'idea-thinned': 'thinner: without {$places :list}',
  'idea-turned': 'another way on {$beats :list}',
  'idea-joined': 'joined with another figure on {$beats :list}',
  'idea-joins-before': 'joined with the figure before on {$beats :list}',
  'idea-figure': '{$figure :say}',
  'idea-displaced-filled': '{$later :say}, and fuller',
  'idea-displaced-thinned': '{$later :say}, and thinner',
  'idea-displaced-turned': '{$later :say}, one beat another way',
  'term-page': 'Page {$page :integer}',
  'term-cells': 'New here: {$cells :list type=apart}.',
  'cell-silent': 'a silent beat',
  'cell-beat': 'the beat',
  'cell-between': 'the {$syllables :list} alone',
  'cell-with': 'the beat and its {$syllables :list}',
  'term-new-moves':
    '.input {$moves :integer} .match $moves one {{{$moves} new move from one cell to the next.}} * {{{$moves} new moves from one cell to the next.}}',
  'term-moves-back':
    '.input {$moves :integer} .match $moves one {{{$moves} move comes back.}} * {{{$moves} moves of earlier pages come back.}}',
});
