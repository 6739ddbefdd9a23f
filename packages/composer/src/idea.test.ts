import { parsePattern } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { themeFact } from './idea.ts';

const headingOf = (text: string) => themeFact(parsePattern(text).bars.flat(), text, 4);

describe('headings', () => {
  it('[CO1300] say where a theme strikes, in how few words it takes', () => {
    // definition: four strokes, two of them on beats
    expect(headingOf('x.x x.x ... ...')).toEqual({
      fact: 'theme-beats-places',
      beats: ['1', '2'],
      places: [
        { fact: 'syllable', syllable: 'let', beat: 1 },
        { fact: 'syllable', syllable: 'let', beat: 2 },
      ],
    });
    // common practice: the figure's own name comes before its places
    expect(headingOf('x.. ..x ... ...')).toEqual({ fact: 'figure-dotted-quarter' });
    // definition: five strokes between the beats are more than anybody reads in a heading
    expect(headingOf('.xx .xx ..x ...')).toEqual({ fact: 'theme-strokes', strokes: 5 });
  });
});
