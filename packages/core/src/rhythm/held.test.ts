/** What is held, from its text to what is spelled and played: `~` is not struck, what sounded before goes on. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { arbitraryHeldPattern, arbitraryMeter } from '../../../../internal/testing/arbitrary-lesson.ts';
import { problemsOf, read } from '../../test/reading.ts';
import { printLesson } from '../document/print.ts';
import { perform } from '../groove/perform.ts';
import { handedParts, withoutSlots } from '../lesson/handed.ts';
import { exerciseKey } from '../lesson/identity.ts';
import type { Form } from '../lesson/lesson.ts';
import { barPart, notateBar } from '../notation/notate.ts';
import { cell, isAccent, letterOf, rhythmKey } from './cell.ts';
import { changeMeter } from './change-meter.ts';
import { add, equals, ZERO } from './fraction.ts';
import { released } from './held.ts';
import { meter } from './meter.ts';
import { countStrokes, formatPattern, parsePattern } from './pattern.ts';

const once = (bars: number): Form => ({
  name: 'once',
  sections: [{ play: 'pattern', bars, ending: null }],
  repeat: 1,
  countInBars: 0,
});

const strokesOf = (text: string, exercise: number | null, bars: number, bpm = 60) =>
  perform(read(text), { exercise, form: once(bars), bpm: bpm as never }).strokes;

/** How long what is held lasts, in seconds; null for what is not held. */
const lengths = (text: string, exercise: number | null, bars: number) =>
  strokesOf(text, exercise, bars)
    .filter(({ voice }) => voice === 'snare')
    .map(({ mark, heldSeconds = null }) => [mark, heldSeconds && +heldSeconds.toFixed(6)]);

/** The notes of bars, one after another: value, marks of its heads, ties in and out. */
const spelled = (text: string, of = '4/4', voice: 'snare' | 'tom-high' = 'snare') => {
  const pattern = parsePattern(text);
  return pattern.bars.map((_, bar) =>
    notateBar([barPart(voice, pattern, bar)], meter(of))
      .layers.flatMap(({ groups }) => groups.flatMap(({ events }) => events))
      .map(({ kind, value, heads: [head] }) => {
        const ties = `${head?.isHeld ? '~' : ''}${head?.goesOn ? '_' : ''}`;
        return `${kind[0]}${value.base}${value.dots ? '.' : ''}${head ? (letterOf(head.mark) ?? '') : ''}${ties}`;
      })
      .join(' '),
  );
};

it('[LE7600] a roll or a sweep is held over beats and bar lines, printed as it is meant, another exercise than without', () => {
  const text =
    'title: T\nplayedWith: brushes\nexercises: [b ~ . x | x W~ ~~ ~. , w ~ ~ ~ | ~ . w ~, b . . x | x W. .. ..]\n';
  const lesson = read(text);
  const patterns = lesson.exercises.map(({ parts }) => parts[0] && formatPattern(parts[0].pattern));
  expect(patterns).toEqual(['b ~ . x | x W~ ~~ ~.', 'w ~ ~ ~ | ~ . w ~', 'b . . x | x W. .. ..']);
  expect(read(printLesson(lesson))).toEqual(lesson);
  expect(new Set(lesson.exercises.map(exerciseKey)).size).toBe(3);
  // A held place is no stroke: one hand for each stroke, and none for it.
  const handed = read('title: T\nexercises: [{pattern: b~ ~. x x, sticking: B R L}]\n').exercises[0];
  expect([handed?.sticking, countStrokes(handed?.parts[0]?.pattern.bars.flat() ?? [])]).toEqual([
    ['B', 'R', 'L'],
    3,
  ]);
  expect([isAccent('~'), letterOf('~')]).toEqual([false, null]);
  expect([rhythmKey(cell('b~.')), rhythmKey(cell('b..')), rhythmKey(cell('b~..'))]).toEqual([
    '3:0b,2.',
    '1:0b',
    '2:0b,1.',
  ]);
});

it('[LE7601] what is held where nothing goes on is refused with its place, and so is what stands by itself', () => {
  const one = (line: string) => problemsOf(`title: T\n${line}\n`);
  expect(one('exercises: [~ b ~ ~]')).toEqual([
    expect.stringMatching(/^2:13: .*"~" on snare.*goes on: b B w W.*write "\."/),
  ]);
  expect(one('exercises: [x ~ b ~]')).toEqual([expect.stringMatching(/^2:15: /)]);
  expect(one('exercises: ["b . ~~ x | ~ x x x"]')).toEqual([
    expect.stringMatching(/^2:18: /),
    expect.stringMatching(/^2:25: /),
  ]);
  // The ride has a bell for a buzz, and nothing goes on by being struck once.
  expect(one('groove: {ride: b ~ x x}')).toEqual([
    expect.stringMatching(/^2:18: .*"~" on ride.*one of \. x X g b B/),
  ]);
  // Each voice goes on from itself.
  expect(one('exercises: [{pattern: {snare: b . . ., tom-high: ~ ~ x x}}]')).toEqual([
    expect.stringMatching(/^2:50: .*"~" on tom-high.*goes on: b B \(/),
  ]);
  expect(one('vocabulary: [b~]')).toEqual([expect.stringMatching(/^2:15: /)]);
  expect(one('compose: {limits: {start: [b~]}}')).toHaveLength(1);
  expect(one('forms: {a: {sections: [{pattern: 1, ending: {voices: snare, cell: b~}}]}}')).toHaveLength(1);
  // Strokes that are in no vocabulary are warned of; what goes on is none.
  expect(one('vocabulary: [x, .]\nexercises: [x . ~ .]')[0]).toMatch(/"~"/);
});

it('[LE7602] what is held over a repeat is held into its bar each time, else it is refused', () => {
  const one = (pattern: string, repeats: string) =>
    problemsOf(`title: T\nexercises:\n  - {pattern: ${pattern}, repeats: ${repeats}}\n`);
  expect(one('b . . . | x . b ~ | ~ . . x', '1-2')).toEqual([]);
  expect(one('x . . b | ~ . . . | x . . .', '2')).toEqual([
    expect.stringMatching(/repeats: found bar 2, expected a bar that begins/),
  ]);
  expect(one('x . . b | ~ . . b | x . . .', '2')).toEqual([]);
  // definition: the second ending follows bar 1, not the first ending
  expect(one('x . . x | x . . b | ~ . . .', '{bars: 1, endings: [2, 3]}')).toEqual([
    expect.stringMatching(/bar 3/),
  ]);
});

it('[NO7600] what is held is a note tied to the one before it, as long as it sounds', () => {
  // common practice: a roll over beats is written as tied notes, each with the sign of the roll; the tied ones are not struck
  expect(spelled('b ~ . x')).toEqual(['n4b_ n4~ r4 n4x']);
  expect(spelled('x . b ~ | ~ . . .')).toEqual(['n4x r4 n4b_ n4~_', 'n4~ r4 r2']);
  // MusicXML 4.0, tie: every note but the last begins a tie, every note but the first ends one
  expect(spelled('b~.. xxxx b~~~ ~x..')).toEqual(['n8b r8 n16x n16x n16x n16x n4b_ n16~ n16x r8']);
  expect(spelled('b~~. . . .')).toEqual(['n8.b r16 r4 r2']);
  expect(spelled('.b~~ ~~.. . .')).toEqual(['r16 n8.b_ n8~ r8 r2']);
  // Five of seven are no single value: a quarter and a sixteenth, tied.
  expect(spelled('b~~~~.. . . .')).toEqual(['n4b_ n16~ r16 r16 r4 r2']);
  expect(spelled('b ~', '6/8', 'tom-high')).toEqual(['n4.b_ n4.~']);
});

it('[NO7600] a part that is held stands under stems of its own, since others are struck while it sounds', () => {
  const parts = [
    { voice: 'ride' as const, cells: ['x', 'x.x', 'x', 'x.x'].map(cell) },
    { voice: 'snare' as const, cells: ['b', '~', '.', '.'].map(cell) },
  ];
  const layers = notateBar(parts, meter('4/4')).layers.map(({ groups }) => [
    ...new Set(
      groups.flatMap(({ events }) => events.flatMap(({ heads }) => heads.map(({ voice }) => voice))),
    ),
  ]);
  expect(layers).toEqual([['ride'], ['snare']]);
});

it('[NO7600] every bar adds up, and a note has a tie on either side of each place that is held', () => {
  fc.assert(
    fc.property(
      arbitraryMeter.chain((of) => arbitraryHeldPattern('snare', of, 3).map((pattern) => ({ of, pattern }))),
      ({ of, pattern }) => {
        const bars = pattern.bars.map((_, bar) => notateBar([barPart('snare', pattern, bar)], of));
        const events = bars.flatMap((bar) =>
          bar.layers.flatMap(({ groups }) => groups.flatMap((group) => group.events)),
        );
        bars.forEach((bar) => {
          const own = bar.layers.flatMap(({ groups }) => groups.flatMap((group) => group.events));
          expect(
            equals(
              own.reduce((sum, { duration }) => add(sum, duration), ZERO),
              of.bar,
            ),
          ).toBe(true);
        });
        events.forEach(({ heads: [head] }, index) => {
          expect(events[index + 1]?.heads[0]?.isHeld === true, formatPattern(pattern)).toBe(
            head?.goesOn === true,
          );
        });
        const struck = events.filter(({ heads: [head] }) => head && !head.isHeld).length;
        expect(struck).toBe(countStrokes(pattern.bars.flat()));
      },
    ),
    { numRuns: 200, seed: 7600 },
  );
});

it('[GR7600] one stroke lasts as long as it is held, over beats, bars and its feel; nothing is struck again', () => {
  const brushes = 'title: T\nplayedWith: brushes\nfeel: even\ngroove: {}\n';
  // definition: at 60 a beat lasts a second
  expect(lengths(`${brushes}exercises: [b ~ . x | x b~ ~~ ~.]\n`, 1, 2)).toEqual([
    ['b', 2],
    ['x', null],
    ['x', null],
    ['b', 2.5],
  ]);
  expect(lengths(`${brushes}exercises: [x . . ., b . . w | ~ ~ ~ ~]\n`, 2, 2)).toEqual([
    ['b', null],
    ['w', 5],
  ]);
  // definition: in swing of 2:1 an off-beat eighth lies two thirds of the beat after it
  expect(lengths('title: T\nfeel: triplet\ngroove: {}\nexercises: [b~ ~. . .]\n', 1, 1)).toEqual([
    ['b', 1.666667],
  ]);
});

it('[GR7600] a groove, an ending and a rest end what is held; a repeat goes on as it is played', () => {
  const text =
    'title: T\nfeel: even\ngroove: {snare: b ~ ~ ~ | ~ ~ . x}\ncomping: tom-high\nexercises: [{pattern: x . . . | x . . ., fill: {bar: 2, beat: 2}}]\n';
  expect(lengths(text, null, 2)).toEqual([
    ['b', 6],
    ['x', null],
  ]);
  expect(lengths(text, 1, 2)).toEqual([['b', 5]]);
  const repeated =
    'title: T\nfeel: even\ngroove: {}\nexercises: [{pattern: x . . b | ~ . . b | ~ x . ., repeats: 2}]\n';
  expect(lengths(repeated, 1, 4)).toEqual([
    ['x', null],
    ['b', 2],
    ['b', 2],
    ['b', 2],
    ['x', null],
  ]);
  const ended = perform(read('title: T\nfeel: even\ngroove: {}\nexercises: [b ~ ~ ~]\n'), {
    exercise: 1,
    bpm: 60 as never,
    form: {
      ...once(1),
      sections: [{ play: 'pattern', bars: 1, ending: { beat: 4, cell: cell('X'), voices: ['snare'] } }],
    },
  });
  expect(ended.strokes.map(({ heldSeconds = null }) => heldSeconds)).toEqual([3, null]);
});

it('[CR7600] moved to another meter, feel, place or order, what is held goes on after what it is held from, or is silent', () => {
  expect(
    released([
      [cell('x~'), cell('b~')],
      [cell('~.'), cell('~x')],
    ])
      .flat()
      .map(({ text }) => text),
  ).toEqual(['x.', 'b~', '~.', '.x']);
  const to = (text: string, from: string, into: string) =>
    formatPattern(changeMeter(parsePattern(text), { from: meter(from), to: meter(into) }, 'silent').pattern);
  expect(to('b~ ~. x x', '4/4', '12/8')).toBe('b~~ ~.. x x');
  expect(to('b ~ x', '3/4', '6/8')).toBe('b~~ ~x.');
  fc.assert(
    fc.property(
      arbitraryMeter.chain((of) => arbitraryHeldPattern('snare', of, 2)),
      fc.array(fc.integer({ min: 0, max: 1 }), { minLength: 1, maxLength: 4 }),
      (pattern, order) => {
        const [part] = handedParts({ parts: [{ voice: 'snare', pattern }], sticking: null });
        const again = withoutSlots([{ voice: 'snare', bars: order.map((bar) => part?.bars[bar] ?? []) }])
          .parts[0];
        const bars = again?.pattern.bars ?? [];
        expect(released(bars)).toEqual(bars);
        expect(countStrokes(bars.flat())).toBe(countStrokes(order.flatMap((bar) => pattern.bars[bar] ?? [])));
      },
    ),
    { numRuns: 100, seed: 7600 },
  );
});
