/** Holding a roll or a sweep by keys and tools: what is pressed goes on after what can go on, and nowhere else. */
import { barPart, formatPattern, meter, notateBar, parsePattern, strikeOf } from '@shedbook/core';
import { expect, it } from 'vitest';
import { backwards, shifted } from '../edit/rearrange.ts';
import { divideBeat, held, type Line, setMark } from '../edit/strokes.ts';
import { layOutBar } from '../notation/layout.ts';
import { lineAfterKey } from './keys.ts';

const lineOf = (text: string): Line => ({ pattern: parsePattern(text), sticking: null });
const at = (beat: number, slot = 0) => ({ bar: 0, beat, slot });
const textOf = (line: Line | null) => line && formatPattern(line.pattern);
const playable = (mark: Parameters<typeof strikeOf>[1]) => strikeOf('snare', mark) !== null;

it('[ST7600] H holds what goes on before a slot, and does nothing where nothing does', () => {
  const line = lineOf('b . x .');
  expect(textOf(lineAfterKey('h', line, at(1), playable))).toBe('b ~ x .');
  expect(textOf(lineAfterKey('~', line, at(1), playable))).toBe('b ~ x .');
  // A stroke is not held, and a roll that is over goes on no more.
  expect(lineAfterKey('h', line, at(3), playable)).toBeNull();
  expect(lineAfterKey('h', line, at(0), playable)).toBeNull();
  expect(held(lineOf('b . . .'), at(2))).toBeNull();
});

it('[ST7600] hands stay with their strokes; what was held from a stroke is silent without it', () => {
  const line: Line = { pattern: parsePattern('b~ ~x b~ .'), sticking: ['R', 'L', 'B'] };
  expect(setMark(line, at(1), '.')).toEqual({
    pattern: parsePattern('b~ .x b~ .'),
    sticking: ['R', 'L', 'B'],
  });
  expect(setMark(line, at(0), '.')).toEqual({ pattern: parsePattern('.. .x b~ .'), sticking: ['L', 'B'] });
  expect(setMark(line, at(1), 'x').sticking).toHaveLength(4);
});

it('[ST7600] a beat divided anew, moved or read backwards holds as long as before', () => {
  expect(textOf(divideBeat(lineOf('b~ ~. x .'), at(0), 3))).toBe('b~~ ~. x .');
  expect(textOf(divideBeat(lineOf('b ~ x .'), at(0), 4))).toBe('b~~~ ~ x .');
  expect(textOf(divideBeat(lineOf('b ~ x .'), at(1), 3))).toBe('b ~~~ x .');
  const exercise = (text: string) => ({
    name: null,
    notes: null,
    parts: [{ voice: 'snare' as const, pattern: parsePattern(text) }],
    sticking: null,
  });
  const whole = { unit: 'exercise', place: at(0) } as const;
  const first = ({ parts: [part] }: ReturnType<typeof exercise>) => part && formatPattern(part.pattern);
  expect(first(backwards(exercise('b ~ ~ x'), whole) as never)).toBe('x b ~ ~');
  expect(first(shifted(exercise('b ~ ~ x'), whole, 1) as never)).toBe('x b ~ ~');
  // What is moved over the end comes in at the beginning, where nothing goes on.
  expect(first(shifted(exercise('x . b ~'), whole, 1) as never)).toBe('. x . b');
});

it('[ST7601] a held place is drawn as a tie, over the bar line too', () => {
  const pattern = parsePattern('x . b ~ | ~ x . .');
  const drawn = (bar: number) =>
    layOutBar(notateBar([barPart('snare', pattern, bar)], meter('4/4')), 'one line');
  // common practice: one tie between two notes, and one over the bar line, whose end stands before the first note
  expect([drawn(0).ties.length, drawn(1).ties.length]).toEqual([2, 1]);
  const [within] = drawn(0).ties;
  expect((within?.x2 ?? 0) - (within?.x1 ?? 0)).toBeCloseTo(96, 9);
  expect(drawn(1).ties[0]?.x1).toBeLessThan(drawn(1).ties[0]?.x2 ?? 0);
});
