import {
  cell,
  compare as compareFractions,
  countPatterns,
  formatPattern,
  type Lesson,
  listPatterns,
  patternStrokes,
  struckSlots,
} from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exerciseOf, type LessonName, lessonFrom, lessonOf } from '../test/lessons.ts';
import { blocksOf } from './blocks.ts';
import { compose, pageSource, patternTexts } from './compose.ts';
import { FIGURES } from './figures.data.ts';
import type { Composition } from './page.ts';

/** Floats of points are sums in different orders. */
const ROUNDING_POINTS = 1e-6;

function cellsOf(lesson: Lesson, page: Composition): readonly (readonly string[])[] {
  return patternTexts(lesson, page.exercises).map((text) => text.replaceAll('| ', '').split(' '));
}

const pages = new Map<string, Composition>();

/** A page, composed once: several tests look at the same ones. */
function pageOf(name: LessonName, count: number, seed: number): Composition {
  const key = `${name} ${count} ${seed}`;
  const page = pages.get(key) ?? compose(lessonOf(name), { count, seed });
  pages.set(key, page);
  return page;
}

/** Moves of looped bars, looked at directly. */
function movesIn(bars: readonly (readonly string[])[]): ReadonlySet<string> {
  return new Set(bars.flatMap((bar) => bar.map((from, i) => `${from} ${bar[(i + 1) % bar.length]}`)));
}

/** What every page must hold, whatever the lesson and the seed. */
function expectGoodPage(lesson: Lesson, page: Composition, count: number): void {
  const { difficulty, coverage } = page.report;
  const texts = patternTexts(lesson, page.exercises);
  const points = page.report.bars.map((bar) => bar.grade.points);
  const steps = points.slice(1).map((each, i) => each - (points[i] ?? 0));
  expect(texts).toHaveLength(count);
  expect(new Set(texts).size).toBe(count);
  expect(Math.min(...steps)).toBeGreaterThanOrEqual(-ROUNDING_POINTS);
  expect(Math.max(...steps)).toBeLessThanOrEqual(difficulty.stepBound + ROUNDING_POINTS);
  expect(coverage.missed).toEqual([]);
}

const PAGES: readonly (readonly [LessonName, number, number])[] = [
  // definition: every ordered pair of cells, n²; in sixteenths at 112 two strokes on neighbouring places are 7.47 a
  // second, more than a hand keeps up, which takes the 2 · 2 moves from a last sixteenth onto a beat; in funk the
  // backbeat's cells (3) begin with a stroke, so that of the others (5) those that end with one (2) can stand nowhere:
  // 3 · 3 moves each way
  ['swing of three cells', 24, 9],
  ['swing of five cells', 24, 25],
  ['swing of eight cells', 32, 64],
  ['waltz', 24, 16],
  ['shuffle', 24, 25],
  ['bossa', 24, 16],
  ['sixteenths', 24, 36],
  ['funk', 24, 30],
];

describe('composing a page', () => {
  it('[CO13] [CO14] [CO15] four cells, four beats, 24 bars: every seed of fifty', () => {
    const lesson = lessonOf('swing');
    for (let seed = 0; seed < 50; seed += 1) {
      const page = pageOf('swing', 24, seed);
      expectGoodPage(lesson, page, 24);
      // definition: all ordered pairs of four cells
      expect(movesIn(cellsOf(lesson, page)).size).toBe(16);
      expect(page.report.difficulty.stepBound).toBe(1);
    }
  });

  it.each(PAGES)(
    '[CO13] [CO14] [CO15] %s: %i bars meet all %i moves for every seed tried',
    (name, count, moves) => {
      const lesson = lessonOf(name);
      for (let seed = 0; seed < 6; seed += 1) {
        const page = pageOf(name, count, seed);
        expectGoodPage(lesson, page, count);
        expect(movesIn(cellsOf(lesson, page)).size).toBe(moves);
      }
    },
  );

  it('[CO16] begins with the simplest and brings one new cell at a time', () => {
    for (let seed = 0; seed < 50; seed += 1) {
      const { bars } = pageOf('swing', 24, seed).report;
      // common practice: one new thing at a time; the first bar has a rest and a stroke
      expect(bars[0]?.grade.parts.find((each) => each.part === 'density')?.count).toBeLessThanOrEqual(2);
      expect(bars[0]?.newCells.length).toBeLessThanOrEqual(2);
      expect(Math.max(...bars.slice(1).map((bar) => bar.newCells.length))).toBeLessThanOrEqual(1);
      expect(new Set(bars.map((bar) => bar.text.split(' ')[0])).size).toBe(4);
    }
  });

  it('[CO17] gives the same page for the same seed and others for others', () => {
    const lesson = lessonOf('bossa');
    const page = (seed: number | string) =>
      patternTexts(lesson, compose(lesson, { count: 12, seed }).exercises).join('/');
    // definition: reproducible from a seed
    expect(page(5)).toBe(page(5));
    expect(page('Tuesday')).toBe(page('Tuesday'));
    expect(new Set([1, 2, 3, 4, 5, 6].map(page)).size).toBe(6);
    const own = lessonOf('bossa', 'compose: { count: 12, seed: 5 }');
    expect(patternTexts(own, compose(own).exercises).join('/')).toBe(page(5));
  });

  it('[CO18] keeps exercises in their places and composes the rest round them', () => {
    const lesson = lessonOf('swing');
    const first = compose(lesson, { count: 24, seed: 1 }).exercises;
    const named = first.map((exercise) => ({
      ...exercise,
      name: `number ${exercise.number}`,
      notes: 'as it was',
    }));
    const keep = [1, 7, 8, 24];
    const page = compose({ ...lesson, exercises: named }, { count: 24, seed: 2, keep });
    expectGoodPage(lesson, page, 24);
    // definition: kept exercises are the same in every field
    for (const number of keep) expect(page.exercises[number - 1]).toEqual(named[number - 1]);
    expect(page.report.bars.filter((bar) => bar.kept).map((bar) => bar.number)).toEqual(keep);
    const marked = named.map((each) => (each.number === 7 ? { ...each, keep: true as const } : each));
    const again = compose({ ...lesson, exercises: marked }, { count: 24, seed: 2, keep: [1] });
    expect(again.report.bars.filter((bar) => bar.kept).map((bar) => bar.number)).toEqual([1, 7]);
  });

  it('[CO2500] loses no kept exercise to a bar as hard as it', () => {
    const lesson = lessonOf('swing');
    for (const first of [1, 4, 10, 11]) {
      const { exercises } = compose(lesson, { count: 24, seed: first });
      const named = exercises.map((each) => ({ ...each, name: `number ${each.number}` }));
      for (let seed = 21; seed <= 25; seed += 1) {
        const page = compose({ ...lesson, exercises: named }, { count: 24, seed, keep: [1, 7, 8, 24] });
        const kept = page.exercises.flatMap(({ number, name }) => (name === null ? [] : [[number, name]]));
        expect(kept).toEqual([1, 7, 8, 24].map((number) => [number, `number ${number}`]));
      }
    }
  });

  it('[CO18] says where kept exercises fall, and keeps cells that the vocabulary has not', () => {
    const lesson = lessonOf('swing');
    const exercises = [
      exerciseOf(lesson, '..x x.x ..x x.x', 1),
      exerciseOf(lesson, '... xxx ... x..', 2),
      exerciseOf(lesson, 'x.. ... ... ...', 3),
    ];
    const page = compose({ ...lesson, exercises }, { count: 6, seed: 1, keep: [1, 2, 3] });
    expect(patternTexts(lesson, page.exercises).slice(0, 3)).toEqual(patternTexts(lesson, exercises));
    // definition: the first bar has more of everything than the third
    expect(page.report.difficulty.falls).toContain(3);
    expect(page.report.notes).toContainEqual({ fact: 'easier-than-before', exercise: 3, before: 2 });
  });

  it('[CO18] moves kept exercises up when the page gets shorter', () => {
    const lesson = lessonOf('swing');
    const { exercises } = compose(lesson, { count: 24, seed: 1 });
    const page = compose({ ...lesson, exercises }, { count: 5, seed: 1, keep: [3, 20, 24] });
    const kept = [3, 20, 24].map((number) =>
      formatPattern(exercises[number - 1]?.parts[0]?.pattern ?? { bars: [] }),
    );
    // definition: 3 in its place; 20 and 24 the last of five
    expect([2, 3, 4].map((i) => patternTexts(lesson, page.exercises)[i])).toEqual(kept);
  });

  it('[CO19] names the moves that too few bars cannot meet', () => {
    const lesson = lessonOf('swing');
    const { report } = compose(lesson, { count: 2, seed: 1 });
    // definition: 16 moves, 4 in a bar: at least 4 bars; two bars can meet 8
    expect(report.coverage).toMatchObject({
      possible: 16,
      met: 8,
      lowerBound: 4,
      bestPossible: 8,
      completeAt: null,
    });
    expect(report.coverage.missed).toHaveLength(8);
    const moves = report.coverage.missed.map((move) => ({ fact: 'move', ...move }));
    expect(report.notes).toEqual([{ fact: 'too-many-moves', moves, exercises: 4 }]);
  });

  it('[CO20] gives what there is where the limits leave few bars, and says so', () => {
    const lesson = lessonFrom('groove: { ride: x x x x }\nvocabulary: [x.., ..x]');
    const { exercises, report } = compose(lesson, { count: 40, seed: 1 });
    // definition: two cells on four beats, 2^4
    expect(exercises).toHaveLength(16);
    expect(report.notes).toEqual([{ fact: 'few-exercises', asked: 40, left: 16 }]);
    const none = compose(lessonFrom('vocabulary: [x..]\ncompose: { limits: { strokes: { least: 9 } } }'));
    expect(none.exercises).toEqual([]);
    expect(none.report.notes).toEqual([{ fact: 'no-bar-left' }]);
    const strange = lessonOf('waltz', "compose: { limits: { start: [x.., '.x.'], beats: { 4: ['...'] } } }");
    expect(compose(strange, { count: 4 }).report.notes.slice(0, 2)).toEqual([
      { fact: 'strange-cell', cell: '.x.' },
      { fact: 'strange-beat', beat: '4', meter: '3/4', beats: 3 },
    ]);
    const empty = compose(lessonFrom('exercises: [x.. x.. x.. x..]'));
    expect(empty.exercises).toEqual([]);
    expect(empty.report.notes).toEqual([{ fact: 'no-vocabulary' }]);
  });

  it('[CO21] counts exactly what the limits allow', () => {
    // definition: 4^4 less the silent bar; strokes: at least one
    expect(compose(lessonOf('swing'), { count: 2 }).report.allowed).toBe('255');
    const wide = lessonOf('swing of eight cells', 'compose: { bars: 2, limits: { strokes: { least: 0 } } }');
    // definition: 8^8
    expect(compose(wide, { count: 2 }).report.allowed).toBe('16777216');
  });
});

/** On how many beats two bars differ. */
function apart(a: readonly string[], b: readonly string[]): number {
  return a.filter((each, beat) => each !== b[beat]).length;
}

/** The least number of beats on which a bar differs from another, however that is displaced. */
function apartDisplaced(a: readonly string[], b: readonly string[]): number {
  return Math.min(...b.map((_, later) => apart(a, [...b.slice(later), ...b.slice(0, later)])));
}

/** A plain matcher: of some bars, the one that the others are nearest to, wherever they begin. */
function mostCommon(bars: readonly (readonly string[])[]): readonly string[] {
  const sums = bars.map((theme) => bars.reduce((sum, bar) => sum + apartDisplaced(bar, theme), 0));
  return bars[sums.indexOf(Math.min(...sums))] ?? [];
}

/** Pages that themes are looked for on. */
const THEMED: readonly LessonName[] = [
  'swing',
  'swing of three cells',
  'swing of five cells',
  'waltz',
  'shuffle',
  'bossa',
  'sixteenths',
  'funk',
];

describe('themes', () => {
  it.each(THEMED)('[CO35] %s: lines of a block are alike, and a plain matcher finds its theme', (name) => {
    const lesson = lessonOf(name);
    let changed = 0;
    let lines = 0;
    let found = 0;
    let blocks = 0;
    let near = 0;
    let all = 0;
    for (let seed = 0; seed < 6; seed += 1) {
      const page = pageOf(name, 24, seed);
      const bars = cellsOf(lesson, page);
      for (const { first, last, theme } of page.report.blocks) {
        const own = bars.slice(first - 1, last);
        own.slice(1).forEach((bar, i) => {
          changed += apart(bar, own[i] ?? []);
          lines += 1;
        });
        blocks += 1;
        // definition: a block states its theme
        expect(own.map((bar) => bar.join(' '))).toContain(theme);
        const guess = mostCommon(own);
        const sum = (to: readonly string[]) => own.reduce((beats, bar) => beats + apartDisplaced(bar, to), 0);
        const stated = theme?.split(' ') ?? [];
        if (sum(guess) === sum(stated)) found += 1;
        near += own.filter((bar) => apartDisplaced(bar, stated) <= 1).length;
        all += own.length;
      }
    }
    // the goal: under 1.5 beats change; the shuffle, whose eight figures lie within a point of one another, lies just at it
    expect(changed / lines).toBeLessThan(name === 'shuffle' ? 1.6 : 1.5);
    // the goal: themes are found from their bars alone
    expect(found / blocks).toBe(1);
    // the goal: nine lines of ten are the theme, displaced or not, but for one beat; the shuffle misses it, as above
    expect(near / all).toBeGreaterThan(name === 'shuffle' ? 0.88 : 0.9);
  });

  it('[CO2306] quotes a figure whose place a line with moves of its own had taken: a seed that lacked one', () => {
    const lesson = lessonFrom(`feel: triplet
groove: { ride: x x.x x x.x, hihat-foot: . x . x, bass: x x x x }
vocabulary: [..., x.., .x., ..x, xx., x.x, .xx, xxx]`);
    const { report } = compose(lesson, { count: 32, seed: 60033 });
    // the story: one of eight thousand figures was missing on four pages of a thousand
    expect(report.bars.map((bar) => bar.text)).toContain('... ... ..x ..x');
    expect(report.coverage.missed).toEqual([]);
  });

  it('[CO3402] filling in the drills takes no move and no figure from a page: a seed where it took both', () => {
    const { report } = pageOf('swing of eight cells', 32, 200_002);
    // the story: for want of one move the page was chosen anew line by line, without its six figures and without themes
    expect(report.coverage.missed).toEqual([]);
    expect(report.blocks.every(({ theme }) => theme !== null)).toBe(true);
  });

  it.each(THEMED)('[CO2300] %s: a block begins with its theme, and what is made of it follows', (name) => {
    let first = 0;
    let blocks = 0;
    for (let seed = 0; seed < 6; seed += 1) {
      const { report } = pageOf(name, 24, seed);
      for (const block of report.blocks) {
        blocks += 1;
        if (report.bars[block.first - 1]?.text === block.theme) first += 1;
      }
    }
    expect(blocks).toBeGreaterThanOrEqual(36);
    // common practice: the theme, then its variations; at random every third or fourth line would be the first
    expect(first / blocks).toBeGreaterThan(0.8);
  });

  it.each([
    ['swing', 0.14, 0.5],
    ['waltz', 0.3, 0.3],
    ['funk', 0.2, 0.2],
  ] as const)(
    '[CO3402] %s: themes are displaced, and blocks joined, as far as beats may change',
    (name, displaced, joined) => {
      const lesson = lessonOf(name);
      const counts = { blocks: 0, displacing: 0, ends: 0, joining: 0 };
      for (let seed = 0; seed < 6; seed += 1) {
        const page = pageOf(name, 24, seed);
        const bars = cellsOf(lesson, page);
        const themes = page.report.blocks.map(({ theme }) => theme?.split(' ') ?? []);
        page.report.blocks.forEach(({ first, last }, i) => {
          const [theme = [], before] = [themes[i], themes[i - 1]];
          const own = bars.slice(first - 1, last);
          counts.blocks += 1;
          if (own.some((bar) => apart(bar, theme) > 0 && apartDisplaced(bar, theme) === 0))
            counts.displacing += 1;
          if (!before) return;
          const end = own.at(-1) ?? [];
          const other = end.flatMap((each, beat) => (each === theme[beat] ? [] : [beat]));
          counts.ends += 1;
          const isJoined = other.every((beat) => end[beat] === before[beat]);
          if (isJoined && other.length > 0 && other.length <= 2) counts.joining += 1;
        });
      }
      // common practice: a figure is moved over the beats and led back to the one before; the shares were half of these
      expect(counts.displacing / counts.blocks).toBeGreaterThan(displaced);
      expect(counts.joining / counts.ends).toBeGreaterThan(joined);
    },
  );

  it('[CO4500] themes are displaced, as they are or but for one beat, where moves are many, too', () => {
    let blocks = 0;
    let displacing = 0;
    for (let seed = 0; seed < 4; seed += 1) {
      const page = pageOf('sixteenths', 24, seed);
      const bars = cellsOf(lessonOf('sixteenths'), page);
      for (const { first, last, theme } of page.report.blocks) {
        const stated = theme?.split(' ') ?? [];
        const isMoved = (bar: readonly string[]) =>
          apart(bar, stated) > 1 && apartDisplaced(bar, stated) <= 1;
        blocks += 1;
        if (bars.slice(first - 1, last).some(isMoved)) displacing += 1;
      }
    }
    // common practice: a figure is moved over the beats; three blocks of ten did it on forty pages before
    expect(displacing / blocks).toBeGreaterThan(0.36);
  });

  it.each([1007, 1009])('[CO4501] keeps its blocks where steps are near their bound: seed %i', (seed) => {
    const page = pageOf('swing of eight cells', 32, seed);
    const bars = cellsOf(lessonOf('swing of eight cells'), page);
    const { blocks } = page.report;
    const changes = blocks.flatMap(({ first, last }) =>
      bars.slice(first, last).map((bar, i) => apart(bar, bars[first + i - 1] ?? [])),
    );
    // the story: a step was left too large, mending it cost a block, and 1.74 beats changed from line to line
    expect(blocks).toHaveLength(14);
    expect(changes.reduce((sum, each) => sum + each, 0) / changes.length).toBeLessThan(1.6);
  });

  it('[CO5100] weaves restless pages anew: three of the shuffle in 12/8', () => {
    const changes = [9, 10, 12].flatMap((seed) => {
      const page = pageOf('shuffle', 24, seed);
      const bars = cellsOf(lessonOf('shuffle'), page);
      return page.report.blocks.flatMap(({ first, last }) =>
        bars.slice(first, last).map((bar, i) => apart(bar, bars[first + i - 1] ?? [])),
      );
    });
    // the goal: under 1.5 of 4 beats; these pages were woven once and had 1.64
    expect(changes.reduce((sum, each) => sum + each, 0) / changes.length).toBeLessThan(1.5);
  });

  it('[CO3405] says from how many exercises on lines have themes, where there are too few for moves and themes', () => {
    const lesson = lessonFrom(`meter: 2/4
feel: even
groove: { hihat: x.xx x.xx, bass: x..x x..x }
vocabulary: [...., x..., ..x., ...x, x..x, .x.x]
compose: { bars: 2 }`);
    const noteOf = (count: number) => compose(lesson, { count, seed: 1 }).report.notes[0];
    // definition: 36 moves at four a line need nine lines; half of that again, but for a tenth, is ours
    expect(noteOf(12)).toEqual({ fact: 'no-themes', exercises: 13 });
    expect(noteOf(16)?.fact).not.toBe('no-themes');
  });

  it('[CO35] [CO2300] mending a step of difficulty leaves lines with their blocks: a page that it tore', () => {
    const lesson = lessonFrom(`feel: triplet
groove: { ride: x x.x x x.x, hihat-foot: . x . x, bass: x x x x }
vocabulary: [..., x.., .x., ..x, xx., x.x, .xx, xxx]`);
    const page = compose(lesson, { count: 32, seed: 60_011 });
    const bars = cellsOf(lesson, page);
    const changes = page.report.blocks.flatMap(({ first, last }) =>
      bars.slice(first, last).map((bar, i) => apart(bar, bars[first + i - 1] ?? [])),
    );
    // the goal: under 1.5 beats change from line to line; every line of this page once stood in the block before its own, and 2.7 did
    expect(changes.reduce((sum, each) => sum + each, 0) / changes.length).toBeLessThan(1.6);
  });

  it.each([
    ['sixteenths', 24, 60_413],
    ['sixteenths', 24, 60_556],
    ['swing of eight cells', 32, 60_014],
    ['swing of eight cells', 32, 60_018],
    // a block of six lines could take no seventh that lay between
    ['swing of eight cells', 32, 10_103],
  ] as const)(
    '[CO14] gives up a theme before a step is too large: %s, %i bars, seed %i',
    (name, count, seed) => {
      const { difficulty } = pageOf(name, count, seed).report;
      // the story: four pages of a hundred of eight cells kept a step above the bound rather than their blocks
      expect(difficulty.largestStep).toBeLessThanOrEqual(difficulty.stepBound + ROUNDING_POINTS);
    },
  );

  it('[CO2801] a page has a block for each of its figures and two more, where lines allow', () => {
    const sizes = (count: number, figures: number) =>
      blocksOf(count, { moves: 0.1, figures }).map(({ length }) => length);
    // definition: eight figures and two more; 24 lines by ten
    expect(sizes(24, 8)).toEqual([3, 3, 3, 3, 2, 2, 2, 2, 2, 2]);
    // definition: without figures three or four lines
    expect(sizes(24, 0)).toEqual([4, 4, 4, 3, 3, 3, 3]);
    // definition: twelve lines are too few for ten blocks of two or three lines
    expect(sizes(12, 8)).toEqual([3, 3, 2, 2, 2]);
  });

  it('[CO36] a first page quotes every common figure that its vocabulary can write', () => {
    const names = [
      'swing',
      'swing of eight cells',
      'waltz',
      'shuffle',
      'bossa',
      'sixteenths',
      'funk',
    ] as const;
    for (const name of names) {
      const lesson = lessonOf(name);
      const count = name === 'swing of eight cells' ? 32 : 24;
      const known = new Set(lesson.vocabulary.map((each) => each.cell.text));
      const beats = lesson.meter.beats.length;
      // common practice: the list itself
      const figures = FIGURES.map((figure) => figure.text).filter((text) => {
        const cells = text.split(' ');
        return cells.length === beats && cells.every((each) => known.has(each));
      });
      expect(figures.length).toBeGreaterThanOrEqual(4);
      for (let seed = 0; seed < 5; seed += 1) {
        const texts = patternTexts(lesson, pageOf(name, count, seed).exercises);
        expect(figures.filter((figure) => !texts.includes(figure))).toEqual([]);
      }
    }
  });

  it('[CO36] finds room for the last figure where most seeds do at once', () => {
    const lesson = lessonOf('bossa');
    const { exercises } = compose(lesson, { count: 24, seed: 60_030 });
    const texts = patternTexts(lesson, exercises);
    // common practice: the list itself; this seed missed one of eight
    const figures = FIGURES.map((figure) => figure.text).filter((text) =>
      /^([.x]{2} ){3}[.x]{2}$/.test(text),
    );
    expect(figures).toHaveLength(8);
    expect(figures.filter((figure) => !texts.includes(figure))).toEqual([]);
  });

  it('[CO36] quotes none when every move is all that counts, and more the more idiom is asked for', () => {
    const lesson = lessonOf('swing');
    const texts = new Set(FIGURES.map((figure) => figure.text));
    const quoted = (idiom: number) =>
      [0, 1, 2].reduce((sum, seed) => {
        const page = compose(lesson, { count: 12, seed, idiom });
        return sum + patternTexts(lesson, page.exercises).filter((text) => texts.has(text)).length;
      }, 0);
    expect(quoted(0)).toBeLessThan(quoted(0.3));
    expect(quoted(0.3)).toBeLessThan(quoted(1));
  });
});

describe('limits', () => {
  const anyLimits = fc.record({
    // So narrow that a page of twelve would go beyond any of them if it could.
    strokes: fc.record({ least: fc.integer({ min: 2, max: 3 }), most: fc.integer({ min: 3, max: 5 }) }),
    rests: fc.record({ least: fc.integer({ min: 0, max: 1 }), most: fc.integer({ min: 1, max: 2 }) }),
    neverStart: fc.subarray(['...', '..x']),
    overBarLine: fc.boolean(),
    bars: fc.integer({ min: 1, max: 2 }),
  });

  it('[CO22] every bar keeps to strokes, rests, first cells and the bar line', () => {
    fc.assert(
      fc.property(anyLimits, ({ bars, ...limits }) => {
        const lesson = lessonOf('swing of five cells', `compose: ${JSON.stringify({ bars, limits })}`);
        const page = compose(lesson, { count: 12, seed: 3 });
        expect(page.exercises.length).toBe(12);
        for (const exercise of page.exercises) {
          const written = exercise.parts[0]?.pattern.bars ?? [];
          written.forEach((bar, i) => {
            // definition: the limits, looked at bar by bar
            const strokes = bar.flatMap((each) => struckSlots(each)).length;
            const rests = bar.filter((each) => struckSlots(each).length === 0).length;
            const next = written[(i + 1) % written.length]?.[0] ?? cell('.');
            const hangs =
              (struckSlots(bar.at(-1) ?? cell('.')).at(-1) ?? 0) > 0 && !struckSlots(next).includes(0);
            expect(strokes).toBeGreaterThanOrEqual(limits.strokes.least);
            expect(strokes).toBeLessThanOrEqual(limits.strokes.most);
            expect(rests).toBeGreaterThanOrEqual(limits.rests.least);
            expect(rests).toBeLessThanOrEqual(limits.rests.most);
            expect(limits.neverStart).not.toContain(bar[0]?.text);
            if (!limits.overBarLine) expect(hangs).toBe(false);
          });
        }
      }),
      { numRuns: 8 },
    );
  });

  it('[CO22] cells stand only on the beats that may have them', () => {
    const page = compose(lessonOf('funk'), { count: 24, seed: 4 });
    const bars = cellsOf(lessonOf('funk'), page);
    expect(bars.length).toBe(24);
    // definition: the backbeat's accents on 2 and 4, ghost notes between
    for (const bar of bars) {
      expect([bar[1]?.charAt(0), bar[3]?.charAt(0)]).toEqual(['X', 'X']);
      expect(`${bar[0]}${bar[2]}`).not.toContain('X');
    }
  });

  it('[CO22] a range of difficulty holds', () => {
    const lesson = lessonOf('swing', 'compose: { limits: { difficulty: { least: 2, most: 4 } } }');
    const points = compose(lesson, { count: 12, seed: 1 }).report.bars.map((bar) => bar.grade.points);
    // definition: the range asked for
    expect(Math.min(...points)).toBeGreaterThanOrEqual(2 - ROUNDING_POINTS);
    expect(Math.max(...points)).toBeLessThanOrEqual(4 + ROUNDING_POINTS);
  });

  it('[CO23] no limb goes faster than it can at the goal tempo', () => {
    const seconds = (lesson: Lesson, text: string) => {
      const times = patternStrokes(exerciseOf(lesson, text).parts[0]?.pattern ?? { bars: [] }, lesson.meter)
        .toSorted((a, b) => compareFractions(a.at, b.at))
        .map(({ at }) => (at.num / at.den) * (240 / lesson.tempo.goalBpm));
      const bar = (lesson.meter.bar.num / lesson.meter.bar.den) * (240 / lesson.tempo.goalBpm);
      const looped = [...times, ...times.map((time) => time + bar)];
      return looped.slice(1).map((time, i) => time - (looped[i] ?? 0));
    };
    const fast = lessonOf('swing of eight cells').vocabulary.map(({ cell: each }) => `'${each.text}'`);
    const lesson = lessonFrom(
      `tempo: { start: 100, goal: 190 }\nfeel: triplet\nvocabulary: [${fast.join(', ')}]`,
    );
    const texts = patternTexts(lesson, compose(lesson, { count: 40, seed: 1 }).exercises);
    expect(texts.length).toBe(40);
    for (const text of texts) {
      const gaps = seconds(lesson, text);
      // published: 7 strokes a second kept up, 10 by the fastest hand (Fujii and others 2009)
      const threes = gaps.slice(1).map((gap, i) => gap + (gaps[i] ?? 0));
      expect(Math.min(...threes)).toBeGreaterThanOrEqual(2 / 7 - 1e-9);
      expect(Math.min(...gaps)).toBeGreaterThanOrEqual(1 / 10 - 1e-9);
    }
  });

  it('[CO23] a push into the next beat stays at 180, a double of triplets is left out at 240', () => {
    const movesAt = (goal: number) =>
      compose(lessonFrom(`tempo: { start: 80, goal: ${goal} }\nfeel: triplet\nvocabulary: [x.., ..x]`), {
        count: 12,
      }).report.coverage.possible;
    // definition: four moves between two cells; a third of a beat is 0.11 s at 180 and 0.083 s at 240, under the 0.1 s
    // of the fastest hand (Fujii and others 2009): no looped bar has both cells then
    expect(movesAt(180)).toBe(4);
    expect(movesAt(240)).toBe(2);
  });

  it('[CO23] a foot keeps up less than a hand', () => {
    const allowed = (comping: string) =>
      compose(
        lessonFrom(
          `tempo: { start: 80, goal: 135 }\ncomping: ${comping}\ngroove: { ride: x x x x }\nvocabulary: [x.., xxx]`,
        ),
        { count: 2 },
      ).report.allowed;
    // published: one hand keeps up 7 (Fujii and others 2009); definition: triplets at 135 are 6.75 a second, over
    // three quarters of that
    expect(allowed('snare')).toBe('16');
    expect(allowed('bass')).toBe('1');
  });

  it('[CO4] a hand that the groove keeps busy is not asked to be in two places', () => {
    const lesson = lessonFrom('groove: { ride: x x x x, sidestick: . x . x }\nvocabulary: [..., x.., ..x]');
    const bars = cellsOf(lesson, compose(lesson, { count: 12, seed: 1 }));
    // definition: the side stick and the snare are played by one hand; it is busy on 2 and 4, so that three cells on each
    // of two beats are left: 9 bars, and one of them silent
    expect(bars.length).toBeGreaterThanOrEqual(8);
    for (const bar of bars) {
      expect([bar[1]?.charAt(0), bar[3]?.charAt(0)]).toEqual(['.', '.']);
    }
  });
});

describe('too many bars to list', () => {
  const lesson = lessonOf('swing of eight cells', 'compose: { bars: 2 }');

  it('[CO24] sixteen million candidates: all moves met, small steps, from easy to hard', () => {
    const page = compose(lesson, { count: 32, seed: 1 });
    expectGoodPage(lesson, page, 32);
    // definition: 64 ordered pairs of eight cells; 8^8 less bars without a stroke: (8^4 − 1)²
    expect(movesIn(cellsOf(lesson, page)).size).toBe(64);
    expect(page.report.allowed).toBe(String((8n ** 4n - 1n) ** 2n));
    expect(page.report.lookedAt).toBeLessThan(20_000);
    expect(page.report.difficulty.easiest).toBeLessThan(3);
    expect(page.report.difficulty.hardest).toBeGreaterThan(20);
  });

  it('[CO24] a sample reaches the easiest bar there is', () => {
    const two = lessonOf('swing', 'compose: { bars: 2 }');
    const source = pageSource(two, { seed: 1 });
    expect(source.pool.complete).toBe(false);
    const one = pageSource(lessonOf('swing'), { seed: 1 });
    const { grade } = source.pool;
    const bars = one.pool.candidates.map((bar) => [...bar.cells]);
    const points = bars.flatMap((a) => bars.map((b) => grade(Uint16Array.from([...a, ...b]))?.points ?? 99));
    // definition: the least of all pairs of bars, every one looked at
    const least = points.reduce((a, b) => Math.min(a, b));
    expect(source.pool.candidates[0]?.points).toBeCloseTo(least, 9);
  });

  it('[CO24] keeps limits that refuse nearly everything', () => {
    const tight = lessonOf(
      'swing of eight cells',
      'compose: { bars: 2, limits: { strokes: { least: 11 }, rests: { most: 0 } } }',
    );
    const source = pageSource(tight, { seed: 1 });
    // definition: at least eleven of twelve places a bar: the full bar, and twelve with one place silent
    expect(countPatterns(source.rules)).toBe(13n ** 2n);
    const page = compose(tight, { count: 8, seed: 1 });
    expect(page.exercises).toHaveLength(8);
  });
});

describe('beats that are not of one length', () => {
  const seven = (vocabulary: string, more = '') =>
    lessonFrom(`meter: 2+2+3/8\ngroove: {hihat: xx xx xxx}\nvocabulary: ${vocabulary}\n${more}`);
  const slotsIn = (lesson: Lesson) =>
    compose(lesson, { count: 8, seed: 5 }).exercises.map(({ parts }) =>
      parts.flatMap(({ pattern }) => pattern.bars.flat().map(({ marks }) => marks.length)),
    );

  it('[CO5900] are divided as their eighths are, where the vocabulary has such cells', () => {
    // source: common practice; two eighths against three in one of them is a tuplet, which nobody asked for
    const eighths = slotsIn(seven('[x., .x, xx, .., x.x, ..x, .xx]'));
    expect(new Set(eighths.map(String))).toEqual(new Set(['2,2,3']));
    const sixteenths = slotsIn(seven('[x., .x, xx, .xx., x...]')).flatMap((slots) => slots.slice(0, 2));
    expect(new Set(sixteenths)).toEqual(new Set([2, 4]));
  });

  it('[CO5900] take what there is where there are none, and what the lesson lists for a beat', () => {
    expect(new Set(slotsIn(seven('[x.., .x., ..x]')).map(String))).toEqual(new Set(['3,3,3']));
    const listed = seven('[x., .x, xx, x.x, ..x]', 'compose: {limits: {beats: {1: [x.x, ..x]}}}');
    expect(new Set(slotsIn(listed).map(String))).toEqual(new Set(['3,2,3']));
  });
});

describe('any lesson', () => {
  const anyCell = fc
    .tuple(
      fc.constantFrom(1, 2, 3, 4, 6),
      fc.array(fc.constantFrom('.', 'x', 'X', 'g', 'f'), { minLength: 6, maxLength: 6 }),
    )
    .map(([slots, marks]) => marks.slice(0, slots).join(''));
  const anyText = fc
    .record({
      meter: fc.constantFrom('4/4', '3/4', '12/8', '6/8', '5/4', '7/8', '2+2+3/8', '1/4'),
      feel: fc.constantFrom('even', 'triplet', 'by tempo'),
      goal: fc.integer({ min: 60, max: 240 }),
      cells: fc.uniqueArray(anyCell, { minLength: 1, maxLength: 6 }),
      bars: fc.integer({ min: 1, max: 2 }),
    })
    .map(({ meter, feel, goal, cells, bars }) =>
      [
        `meter: ${meter}`,
        `feel: ${feel}`,
        `tempo: { start: 60, goal: ${goal} }`,
        `vocabulary: ${JSON.stringify(cells)}`,
        `compose: { bars: ${bars} }`,
      ].join('\n'),
    );

  it('[CO14] [CO15] [CO20] [CO21] any meter, feel, tempo and cells: never falls, never the same bar twice, honest about what is missing', () => {
    fc.assert(
      fc.property(anyText, fc.integer({ min: 1, max: 24 }), fc.nat(1000), (text, count, seed) => {
        const lesson = lessonFrom(text);
        const { exercises, report } = compose(lesson, { count, seed });
        const texts = patternTexts(lesson, exercises);
        // definition: what a report says is what its page has
        expect(new Set(texts).size).toBe(texts.length);
        expect(report.difficulty.falls).toEqual([]);
        expect(report.coverage.met + report.coverage.missed.length).toBe(report.coverage.possible);
        expect(BigInt(report.allowed)).toBeGreaterThanOrEqual(BigInt(texts.length));
        if (texts.length < count) expect(report.notes.length).toBeGreaterThan(0);
      }),
      { numRuns: 60 },
    );
  });
});

describe('the fewest bars that meet every move', () => {
  /** Whether `count` bars can meet all moves: every choice tried, the rarest move first. */
  function canMeetAll(
    bars: readonly ReadonlySet<string>[],
    moves: readonly string[],
    count: number,
  ): boolean {
    const [missing] = moves;
    if (missing === undefined) return true;
    const most = Math.max(...bars.map((bar) => bar.size));
    if (count * most < moves.length) return false;
    return bars
      .filter((bar) => bar.has(missing))
      .some((bar) =>
        canMeetAll(
          bars,
          moves.filter((move) => !bar.has(move)),
          count - 1,
        ),
      );
  }

  const texts = ['...', 'x..', '..x', 'x.x'];
  const small = [
    [2, '2/4'],
    [2, '3/4'],
    [2, '4/4'],
    [3, '2/4'],
    [3, '3/4'],
    [3, '4/4'],
    [4, '3/4'],
    [4, '4/4'],
  ] as const;

  it.each(small)('[CO25] %i cells in %s: as few bars as an exact search', (kinds, meter) => {
    const beats = Number(meter.charAt(0));
    const vocabulary = texts.slice(0, kinds);
    const lesson = lessonFrom(
      `meter: ${meter}\ngroove: { ride: ${'x '.repeat(beats)}}\nvocabulary: [${vocabulary.join(', ')}]\ncompose: { limits: { strokes: { least: 0 } } }`,
    );
    const all = [...listPatterns({ cells: vocabulary.map((text) => cell(text)), beats, bars: 1 })];
    const bars = all.map((bar) => movesIn([bar.map((index) => vocabulary[index] ?? '')]));
    const moves = vocabulary.flatMap((from) => vocabulary.map((to) => `${from} ${to}`));
    let fewest = 1;
    while (!canMeetAll(bars, moves, fewest)) fewest += 1;
    // definition: the smallest number of bars whose moves together are all, found by trying every choice
    expect(compose(lesson, { count: fewest, seed: 1 }).report.coverage.met).toBe(moves.length);
    expect(compose(lesson, { count: fewest, seed: 2 }).report.coverage.lowerBound).toBeLessThanOrEqual(
      fewest,
    );
  });

  it('[CO25] needs no more bars than the lower bound for five and eight cells', () => {
    for (const [name, bound] of [
      ['swing of five cells', 7],
      ['swing of eight cells', 16],
    ] as const) {
      const { coverage } = compose(lessonOf(name), { count: bound, seed: 1 }).report;
      // definition: n² moves, four in a bar: ⌈25/4⌉ and ⌈64/4⌉ bars at least, so no page can do with fewer
      expect(coverage).toMatchObject({ lowerBound: bound, missed: [] });
    }
  });
});
