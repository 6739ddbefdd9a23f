import { type Exercise, formatPattern, parsePattern } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { type ProposedItem, placeExercises } from './place-proposal.ts';

function exercise(number: number, text: string): Exercise {
  const parts = [{ voice: 'snare' as const, pattern: parsePattern(text) }];
  return { number, name: null, parts, sticking: null, notes: null };
}

const written = [
  exercise(1, 'x.. ... ... ...'),
  exercise(2, '... x.. ... ...'),
  exercise(3, '... ... x.. ...'),
];

function proposed(text: string, item: Partial<ProposedItem> = {}): ProposedItem {
  return { exercise: exercise(1, text), from: null, isKept: false, isTaken: true, ...item };
}

const textsOf = (of: readonly Pick<Exercise, 'parts'>[]) =>
  of.map(({ parts }) => formatPattern(parts[0]?.pattern ?? { bars: [] }));

describe('placing a proposal', () => {
  const kept = proposed('... x.. ... ...', { isKept: true });
  const items = [proposed('..x ... ... ...'), kept, proposed('... ... ... ..x', { isTaken: false })];

  it('[ST24] adds what is taken behind, and loses nothing', () => {
    // definition: by hand
    expect(textsOf(placeExercises(written, items, 'behind'))).toEqual([
      ...textsOf(written),
      '..x ... ... ...',
    ]);
  });

  it('[ST24] puts what is taken in place of what is not kept', () => {
    expect(textsOf(placeExercises(written, items, 'instead'))).toEqual([
      '..x ... ... ...',
      '... x.. ... ...',
    ]);
    // definition: nothing taken and nothing kept is no page
    expect(placeExercises(written, [proposed('x x x x', { isTaken: false })], 'instead')).toEqual(written);
  });

  it('[ST24] puts each after the exercise that it is made of', () => {
    const passes = [proposed('X.. ... ... ...', { from: 1 }), proposed('... ... X.. ...', { from: 3 })];
    expect(textsOf(placeExercises(written, passes, 'each after its own'))).toEqual([
      'x.. ... ... ...',
      'X.. ... ... ...',
      '... x.. ... ...',
      '... ... x.. ...',
      '... ... X.. ...',
    ]);
  });

  it('[ST24] takes the place of the silent bar that a new lesson begins with', () => {
    expect(textsOf(placeExercises([exercise(1, '... ... ... ...')], items, 'behind'))).toEqual([
      '..x ... ... ...',
    ]);
  });
});
