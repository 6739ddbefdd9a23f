import { formatPattern, type Lesson, parsePattern, perform, struckSlots } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { factInEnglish } from '../../../internal/testing/in-english.ts';
import { exerciseOf, lessonFrom, lessonOf } from '../test/lessons.ts';
import { compose, patternTexts } from './compose.ts';
import { gradeExercise } from './grade.ts';
import { composeReview } from './review.ts';
import { variationsOf } from './variations.ts';
import { composeWeakMove } from './weak-move.ts';

const swing = lessonOf('swing');

function pointsOf(page: ReturnType<typeof compose>): readonly number[] {
  return page.report.bars.map((bar) => bar.grade.points);
}

function expectRising(points: readonly number[]): void {
  expect(points.slice(1).every((each, i) => each >= (points[i] ?? 0) - 1e-6)).toBe(true);
}

/** Lessons that questions and answers are composed for. */
const PHRASED = ['swing', 'waltz', 'bossa'] as const;

describe('two bars', () => {
  it('[CO29] composes exercises of two bars', () => {
    const page = compose(lessonOf('bossa', 'compose: { bars: 2 }'), { count: 16, seed: 2 });
    // definition: two bars of four beats
    expect(
      page.exercises.map((exercise) => exercise.parts[0]?.pattern.bars.map((bar) => bar.length)),
    ).toEqual(new Array(16).fill([4, 4]));
    expectRising(pointsOf(page));
    expect(page.report.coverage.missed).toEqual([]);
  });

  it.each(PHRASED)('[CO30] %s: an answer begins with a motif that sounds, and comes to rest', (name) => {
    const lesson = lessonOf(name);
    for (const seed of [3, 4, 5, 6, 7]) {
      const page = compose(lesson, { phrase: 'call-and-answer', bars: 2, count: 12, seed });
      expect(page.exercises).toHaveLength(12);
      expectRising(pointsOf(page));
      for (const exercise of page.exercises) {
        const [call = [], answer = []] = exercise.parts[0]?.pattern.bars ?? [];
        const half = Math.floor(call.length / 2);
        const strokes = (beats: typeof call) => beats.flatMap((each) => struckSlots(each)).length;
        const last = (bar: typeof call) => struckSlots(bar.at(-1) ?? { text: '', marks: [] });
        // definition: the same first half, in which something sounds; two beats or more differ; an off-beat at the end
        // of the call, silence at that of the answer
        expect(answer.slice(0, half)).toEqual(call.slice(0, half));
        expect(strokes(call.slice(0, half))).toBeGreaterThanOrEqual(Math.min(2, half));
        expect(answer.filter((each, beat) => each.text !== call[beat]?.text).length).toBeGreaterThanOrEqual(
          2,
        );
        expect(last(call).some((slot) => slot > 0)).toBe(true);
        expect(last(answer)).toEqual([]);
      }
    }
  });
});

/** The bars of each phrase on a page, as texts. */
function barTexts(page: ReturnType<typeof compose>): readonly (readonly string[])[] {
  return page.report.bars.map((bar) => bar.text.split(' | '));
}

describe('phrases', () => {
  it('[CO50] a a b a: b is a, displaced, and leads back', () => {
    const page = compose(swing, { phrase: 'aaba', bars: 4, count: 12, seed: 8 });
    expect(page.exercises).toHaveLength(12);
    expectRising(pointsOf(page));
    for (const [a = '', second, b = '', last] of barTexts(page)) {
      expect([second, last]).toEqual([a, a]);
      const turns = [0, 1, 2, 3].map((later) => [
        ...a.split(' ').slice(later),
        ...a.split(' ').slice(0, later),
      ]);
      const apart = turns.map((turn) => turn.filter((cell, beat) => cell !== b.split(' ')[beat]).length);
      // definition: at most one beat from some displacement of a, and not a itself; open at its end, where a breathes
      expect(Math.min(...apart)).toBeLessThanOrEqual(1);
      expect(apart[0]).toBeGreaterThanOrEqual(2);
      expect(b.endsWith('x')).toBe(true);
      expect(a.endsWith('...')).toBe(true);
    }
  });

  it('[CO50] a sentence says its idea, again with a change, its motif alone, and closes', () => {
    const page = compose(swing, { phrase: 'sentence', bars: 4, count: 12, seed: 8 });
    expect(page.exercises).toHaveLength(12);
    for (const [idea = '', again = '', motif, close] of barTexts(page)) {
      const cells = idea.split(' ');
      const head = cells.slice(0, 2).join(' ');
      // definition: one beat changed after the motif; the motif twice; the motif and silence
      expect(again.split(' ').filter((cell, beat) => cell !== cells[beat])).toHaveLength(1);
      expect(again.startsWith(head)).toBe(true);
      expect(motif).toBe(`${head} ${head}`);
      expect(close).toBe(`${head} ... ...`);
    }
  });

  it.each(['call-and-answer', 'aaba', 'sentence'] as const)(
    '[CO50] %s in eight bars ends in a breath',
    (phrase) => {
      for (const name of PHRASED) {
        const lesson = lessonOf(name);
        const page = compose(lesson, { phrase, bars: 8, count: 8, seed: 2 });
        const silence = lesson.vocabulary[0]?.cell.text ?? '';
        expect(page.exercises).toHaveLength(8);
        expectRising(pointsOf(page));
        // definition: the last beat is silent
        for (const bars of barTexts(page)) expect(bars[7]?.split(' ').at(-1)).toBe(silence);
      }
    },
  );

  it('[CO50] every form of a lesson plays a phrase from its first bar to its last', () => {
    const lesson = lessonOf('swing');
    for (const bars of [4, 8]) {
      const { exercises } = compose(lesson, { phrase: 'sentence', bars, count: 4, seed: 2 });
      expect(lesson.forms.length).toBeGreaterThan(2);
      for (const form of lesson.forms) {
        const played = perform({ ...lesson, exercises }, { exercise: 1, form }).bars.flatMap(
          (bar) => bar.patternBar ?? [],
        );
        // definition: whole phrases, bar after bar
        expect(played.length % bars).toBe(0);
        expect(played).toEqual(played.map((_, i) => i % bars));
      }
    }
  });

  it('[CO50] takes the nearest number of bars that a form has, and what the lesson says', () => {
    const own = lessonOf('swing', 'compose: { phrase: sentence, bars: 8, count: 4 }');
    // definition: eight bars of four beats
    expect(barTexts(compose(own)).map((bars) => bars.length)).toEqual([8, 8, 8, 8]);
    expect(barTexts(compose(swing, { phrase: 'aaba', count: 2 })).map((bars) => bars.length)).toEqual([4, 4]);
  });

  it.each(['call-and-answer', 'aaba', 'sentence'] as const)(
    '[CO2304] %s: no bar is far harder than the one before it, and no phrase than the phrase before',
    (phrase) => {
      const lesson = lessonOf('sixteenths');
      const { report } = compose(lesson, { phrase, bars: 8, count: 12, seed: 1 });
      for (const { text } of report.bars) {
        const alone = text.split(' | ').map((bar) => gradeExercise(lesson, exerciseOf(lesson, bar)).points);
        const jumps = alone.slice(1).map((points, i) => points - (alone[i] ?? points));
        // definition: three steps of difficulty; a step is a point
        expect(Math.max(...jumps)).toBeLessThanOrEqual(3 + 1e-9);
      }
      // definition: a step a bar
      expect(report.difficulty.largestStep).toBeLessThanOrEqual(8);
      expect(report.coverage.missed).toEqual([]);
    },
  );

  it('[CO51] a bar that comes again is nothing new to remember', () => {
    const memory = (text: string) =>
      gradeExercise(swing, exerciseOf(swing, text)).parts.find((each) => each.part === 'memory')?.count;
    // definition: beats of later bars that the nearest bar before has not
    expect(memory('x.. ..x ... ...')).toBe(0);
    expect(memory('x.. ..x ... ... | x.. ..x ... ...')).toBe(0);
    expect(memory('x.. ..x ... ... | x.. ..x x.x ... | ... x.. ..x ... | x.. ..x ... ...')).toBe(4);
    expect(memory('x.. ..x ... ... | ... ... ..x x.. | ... ... ..x x..')).toBe(4);
  });
});

describe('a weak move', () => {
  it('[CO31] is in every bar, from the simplest bar on', () => {
    const page = composeWeakMove(swing, { from: '..x', to: '...' }, { count: 12, seed: 1 });
    expectRising(pointsOf(page));
    for (const text of patternTexts(swing, page.exercises)) {
      // definition: the move, the bar looped
      expect(`${text} ${text}`).toContain('..x ...');
    }
    // common practice: with the ride's skip note on 2 or on 4, and no other stroke, are the easiest places for it
    expect(['... ..x ... ...', '... ... ... ..x']).toContain(patternTexts(swing, page.exercises)[0]);
  });

  it('[CO31] refuses a cell that the vocabulary has not', () => {
    expect(() => composeWeakMove(swing, { from: '.x.', to: '...' })).toThrow(
      expect.objectContaining({ cell: '.x.', cells: ['...', 'x..', '..x', 'x.x'] }),
    );
  });
});

describe('a review', () => {
  const sheet = (title: string, seed: number): Lesson => ({
    ...swing,
    title,
    exercises: compose(swing, { count: 16, seed }).exercises,
  });

  it('[CO32] mixes earlier sheets: none twice, no neighbours from one sheet, difficulty rising', () => {
    const sheets = [sheet('First', 1), sheet('Second', 2), sheet('Third', 3)];
    const review = composeReview(swing, sheets, { count: 12, seed: 1 });
    expect(review).toHaveLength(12);
    expectRising(review.map((each) => each.points));
    const texts = review.map(({ exercise }) => formatPattern(exercise.parts[0]?.pattern ?? { bars: [] }));
    expect(new Set(texts).size).toBe(12);
    // definition: neighbours come from different sheets
    expect(review.slice(1).every((each, i) => each.sheet !== review[i]?.sheet)).toBe(true);
    const [first] = review;
    expect(first?.exercise.name).toBe(`${sheets[first?.sheet ?? 0]?.title} ${first?.from}`);
    expect(review.map((each) => each.exercise.number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
  });

  it('[CO32] takes what keeps neighbours apart later on too', () => {
    const of = (title: string, ...texts: readonly string[]): Lesson => ({
      ...swing,
      title,
      exercises: texts.map((text, i) => exerciseOf(swing, text, i + 1)),
    });
    const easy = '... ... ... x..';
    const hard = '..x ..x ..x ..x';
    const sheets = [of('Both', easy, hard), of('Easy', easy)];
    for (let seed = 0; seed < 8; seed += 1) {
      // definition: the hard bar stands on the first sheet alone, so the easy one has to come from the second
      expect(composeReview(swing, sheets, { count: 2, seed }).map(({ sheet }) => sheet)).toEqual([1, 0]);
    }
  });

  it('[CO32] leaves out sheets in another meter and gives what there is', () => {
    const waltz = lessonOf('waltz');
    const other = { ...waltz, exercises: compose(waltz, { count: 8 }).exercises };
    // definition: three bars in three four cannot be played over four four
    expect(composeReview(swing, [other], { count: 4, seed: 1 })).toEqual([]);
    expect(composeReview(swing, [sheet('Only', 4)], { count: 99, seed: 1 })).toHaveLength(16);
  });
});

describe('variations', () => {
  it('[CO33] adds, drops and shifts strokes', () => {
    const found = variationsOf(swing, parsePattern('x.. ..x ... ...'));
    const of = (kind: string) =>
      found
        .filter((each) => each.what.fact === `variation-${kind}`)
        .map((each) => formatPattern(each.pattern));
    // definition: by hand
    expect(of('fewer').toSorted()).toEqual(['... ..x ... ...', 'x.. ... ... ...']);
    expect(of('more').toSorted()).toEqual([
      'x.. ..x ... ..x',
      'x.. ..x ... x..',
      'x.. ..x x.. ...',
      'x.. x.x ... ...',
    ]);
    expect(of('beat-later')).toEqual(['... x.. ..x ...']);
    // definition: the vocabulary has no middle triplet, which all others would need
    expect(found).toHaveLength(7);
    const wide = variationsOf(lessonOf('swing of eight cells'), parsePattern('x.. ..x ... ...'));
    const ofWide = (kind: string) =>
      wide
        .filter((each) => each.what.fact === `variation-${kind}`)
        .map((each) => formatPattern(each.pattern));
    expect(ofWide('backwards')).toEqual(['x.. ... .x. ...']);
    // definition: ten strokes of twelve are further than three points from two
    expect(ofWide('exchanged')).toEqual([]);
    expect(
      found.some(
        ({ what }) => what.fact === 'variation-fewer' && factInEnglish(what) === 'without the let of 2',
      ),
    ).toBe(true);
    expectRising(found.map((each) => each.points));
  });

  it('[CO33] gives each once, never silence, never what cannot be played', () => {
    const fast = lessonFrom('tempo: { start: 120, goal: 200 }\nfeel: triplet\nvocabulary: [x..]');
    const texts = variationsOf(fast, parsePattern('x.. ... ... ...')).map((each) =>
      formatPattern(each.pattern),
    );
    // definition: one stroke leaves nothing to drop; triplets at 200 are ten a second, so pairs only
    expect(new Set(texts).size).toBe(texts.length);
    expect(texts).not.toContain('... ... ... ...');
    expect(
      variationsOf(fast, parsePattern('xx. ... ... ...')).map((each) => formatPattern(each.pattern)),
    ).not.toContain('xxx ... ... ...');
    // definition: no shift by a slot where beats have different slots
    expect(
      variationsOf(swing, parsePattern('x. ..x . .')).some(
        (each) => each.what.fact === 'variation-slot-later',
      ),
    ).toBe(false);
  });
});
