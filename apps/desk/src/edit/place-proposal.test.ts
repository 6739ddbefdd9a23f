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

  it('[ST1300] puts a bar near an exercise in its stead, and leaves one that is kept', () => {
    const near = [proposed('x.. x.. ... ...', { from: 1 }), proposed('... x.. x.. ...', { from: 2 })];
    const locked = written.map((each) => (each.number === 2 ? { ...each, keep: true as const } : each));
    // definition: by hand; what is kept is never lost
    expect(textsOf(placeExercises(locked, near, 'in its stead'))).toEqual([
      'x.. x.. ... ...',
      '... x.. ... ...',
      '... x.. x.. ...',
      '... ... x.. ...',
    ]);
    const left = near.map((each) => ({ ...each, isTaken: false }));
    expect(placeExercises(written, left, 'in its stead')).toEqual(written);
  });

  it('[ST1300] puts what leads to an exercise before it', () => {
    const steps = [proposed('x.. ... x.. ...'), proposed('... ... x.. x..')];
    // definition: by hand
    expect(textsOf(placeExercises(written, steps, 'before its goal', 3))).toEqual([
      'x.. ... ... ...',
      '... x.. ... ...',
      'x.. ... x.. ...',
      '... ... x.. x..',
      '... ... x.. ...',
    ]);
  });

  it('[ST24] takes the place of the silent bar that a new lesson begins with', () => {
    expect(textsOf(placeExercises([exercise(1, '... ... ... ...')], items, 'behind'))).toEqual([
      '..x ... ... ...',
    ]);
  });
});
