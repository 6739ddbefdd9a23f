import { formatPattern, parseLesson } from '@shedbook/core';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Unnumbered } from './exercises.ts';
import { backwards, ontoVoice, shifted, snippetOf, withoutSnippet, withSnippet } from './rearrange.ts';

function exercise(pattern: string, more = ''): Unnumbered {
  const { lesson } = parseLesson(`title: T\nexercises:\n  - pattern: ${pattern}\n${more}`, 'lesson');
  const [first] = lesson?.exercises ?? [];
  if (!first) throw new Error(pattern);
  const { number: _, ...rest } = first;
  return rest;
}

const text = ({ parts }: Unnumbered) =>
  parts.map(({ voice, pattern }) => `${voice} ${formatPattern(pattern)}`).join('; ');
const HERE = { bar: 0, beat: 1 };
const WHOLE = { unit: 'exercise', place: HERE } as const;

it('[ST422] reads a pattern backwards, whole, in a bar or in a beat, its hands with it', () => {
  const two = exercise('x.. ..x x.x ... | x. .. xx ..', '    sticking: RLRLRLR\n');
  // definition: the last slot first
  expect(text(backwards(two, WHOLE))).toBe('snare .. xx .. .x | ... x.x x.. ..x');
  expect(backwards(two, WHOLE).sticking?.join('')).toBe('RLRLRLR');
  expect(text(backwards(two, { unit: 'bar', place: HERE }))).toBe('snare ... x.x x.. ..x | x. .. xx ..');
  expect(text(backwards(two, { unit: 'beat', place: HERE }))).toBe('snare x.. x.. x.x ... | x. .. xx ..');
});

it('[ST422] moves a pattern by a slot, round its ends', () => {
  const one = exercise('x.. ..x x.x ...');
  expect(text(shifted(one, WHOLE, 1))).toBe('snare .x. ... xx. x..');
  expect(text(shifted(one, WHOLE, -1))).toBe('snare ... .xx .x. ..x');
  expect(text(shifted(one, { unit: 'beat', place: HERE }, 1))).toBe('snare x.. x.. x.x ...');
});

it('[ST422] turning twice, and moving there and back, change nothing', () => {
  const cells = fc.array(fc.constantFrom('x', '.', 'x.', '.x', '..x', 'x.x', 'X..g', '.x.x'), {
    minLength: 4,
    maxLength: 4,
  });
  fc.assert(
    fc.property(cells, (beats) => {
      const one = exercise(beats.join(' '));
      expect(text(backwards(backwards(one, WHOLE), WHOLE))).toBe(text(one));
      expect(text(shifted(shifted(one, WHOLE, 1), WHOLE, -1))).toBe(text(one));
    }),
    { seed: 420, numRuns: 60 },
  );
});

it('[ST422] puts a pattern on another voice, which plays plainly what it has no such stroke for', () => {
  expect(text(ontoVoice(exercise('x.. ..X g.. d..'), 0, 'bass'))).toBe('bass x.. ..X g.. x..');
  const two = exercise('{snare: x . . ., bass: . x . .}');
  expect(ontoVoice(two, 0, 'bass')).toBe(two);
});

it('[ST422] takes bars and beats out and puts them in, voice by voice', () => {
  const two = exercise('{snare: x . . . | . x . ., bass: . . x . | . . . x}');
  const bar = snippetOf(two, 'bar', { bar: 1, beat: 0 });
  expect(text(withoutSnippet(two, { unit: 'bar', place: { bar: 1, beat: 0 } }))).toBe(
    'snare x . . .; bass . . x .',
  );
  expect(text(withSnippet(two, bar, { bar: 0, beat: 0 }))).toBe(
    'snare x . . . | . x . . | . x . .; bass . . x . | . . . x | . . . x',
  );
  const beat = snippetOf(exercise('x.x . . .'), 'beat', { bar: 0, beat: 0 });
  expect(text(withSnippet(two, beat, { bar: 1, beat: 3 }))).toBe(
    'snare x . . . | . x . x.x; bass . . x . | . . . ...',
  );
  expect(text(withoutSnippet(exercise('x x x x'), { unit: 'bar', place: HERE }))).toBe('snare . . . .');
  expect(text(withoutSnippet(exercise('x x x x'), { unit: 'beat', place: HERE }))).toBe('snare x . x x');
});

it('[ST422] a bar more leaves nothing behind that was written for single bars', () => {
  const one = exercise('x . . .', '    dynamics: p . . .\n    above: soft\n');
  const longer = withSnippet(one, snippetOf(one, 'bar', HERE), HERE);
  expect([longer.dynamics, longer.above]).toEqual([undefined, undefined]);
  expect(withSnippet(one, snippetOf(one, 'beat', HERE), HERE).above).toEqual(['soft']);
});
