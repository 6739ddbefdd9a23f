import { describe, expect, it } from 'vitest';
import { ENGLISH_TONGUE } from '../english/tongue.ts';
import { GERMAN_TONGUE } from '../german/tongue.ts';
import { speak } from './speak.ts';
import { translation } from './translated.ts';

const english = {
  close: 'Done',
  bars: '.input {$bars :integer} .match $bars one {{{$bars} bar}} * {{{$bars} bars}}',
  nested: { open: 'Open {$title}', mute: 'Mute the {$voice :voice}' },
  steps: ['Listen', 'Play {$times :integer} times'],
} as const;

const german = translation<typeof english>()({
  close: 'Fertig',
  bars: '.input {$bars :integer} .match $bars one {{{$bars} Takt}} * {{{$bars} Takte}}',
  nested: { open: '{$title} öffnen', mute: 'Stumm: {$voice :voice}' },
  steps: ['Hören', '{$times :integer}-mal spielen'],
});

describe('catalogues of screens', () => {
  it('[WO4] keep texts and make functions of messages with places', () => {
    const words = speak(english, ENGLISH_TONGUE);
    expect(words.close).toBe('Done');
    // standard: CLDR, plural rules of English: one is 1 alone
    expect([0, 1, 2].map((bars) => words.bars({ bars }))).toEqual(['0 bars', '1 bar', '2 bars']);
    expect(words.nested.open({ title: 'Swing {1}' })).toBe('Open Swing {1}');
    expect(words.steps[1]({ times: 4 })).toBe('Play 4 times');
  });

  it('[WO4] say voices and numbers as the language does', () => {
    const words = speak(german, GERMAN_TONGUE);
    expect(words.nested.mute({ voice: 'bass' })).toBe('Stumm: Bassdrum');
    // standard: CLDR, grouping separator of German: a full stop
    expect(words.bars({ bars: 1200 })).toBe('1.200 Takte');
  });

  it('[WO5] do not compile when a value is missing, superfluous or of another kind', () => {
    const words = speak(english, ENGLISH_TONGUE);
    // @ts-expect-error no value
    expect(() => words.bars({})).toThrow(/bars/);
    // @ts-expect-error a text for a number
    expect(() => words.bars({ bars: 'many' })).toThrow(RangeError);
    // @ts-expect-error a value that the message does not have
    expect(words.nested.open({ title: 'Swing', page: 2 })).toBe('Open Swing');
    // @ts-expect-error a text is no function
    expect(() => words.close()).toThrow(TypeError);
  });

  it('[WO5] do not compile in translation with other keys or places', () => {
    const one = { open: 'Open {$title}', close: 'Done' } as const;
    const twoPlaces = { at: 'Line {$line :integer}, column {$column :integer}' } as const;
    const made = [
      translation<typeof one>()({ open: '{$title} öffnen', close: 'Fertig' }),
      // @ts-expect-error a key is missing
      translation<typeof one>()({ open: '{$title} öffnen' }),
      // @ts-expect-error a key too many
      translation<typeof one>()({ open: '{$title} öffnen', close: 'Fertig', shut: 'Zu' }),
      // @ts-expect-error a place by another name
      translation<typeof one>()({ open: '{$titel} öffnen', close: 'Fertig' }),
      // @ts-expect-error a place is left out
      translation<typeof one>()({ open: 'Öffnen', close: 'Fertig' }),
      // @ts-expect-error a place of another kind
      translation<typeof twoPlaces>()({ at: 'Zeile {$line}, Spalte {$column :integer}' }),
    ];
    expect(made.length).toBe(6);
  });
});
