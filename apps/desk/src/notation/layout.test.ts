import { meter, notateBar, parsePattern, type Voice } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { type BarLayout, BEAT_LEAD, beatEdges, layOutBar } from './layout.ts';
import { headOf } from './staff.ts';

const FOUR = meter('4/4');

function lay(text: string, voice: Voice = 'snare'): BarLayout {
  const cells = parsePattern(text).bars[0] ?? [];
  return layOutBar(notateBar([{ voice, cells }], FOUR), 'one line');
}

function count(layout: BarLayout, glyph: string): number {
  return layout.glyphs.filter((each) => each.glyph === glyph).length;
}

describe('a bar on the screen', () => {
  it('[ST17] puts heads at equal distances on their slots', () => {
    const heads = lay('xxx x . xxxx')
      .glyphs.filter((each) => each.glyph === 'blackHead')
      .map((each) => each.x);
    const [a, b, c, beat2, d, e] = heads as [number, number, number, number, number, number];
    // definition: a beat of three slots is three equal parts; four of four
    expect(b - a).toBeCloseTo(32, 9);
    expect(c - b).toBeCloseTo(32, 9);
    expect(beat2 - a).toBeCloseTo(96, 9);
    expect(e - d).toBeCloseTo(24, 9);
    expect(d - a).toBeCloseTo(3 * 96, 9);
    expect(a).toBeLessThan(BEAT_LEAD);
  });

  it('[ST18] draws the values of the spelled bar', () => {
    // common practice: a last triplet alone is a quarter rest and an eighth under a bracket of three
    const triplet = lay('..x ... x x');
    expect([count(triplet, 'eighthFlagUp'), count(triplet, 'quarterRest')]).toEqual([1, 2]);
    expect(triplet.texts).toEqual([expect.objectContaining({ text: '3', kind: 'tuplet' })]);
    const sixteenths = lay('xxxx x . .');
    // one beam and a second under it, each in three pieces
    expect(sixteenths.lines.filter((line) => line.width === 5)).toHaveLength(6);
    expect(count(sixteenths, 'halfRest')).toBe(1);
    expect(count(lay('. . . .'), 'wholeRest')).toBe(1);
  });

  it('[ST18] draws accents, ghost notes, crosses and hands', () => {
    expect(count(lay('X . . .'), 'accent')).toBe(1);
    expect(count(lay('g . . .'), 'openParenthesis')).toBe(1);
    expect(count(lay('x . . .', 'ride'), 'crossHead')).toBe(1);
    expect(lay('o . . .', 'hihat').rings).toHaveLength(1);
    const hands = layOutBar(
      notateBar(
        [{ voice: 'snare', cells: parsePattern('xx x . .').bars[0] ?? [], sticking: ['R', 'L', 'R'] }],
        FOUR,
      ),
      'one line',
    );
    expect(hands.texts.map((text) => text.text)).toEqual(['R', 'L', 'R']);
  });
});

describe('a flag in the lesson room', () => {
  /** Ink of glyphs in units, from the origin: left, right, top, bottom. source: Leland's outlines in glyphs.data.ts */
  const INK: Readonly<Record<string, readonly [number, number, number, number]>> = {
    eighthFlagUp: [0, 11.6, -0.5, 32.7],
    sixteenthFlagUp: [0, 11.2, -0.5, 32.8],
    halfRest: [0, 13, -5.3, 0.2],
    quarterRest: [0, 9.4, -16.1, 13.3],
    eighthRest: [0, 11.1, -8.2, 10.2],
    sixteenthRest: [0, 13.8, -8.2, 20.3],
    blackHead: [0, 13, -5.3, 5.3],
  };
  const boxes = ({ glyphs }: BarLayout) =>
    glyphs.map(({ glyph, x, y }) => {
      const [left, right, top, bottom] = INK[glyph] ?? [0, 0, 0, 0];
      return { glyph, left: x + left, right: x + right, top: y + top, bottom: y + bottom };
    });

  it('[ST1502] strikes neither a rest, nor the next head, nor the bar line with its repeat sign', () => {
    const cells = ['..x', 'x.x', '.x.', 'x..x', '.x..', '..x.', '...x', 'x..', '.x', '.'];
    const struckIn = (text: string, quarterWidth: number) => {
      const bar = notateBar([{ voice: 'snare', cells: parsePattern(text).bars[0] ?? [] }], FOUR);
      const layout = layOutBar(bar, 'one line', 'start', { quarterWidth, liftsFlags: true });
      const ink = boxes(layout);
      // the bar line and the dots before it: as bar-drawing.tsx draws them
      const line = { glyph: 'barLine', left: layout.width - 7, right: layout.width, top: -10, bottom: 10 };
      const struck = ink
        .filter(({ glyph }) => glyph.includes('Flag'))
        .flatMap((flag) =>
          [...ink, line].filter(
            (other) =>
              other.left > flag.left &&
              other.left < flag.right &&
              other.top < flag.bottom &&
              other.bottom > flag.top,
          ),
        );
      return struck.map(({ glyph }) => `${text}: ${glyph}`);
    };
    const pairs = cells.flatMap((one) => cells.map((two) => [one, two] as const));
    const struck = pairs.flatMap(([one, two]) =>
      // a quarter as closeQuarter sets it: 22 units a slot
      struckIn(`${one} ${two} ${two} ${one}`, Math.max(56, 22 * Math.max(one.length, two.length))),
    );
    expect(struck).toEqual([]);
  });
});

describe('a row of a bar', () => {
  it('[ST14] has the ink of its own beats and no other', () => {
    const cells = parsePattern('x... .x.. X.xx ....').bars[0] ?? [];
    const bar = notateBar([{ voice: 'snare', cells }], FOUR);
    const whole = layOutBar(bar, 'one line');
    const [first, second] = [
      { fromBeat: 0, toBeat: 2 },
      { fromBeat: 2, toBeat: 4 },
    ].map((span) => layOutBar(bar, 'one line', 'start', { span }));
    const told = (layout: BarLayout | undefined) =>
      (layout?.glyphs ?? []).map(({ glyph, x }) => `${glyph} ${x}`);
    expect([...told(first), ...told(second)]).toEqual(told(whole));
    const edge = beatEdges(FOUR)[2] as number;
    expect((first?.glyphs ?? []).every(({ x }) => x < edge)).toBe(true);
    expect((second?.glyphs ?? []).every(({ x }) => x >= edge)).toBe(true);
    expect(first?.width).toBe(whole.width);
  });
});

describe('heads', () => {
  it('[ST107] draws a rim shot with a slash through its head, as print has it', () => {
    const slashes = (text: string) => {
      const bar = notateBar([{ voice: 'snare', cells: parsePattern(text).bars[0] ?? [] }], meter('4/4'));
      return layOutBar(bar, 'one line').lines.filter((line) => line.x1 < line.x2 && line.y1 > line.y2);
    };
    expect([slashes('x x x x').length, slashes('r x R x').length]).toEqual([0, 2]);
    expect(headOf('rimshot', 'normal')).toBe('blackHead');
    expect([headOf('sidestick', 'normal'), headOf('ride', 'bell')]).toEqual(['crossHead', 'diamondHead']);
  });
});
