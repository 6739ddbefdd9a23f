import { describe, expect, it } from 'vitest';
import { ENGLISH_SHEET } from '../../../../internal/testing/in-english.ts';
import { engraver, fonts, lessonOf } from '../../test/setup.ts';
import { expectApart, expectInside, flat, layOut, textsOf, tilesOf } from '../../test/sheets.ts';
import { engraveBars } from './bar-tiles.ts';

const text = (said: string, more = '') => `title: T
groove: {hihat: x x x x, bass: x . x . | x . . x}
sheet: {legend: false, tickBoxes: false${more}}
exercises:
  - {pattern: x x . . | . . x x | x x . . | . . x x, ${said}}
`;

const glyphs = (said: string, more = '') =>
  tilesOf(layOut(text(said, more))).flatMap(({ drawing, heads }) =>
    heads.some(({ id }) => id.startsWith('e1')) || heads.length === 0
      ? drawing.shapes.flatMap(({ glyph }) => (glyph?.startsWith('E50') ? [glyph] : []))
      : [],
  );

describe('repeats on the page', () => {
  it('[EN380] stand as signs, brackets and words over their bars', () => {
    const sheet = layOut(text('repeats: {bars: 1-2, endings: [3, 4]}'));
    const lines = flat(sheet.pages[0]?.items ?? []).filter((item) => item.kind === 'line');
    const texts = textsOf(sheet);
    expect(texts.filter((each) => /^[12]\.$/.test(each))).toEqual(['1.', '2.']);
    // definition: the first bracket has both its ends, the second one only the first
    expect(
      lines.filter((line) => line.kind === 'line' && line.x === line.x2 && line.y !== line.y2),
    ).toHaveLength(3);
    expect(textsOf(layOut(text('repeats: {bars: 1-4, times: 3}')))).toContain('play 3 times');
    expectInside(sheet);
    expectApart(sheet);
    const [title] = tilesOf(sheet).filter(({ heads }) => heads.some(({ id }) => id.startsWith('e1-b')));
    expect(title?.description).toContain('Bars 1-2 are played twice. Ending of time 1: bars 3.');
  });

  it('[EN380] a bar that stands as a sign has no notes, where what is printed is the same', () => {
    // standard: SMuFL 1.4, U+E500 repeat1Bar, U+E501 repeat2Bars
    expect(glyphs('barRepeats: 3-4')).toEqual(['E501']);
    const same = text('barRepeats: 2').replace('. . x x |', 'x x . . |');
    const compact = tilesOf(layOut(same)).flatMap(({ drawing }) => drawing.shapes.map(({ glyph }) => glyph));
    expect(compact).toContain('E500');
    // The bass drum has another second bar: with the groove, the notes stand.
    const full = tilesOf(layOut(same, { staff: 'full' })).flatMap(({ drawing }) =>
      drawing.shapes.map(({ glyph }) => glyph),
    );
    expect(full).not.toContain('E500');
  });

  it('[EN380] on a screen each bar has its notes, its repeat signs and its bracket', () => {
    const lesson = lessonOf(text('repeats: {bars: 1-2, endings: [3, 4]}'));
    const [, first] = engraveBars(lesson, { engraver, fonts, words: ENGLISH_SHEET });
    expect(first?.own.map(({ ending }) => ending)).toEqual([
      null,
      null,
      { text: '1.', isOpen: false },
      { text: '2.', isOpen: true },
    ]);
    expect(first?.full).toHaveLength(4);
    const signs = lessonOf(text('barRepeats: 3-4'));
    const bars = engraveBars(signs, { engraver, fonts, words: ENGLISH_SHEET })[1]?.own ?? [];
    expect(bars.map(({ tile }) => tile.heads.length)).toEqual([2, 2, 2, 2]);
  });
});
