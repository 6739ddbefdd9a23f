import { editLesson, formatPattern, parseLesson, printLesson } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { factInEnglish } from '../../../internal/testing/in-english.ts';
import { lessonOf } from '../test/lessons.ts';
import { composeTerm, type TermPage, termFacts } from './term.ts';
import { withTerm } from './term-text.ts';

const LESSON = lessonOf('swing of five cells');
const TERM = composeTerm(LESSON, { pages: 8, count: 12, seed: 3 });

function textsOf({ exercises }: TermPage): readonly string[] {
  return exercises.map(({ parts }) => parts.map(({ pattern }) => formatPattern(pattern)).join());
}

/** The moves of a page, its bars looped. */
function movesOf(page: TermPage): ReadonlySet<string> {
  return new Set(
    textsOf(page).flatMap((text) => {
      const cells = text.split(' ');
      return cells.map((from, beat) => `${from} ${cells[(beat + 1) % cells.length]}`);
    }),
  );
}

const named = ({ from, to }: { readonly from: string; readonly to: string }) => `${from} ${to}`;

describe('a term', () => {
  it('[CO55] brings every move once, and no page has one that has not come', () => {
    const come = new Set<string>();
    for (const page of TERM) {
      for (const move of page.newMoves) come.add(named(move));
      // definition: the moves that have come so far
      for (const move of movesOf(page)) expect(come).toContain(move);
    }
    // definition: 5² ordered pairs of cells
    expect(come.size).toBe(25);
    expect(TERM.map(({ newCells }) => newCells.length).reduce((sum, each) => sum + each, 0)).toBe(5);
  });

  it('[CO55] comes back to a move on the next page, two pages after that, then four', () => {
    const [first] = TERM;
    const back = (move: string) =>
      TERM.flatMap(({ page, returning }) => (returning.map(named).includes(move) ? [page] : []));
    const kept = (first?.newMoves ?? []).map(named).map(back);
    expect(kept.length).toBeGreaterThan(5);
    // definition: 1 + 1, + 2, + 4; a page that could not meet one puts it off by a page
    for (const pages of kept) {
      expect(pages[0]).toBeLessThanOrEqual(3);
      expect((pages[1] ?? 9) - (pages[0] ?? 0)).toBeGreaterThanOrEqual(2);
    }
    expect(kept.filter((pages) => pages.join() === '2,4,8').length).toBeGreaterThan(kept.length / 2);
  });

  it('[CO55] has no bar twice, rises on every page, and is written as sections that read back', () => {
    const texts = TERM.flatMap(textsOf);
    // definition: eight pages of twelve, each bar once
    expect(texts).toHaveLength(96);
    expect(new Set(texts).size).toBe(96);
    for (const { report } of TERM) expect(report.difficulty.falls).toEqual([]);
    const text = withTerm(printLesson(LESSON), LESSON, TERM, factInEnglish);
    const { lesson, problems } = parseLesson(text, 'term.lesson.yaml');
    expect(problems).toEqual([]);
    expect(lesson?.sections.map(({ heading }) => heading)).toEqual(
      [1, 2, 3, 4, 5, 6, 7, 8].map((n) => `Page ${n}`),
    );
    expect(lesson?.sections.map(({ exercises }) => exercises.length)).toEqual(new Array(8).fill(12));
  });

  it('[CO2303] stays behind what is written, which is the first section then', () => {
    const written = editLesson(printLesson(LESSON), ['exercises'], ['x.. x.. x.. x..']);
    const before = parseLesson(written, 'written').lesson;
    if (!before) throw new Error('the lesson has problems');
    const { lesson, problems } = parseLesson(
      withTerm(written, before, TERM, factInEnglish, 'behind'),
      'term',
    );
    expect(problems).toEqual([]);
    expect(lesson?.sections).toHaveLength(9);
    const [first, second] = lesson?.sections ?? [];
    expect(first?.exercises.map(({ parts }) => formatPattern(parts[0]?.pattern ?? { bars: [] }))).toEqual([
      'x.. x.. x.. x..',
    ]);
    expect(second?.heading).toBe('Page 1');
    expect(second?.exercises).toHaveLength(12);
  });

  it('[CO2305] says new cells as they are counted, and by their text what counting does not tell', () => {
    const [first] = TERM;
    if (!first) throw new Error('the term has no page');
    // definition: in triplets the second place is counted trip, the third let
    const facts = termFacts({
      ...first,
      newCells: ['...', 'x..', '..x', 'x.x', 'g.x'],
      newMoves: [],
      returning: [],
    });
    expect(facts.map(factInEnglish)).toEqual([
      'New here: a silent beat; the beat; the let alone; the beat and its let; g.x.',
    ]);
  });
});
