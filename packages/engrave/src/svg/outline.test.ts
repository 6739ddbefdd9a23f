import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contains, IDENTITY, scale } from './geometry.ts';
import { outlineBox, outlineToPath, parseOutline } from './outline.ts';

const path = (data: string) => outlineToPath(parseOutline(data), IDENTITY);

describe('outlines', () => {
  it('[EN1] relative commands are the absolute ones from where the pen is', () => {
    // standard: SVG 1.1, 8.3.1: lower case means relative to the current point
    expect(path('m10 20 l5 5 h10 v-5 c1 1 2 2 3 3 z')).toBe(
      path('M10 20 L15 25 H25 V20 C26 21 27 22 28 23 Z'),
    );
  });

  it('[EN1] further pairs after a move are lines', () => {
    // standard: SVG 1.1, 8.3.2: "subsequent pairs are treated as implicit lineto commands"
    expect(path('M1 2 3 4 5 6')).toBe(path('M1 2 L3 4 L5 6'));
    expect(path('m1 2 3 4 5 6')).toBe(path('M1 2 L4 6 L9 12'));
  });

  it('[EN1] a smooth curve reflects the last control point', () => {
    // standard: SVG 1.1, 8.3.6, figure cubic01.svg: M100,200 C100,100 250,100 250,200 S400,300 400,200
    expect(path('M100,200 C100,100 250,100 250,200 S400,300 400,200')).toBe(
      path('M100 200 C100 100 250 100 250 200 C250 300 400 300 400 200'),
    );
    // standard: SVG 1.1, 8.3.6: without a curve before it the control point is the current point
    expect(path('M0 0 S1 1 2 2')).toBe(path('M0 0 C0 0 1 1 2 2'));
  });

  it('[EN1] a quadratic curve is the cubic one with control points two thirds of the way', () => {
    // definition: degree elevation, (P0 + 2·Q)/3 and (2·Q + P1)/3
    expect(path('M0 0 Q30 60 60 0 T120 0')).toBe(path('M0 0 C20 40 40 40 60 0 C80 -40 100 -40 120 0'));
  });

  it('[EN1] numbers need no space where a sign or a point parts them', () => {
    // standard: SVG 1.1, 8.3.9, grammar: "M 0.6.5" is 0.6 and 0.5
    expect(path('M0.6.5-1-2e1')).toBe(path('M 0.6 0.5 L -1 -20'));
  });

  it('[EN5] a command with too few numbers is refused', () => {
    expect(() => parseOutline('M0 0 C1 2 3')).toThrow('found 3 numbers after "C" in path data, expected 6');
  });

  it("[EN2] a curve's box is where it turns, not where its control points are", () => {
    // definition: y of B(t) = 3·100·t(1−t) is largest at t = 1/2: 75
    expect(outlineBox(parseOutline('M0 0 C0 100 100 100 100 0'), IDENTITY)).toEqual({
      x: 0,
      y: 0,
      width: 100,
      height: 75,
    });
  });

  it('[EN2] points of a curve lie inside its box and some touch every side', () => {
    const number = fc.integer({ min: -100, max: 100 });
    fc.assert(
      fc.property(fc.array(number, { minLength: 8, maxLength: 8 }), (n) => {
        const [x0, y0, x1, y1, x2, y2, x3, y3] = n as [
          number,
          number,
          number,
          number,
          number,
          number,
          number,
          number,
        ];
        const box = outlineBox(parseOutline(`M${x0} ${y0} C${x1} ${y1} ${x2} ${y2} ${x3} ${y3}`), IDENTITY);
        if (!box) throw new Error('no box');
        let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
        for (let i = 0; i <= 500; i += 1) {
          const t = i / 500;
          const bernstein = (a: number, b: number, c: number, d: number) =>
            (1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t * t * c + t ** 3 * d;
          const [x, y] = [bernstein(x0, x1, x2, x3), bernstein(y0, y1, y2, y3)];
          expect(contains(box, { x, y, width: 0, height: 0 }, 1e-6)).toBe(true);
          [left, top, right, bottom] = [
            Math.min(left, x),
            Math.min(top, y),
            Math.max(right, x),
            Math.max(bottom, y),
          ];
        }
        // definition: sampled 500 times, a cubic with speeds up to 600 a unit moves less than 0.02 past a turn
        const reached = { x: left, y: top, width: right - left, height: bottom - top };
        expect(contains(reached, box, 0.02)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  it('[EN3] arcs stay on their circle, take the side the flags say, and end where told', () => {
    // standard: SVG 1.1, 8.3.8: radius 50 about (50, 0) from (0, 0) to (100, 0), sweep 1 goes over negative y
    const half = parseOutline('M0 0 A50 50 0 0 1 100 0');
    const box = outlineBox(half, IDENTITY);
    expect(box?.y).toBeCloseTo(-50, 1);
    expect(box?.height).toBeCloseTo(50, 1);
    expect(outlineBox(parseOutline('M0 0 A50 50 0 0 0 100 0'), IDENTITY)?.y).toBeCloseTo(0, 6);
    // definition: the end points of every piece have distance 50 from the centre
    for (const step of half.steps)
      if (step[0] === 'C') expect(Math.hypot(step[5] - 50, step[6])).toBeCloseTo(50, 9);
    const end = half.steps.at(-1);
    expect(end?.[0] === 'C' && end[5]).toBeCloseTo(100, 9);
    expect(end?.[0] === 'C' && end[6]).toBeCloseTo(0, 9);
  });

  it('[EN3] radii too small are scaled up until they reach; flags need no space', () => {
    // standard: SVG 1.1, F.6.6: radii are scaled until there is exactly one solution; here to 50
    expect(outlineBox(parseOutline('M0 0 A1 1 0 0 1 100 0'), IDENTITY)?.height).toBeCloseTo(50, 1);
    // standard: SVG 1.1, 8.3.9: a flag is one character
    expect(path('M0 0a50 50 0 01100 0')).toBe(path('M0 0 a50 50 0 0 1 100 0'));
  });

  it('[EN2] the box follows the map', () => {
    expect(outlineBox(parseOutline('M1 1 L3 2'), scale(2, -1))).toEqual({ x: 2, y: -2, width: 4, height: 1 });
  });
});
