import { formatPattern, handsOf, parseLesson } from '@shedbook/core';
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

const TWO_HANDED = {
  pattern: '{snare: x . x . | . . x ., tom-high: . x . xx | x . . x}',
  more: `    sticking: {snare: R L R, tom-high: L L R R L}
    dynamics: p . . < | f
    above: first | second
    fill: {bar: 2, beat: 3}
`,
};

const two = () => exercise(TWO_HANDED.pattern, TWO_HANDED.more);
const handsIn = (of: Unnumbered) => of.parts.map((_, part) => handsOf(of, part)?.join('') ?? null);
const saidIn = ({ dynamics, above, fill }: Unnumbered) => ({ dynamics, above, fill });

it('[ST2900] hands of every voice go with their strokes, whatever is done with them', () => {
  // definition: read from its end, the last stroke comes first with the hand that plays it
  expect(handsIn(backwards(two(), WHOLE))).toEqual(['RLR', 'LRRLL']);
  expect(text(backwards(two(), WHOLE))).toBe('snare . x . . | . x . x; tom-high x . . x | xx . x .');
  expect(handsIn(backwards(two(), { unit: 'bar', place: HERE }))).toEqual(['LRR', 'RLLRL']);
  // definition: what leaves the stretch at one end comes in at the other, with its hand
  expect(handsIn(shifted(two(), WHOLE, 1))).toEqual(['RLR', 'LLLRR']);
  expect(handsIn(shifted(shifted(two(), WHOLE, 1), WHOLE, -1))).toEqual(handsIn(two()));
  expect(handsIn(ontoVoice(two(), 1, 'tom-low'))).toEqual(['RLR', 'LLRRL']);
  // definition: a foot has no hands
  expect(handsIn(ontoVoice(two(), 0, 'bass'))).toEqual([null, 'LLRRL']);
  expect(handsIn(withoutSnippet(two(), { unit: 'beat', place: HERE }))).toEqual(['RLR', 'LRRL']);
  expect(handsIn(withoutSnippet(two(), { unit: 'bar', place: HERE }))).toEqual(['R', 'RL']);
});

it('[ST2900] a beat or bar that is put in brings its hands; strokes without any take turns', () => {
  const bar = snippetOf(two(), 'bar', HERE);
  expect(handsIn(withSnippet(two(), bar, HERE))).toEqual(['RLRLR', 'LLRLLRRL']);
  expect(
    handsIn(withSnippet(exercise('. . . .'), snippetOf(two(), 'beat', { bar: 0, beat: 2 }), HERE)),
  ).toEqual(['L']);
  const plain = snippetOf(exercise('xx x . .'), 'beat', { bar: 0, beat: 0 });
  expect(handsIn(withSnippet(exercise('x . . x', '    sticking: R R\n'), plain, HERE))).toEqual(['RLRR']);
});

it('[ST2901] what is said of bars and beats stays at its place, and goes with its bar', () => {
  for (const after of [backwards(two(), WHOLE), shifted(two(), WHOLE, 1), ontoVoice(two(), 1, 'tom-low')])
    expect(saidIn(after)).toEqual(saidIn(two()));
  const longer = withSnippet(two(), snippetOf(two(), 'bar', HERE), HERE);
  expect(longer.above).toEqual(['first', 'first', 'second']);
  expect(longer.dynamics?.map(({ bar, mark }) => [bar, mark])).toEqual([
    [0, 'p'],
    [0, null],
    [1, 'p'],
    [1, null],
    [2, 'f'],
  ]);
  expect(longer.fill).toEqual({ bar: 2, beat: 2, silences: null });
  const shorter = withoutSnippet(longer, { unit: 'bar', place: { bar: 1, beat: 0 } });
  expect(saidIn(shorter)).toEqual(saidIn(two()));
  const repeated = exercise('x . . . | x . . . | . . . x', '    repeats: 1-2\n    barRepeats: 2\n');
  expect(withoutSnippet(repeated, { unit: 'bar', place: { bar: 2, beat: 0 } }).repeats).toEqual(
    repeated.repeats,
  );
  expect(shifted(repeated, WHOLE, 1).barRepeats).toBeUndefined();
  expect(shifted(repeated, WHOLE, 1).repeats).toEqual(repeated.repeats);
});
