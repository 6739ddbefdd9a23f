import { parsePattern } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { themeFact } from './idea.ts';

const headingOf = (text: string) => themeFact(parsePattern(text).bars.flat(), 4);

const counted = (...syllables: readonly string[]) =>
  syllables.map((syllable) => ({ fact: 'counted', syllable }));

describe('headings', () => {
  it('[CO1300] name together the beats that are struck alike', () => {
    // definition: 1 and 2 are struck, each with its last triplet; 3 alone; of 4 the last triplet alone
    expect(headingOf('x.x x.x x.. ..x')).toEqual({
      fact: 'theme-groups',
      groups: [
        { fact: 'group-with', beats: ['1', '2'], count: 2, syllables: counted('let') },
        { fact: 'group-beats', beats: ['3'] },
        { fact: 'group-between', beats: ['4'], syllables: counted('let') },
      ],
    });
    // definition: a beat struck alone is the same in eighths as in triplets
    expect(headingOf('x. x.. ... ...')).toMatchObject({
      fact: 'theme-groups',
      groups: [{ fact: 'group-beats', beats: ['1', '2'] }],
    });
    // definition: dense bars are said by what is alike too, and never by a number of strokes
    expect(headingOf('.xx .xx xxx ...')).toEqual({
      fact: 'theme-groups',
      groups: [
        { fact: 'group-between', beats: ['1', '2'], syllables: counted('trip', 'let') },
        { fact: 'group-whole', beats: ['3'] },
      ],
    });
  });

  it('[CO1300] call a figure by its name, and say how much later it comes', () => {
    // common practice: the figure's own name comes before its places
    expect(headingOf('x.. ..x ... ...')).toEqual({ fact: 'figure-dotted-quarter' });
    expect(headingOf('... ... x.. ..x')).toEqual({
      fact: 'theme-figure-later',
      figure: { fact: 'figure-dotted-quarter' },
      later: 2,
    });
  });

  it('[CO2301] say where ghost notes are under a back beat, and a theme of two bars by each of them', () => {
    // definition: accents on 2 and 4; ghost notes on the second sixteenth of 1 and the last of 4
    expect(headingOf('.g.. X... .... X..g')).toEqual({
      fact: 'theme-ghosts',
      groups: [
        { fact: 'group-between', beats: ['1'], syllables: counted('e') },
        { fact: 'group-between', beats: ['4'], syllables: counted('a') },
      ],
    });
    expect(headingOf('x. .. .. .. | .. .x .. ..')).toEqual({
      fact: 'theme-two-bars',
      first: [{ fact: 'group-beats', beats: ['1'] }],
      second: [{ fact: 'group-between', beats: ['2'], syllables: counted('&') }],
    });
  });
});
