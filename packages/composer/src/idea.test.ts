import { parsePattern } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { lessonOf } from '../test/lessons.ts';
import { composeDialogue } from './dialogue.ts';
import { ideaInBlock, sharedThemeFact, themeFact } from './idea.ts';

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
      later: { fact: 'beats-later', beats: 2 },
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

  it('[CO2800] of a dialogue say which voice strikes where, and what their rhythm is called', () => {
    const cellsOf = (text: string) => parsePattern(text).bars.flat();
    const share = (snare: string, bass: string, together: string) =>
      sharedThemeFact(
        cellsOf(together),
        [
          { voice: 'snare', pattern: parsePattern(snare) },
          { voice: 'bass', pattern: parsePattern(bass) },
        ],
        4,
      );
    const snare = { fact: 'voice-strikes', voice: 'snare', groups: [{ fact: 'group-beats', beats: ['1'] }] };
    const let2 = { fact: 'group-between', beats: ['2'], syllables: counted('let') };
    // definition: the snare strikes 1, the bass drum the last triplet of 2; common practice: both together are the dotted quarter
    expect(share('x.. ... ... ...', '... ..x ... ...', 'x.. ..x ... ...')).toEqual({
      fact: 'theme-figure-shared',
      figure: { fact: 'figure-dotted-quarter' },
      voices: [snare, { fact: 'voice-strikes', voice: 'bass', groups: [let2] }],
    });
    // definition: the snare strikes 1, the bass drum 3 and the last triplet of 2; no figure has these strokes
    expect(share('x.. ... ... ...', '... ..x x.. ...', 'x.. ..x x.. ...')).toMatchObject({
      fact: 'theme-shared',
      voices: [snare, { voice: 'bass', groups: [let2, { fact: 'group-beats', beats: ['3'] }] }],
    });
  });

  it('[CO2800] name both voices over every block of a dialogue', () => {
    const { report } = composeDialogue(lessonOf('swing'), 'bass', { count: 12, seed: 1 });
    const headings = report.blocks.map(({ heading }) => heading);
    expect(headings.length).toBeGreaterThan(2);
    for (const heading of headings) {
      if (heading?.fact !== 'theme-shared' && heading?.fact !== 'theme-figure-shared')
        throw new Error(`no voice in ${JSON.stringify(heading)}`);
      // definition: the comping voice and the one that was asked for, both of which strike in every exercise
      expect(heading.voices.map(({ voice }) => voice)).toEqual(['snare', 'bass']);
    }
  });
});

describe('lines of a block', () => {
  const cellsOf = (text: string) => parsePattern(text).bars.flat();
  const made = (line: string, theme: string, before: string | null = null) =>
    ideaInBlock({
      line: cellsOf(line),
      theme: cellsOf(theme),
      before: before === null ? null : cellsOf(before),
      inBar: 4,
    });

  it('[CO2803] are called by their names where they are other figures', () => {
    // common practice: all four beats are every beat, whatever they fill
    expect(made('x.. x.. x.. x..', '... ... ... x..')).toEqual({
      fact: 'idea-figure',
      figure: { fact: 'figure-every-beat' },
    });
    // definition: the theme itself, two beats later
    expect(made('... ... ..x ..x', '..x ..x ... ...')).toEqual({
      fact: 'idea-displaced',
      later: { fact: 'beats-later', beats: 2 },
    });
  });

  it('[CO2803] [CO5103] join with the figure before where they end a block and have a beat or two of it', () => {
    const [theme, before] = ['x.x ..x ... ..x', '... ..x x.. x..'] as const;
    // definition: 3 is the earlier theme's
    expect(made('x.x ..x x.. ..x', theme, before)).toEqual({
      fact: 'idea-joins-before',
      beats: [{ fact: 'beat', beat: 3 }],
    });
    // common practice: what is left out is thinner, whatever another figure leaves out there
    expect(made('x.x ... ... ..x', theme, 'x.. ... x.. x..')).toEqual({
      fact: 'idea-thinned',
      places: [{ fact: 'syllable', beat: 2, syllable: 'let' }],
    });
    // definition: 4 is of neither
    expect(made('x.x ..x ... x.x', theme, before)).toMatchObject({ fact: 'idea-filled' });
    // definition: two beats of nobody's are another way of the figure, no joint
    expect(made('..x x.x ... ..x', theme, before)).toMatchObject({
      fact: 'idea-turned',
      beats: [
        { fact: 'beat', beat: 1 },
        { fact: 'beat', beat: 2 },
      ],
    });
  });

  it('[CO3400] of two bars are told by bar and beat, and bars that have changed places by the bar', () => {
    const theme = 'x. .. .. .. | .. .x .. ..';
    const inSecond = (beat: number) => ({ fact: 'in-bar', place: { fact: 'beat', beat }, bar: 2 });
    // definition: the line has a stroke more, on the third beat of its second bar
    expect(made('x. .. .. .. | .. .x x. ..', theme)).toEqual({ fact: 'idea-filled', places: [inSecond(3)] });
    // definition: one beat differs and neither bar has more strokes than the other
    expect(made('x. .. .. .. | .. x. .. ..', theme)).toEqual({ fact: 'idea-turned', beats: [inSecond(2)] });
    // definition: four beats are a bar of 4/4
    expect(made('.. .x .. .. | x. .. .. ..', theme)).toEqual({
      fact: 'idea-displaced',
      later: { fact: 'bars-later', bars: 1 },
    });
  });
});
