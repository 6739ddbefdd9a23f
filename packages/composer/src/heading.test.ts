import { parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { compose } from './compose.ts';
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
