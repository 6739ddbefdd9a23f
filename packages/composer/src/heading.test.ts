import { parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { lessonOf } from '../test/lessons.ts';
import { compose } from './compose.ts';
import { drilledHeading, ledHeading } from './drill.ts';
import { withHeadings } from './heading.ts';

const DIVIDED = `title: Two sections
feel: triplet
groove: { ride: x x.x x x.x }
vocabulary: [..., x.., ..x, x.x]
sections:
  - { heading: One, exercises: [x.. ... ... ..., ... x.. ... ...] }
  - { heading: Two, exercises: [x.. ..x ... ...] }
`;

it('[CO2302] headings stand where blocks begin in a later section too, whose exercises count on', () => {
  const second = parseLesson(DIVIDED, 'divided').lesson?.sections[1];
  if (!second) throw new Error('the lesson has no second section');
  const { exercises, report } = compose(second, { count: 12 });
  // definition: the section before has two exercises
  expect(exercises[0]?.number).toBe(3);
  const named = withHeadings(exercises, report.blocks, ({ fact }) => fact);
  const heads = named.flatMap(({ name }, i) => (name === null ? [] : [i + 1]));
  expect(heads).toEqual(report.blocks.map(({ first }) => first));
});

it('[CO4502] names a figure with what its block makes of it, or with the other figure in it', () => {
  const figure = { fact: 'figure-on-last' } as const;
  const other = { fact: 'figure-every-beat' } as const;
  const stated = { fact: 'idea-stated' } as const;
  const moved = { fact: 'idea-displaced', later: { fact: 'beats-later', beats: 2 } } as const;
  const fuller = { fact: 'idea-filled', places: [{ fact: 'beat', beat: 1 }] } as const;
  const drilled = { fact: 'theme-drilled', figure, drill: { fact: 'drill-moved' } };
  // common practice: a teacher says what is done with a figure; to move it is the first drill on it
  expect(drilledHeading(figure, [stated, fuller, moved])).toEqual(drilled);
  const pair = { fact: 'theme-figures', figure, other };
  expect(drilledHeading(figure, [stated, { fact: 'idea-figure', figure: other }])).toEqual(pair);
  expect(drilledHeading(figure, [stated])).toEqual(figure);
  const strokes = { fact: 'theme-strokes', strokes: 9 } as const;
  expect(drilledHeading(strokes, [stated, moved])).toEqual(strokes);
});

it('[CO5102] names the line that a block begins with before a theme that comes later', () => {
  const dotted = { fact: 'figure-dotted-quarter' } as const;
  const every = { fact: 'figure-every-beat' } as const;
  const one = { fact: 'theme-groups', groups: [{ fact: 'group-beats', beats: ['1'] }] } as const;
  const two = { fact: 'theme-groups', groups: [{ fact: 'group-beats', beats: ['2'] }] } as const;
  // definition: what stands under a heading first is said first
  expect(ledHeading(dotted, one)).toEqual({ fact: 'theme-figures', figure: dotted, other: one });
  expect(ledHeading(two, one)).toEqual({ fact: 'theme-figures', figure: two, other: one });
  expect(ledHeading(dotted, every)).toEqual({ fact: 'theme-figures', figure: dotted, other: every });
  expect(ledHeading(one, every)).toEqual(every);
});

it('[CO5102] says both lines over blocks of pages that begin with another line than their theme', () => {
  const led = Array.from(
    { length: 12 },
    (_, seed) => compose(lessonOf('bossa'), { count: 24, seed }).report,
  ).flatMap(({ blocks, bars }) => blocks.filter(({ first, theme }) => bars[first - 1]?.text !== theme));
  expect(led.length).toBeGreaterThan(0);
  // definition: a heading of groups alone would be read as what the line under it strikes
  for (const { heading } of led) expect(heading?.fact).not.toBe('theme-groups');
});

it.each(['swing of five cells', 'bossa', 'waltz'] as const)(
  '[CO4502] %s: no two headings of a page are alike',
  (name) => {
    for (const seed of [1, 2]) {
      const headings = compose(lessonOf(name), { count: 24, seed }).report.blocks.map(({ heading }) =>
        JSON.stringify(heading),
      );
      // definition: every heading once
      expect(new Set(headings).size).toBe(headings.length);
    }
  },
);
