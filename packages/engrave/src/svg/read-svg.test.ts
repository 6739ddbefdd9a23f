import { describe, expect, it } from 'vitest';
import { readSvg } from './read-svg.ts';

const svg = (inner: string, attributes = 'viewBox="0 0 100 100"') =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${inner}</svg>`;

const boxes = (inner: string, attributes?: string) =>
  readSvg(svg(inner, attributes)).shapes.map((shape) => shape.box);

describe('flattening', () => {
  it('[EN4] transforms apply from right to left', () => {
    // standard: SVG 1.1, 7.6: a list of transforms is as if each were given separately, in order
    expect(
      boxes(
        '<g transform="translate(10, 20)"><rect transform="scale(2)" x="1" y="1" width="3" height="4"/></g>',
      ),
    ).toEqual([{ x: 12, y: 22, width: 6, height: 8 }]);
    const [turned] = boxes('<rect transform="rotate(90 10 10)" x="10" y="10" width="4" height="2"/>');
    expect(turned?.x).toBeCloseTo(8, 9);
    expect(turned?.height).toBeCloseTo(4, 9);
  });

  it('[EN4] a nested viewBox fills the place it is given', () => {
    // standard: SVG 1.1, 7.7: x, y, width and height place the viewport that the viewBox is fitted to
    const nested =
      '<svg x="10" y="10" width="50" height="50" viewBox="0 0 500 500"><rect x="100" y="0" width="100" height="500"/></svg>';
    expect(boxes(nested)).toEqual([{ x: 20, y: 10, width: 10, height: 50 }]);
  });

  it('[EN4] basic shapes have their boxes, strokes counted in', () => {
    const shapes = [
      '<circle cx="10" cy="10" r="5"/>',
      '<ellipse cx="0" cy="0" rx="2" ry="1"/>',
      '<polygon points="0,0 4,0 4,4"/>',
      '<polyline fill="none" stroke="black" stroke-width="2" points="0,0 10,10"/>',
      '<line x1="0" y1="5" x2="10" y2="5" stroke="black" stroke-width="1"/>',
    ];
    const found = boxes(shapes.join(''));
    expect(found[0]?.width).toBeCloseTo(10, 9);
    expect(found[1]).toEqual({ x: -2, y: -1, width: 4, height: 2 });
    expect(found[2]).toEqual({ x: 0, y: 0, width: 4, height: 4 });
    expect(found[3]).toEqual({ x: -1, y: -1, width: 12, height: 12 });
    expect(found[4]).toEqual({ x: 0, y: 4.5, width: 10, height: 1 });
  });

  it('[EN4] paint is inherited, and what is not painted is no shape', () => {
    const drawing = readSvg(
      svg(
        '<g fill="#f00"><path d="M0 0h1v1z"/><path fill="none" d="M0 0h1v1z"/><path style="fill:none;stroke:currentColor" d="M0 0h9"/></g>',
      ),
    );
    expect(drawing.shapes.map(({ fill, stroke }) => [fill, stroke])).toEqual([
      ['#f00', null],
      [null, 'ink'],
    ]);
  });

  it('[EN4] a use draws what it refers to where it stands', () => {
    const drawing = readSvg(
      svg(
        '<defs><g id="E0A4-x"><path d="M0 0h10v10z"/></g></defs><use href="#E0A4-x" x="5" transform="translate(20,0)"/>',
      ),
    );
    expect(drawing.shapes.map(({ box, glyph }) => [box.x, glyph])).toEqual([[25, 'E0A4']]);
  });

  it('[EN5] what cannot be flattened is refused', () => {
    expect(() => readSvg(svg('<image href="x.png"/>'))).toThrow(
      'found <image> in an SVG, expected paths and basic shapes',
    );
    expect(() => readSvg(svg('<use href="#nowhere"/>'))).toThrow('found a use of "nowhere"');
    expect(() => readSvg('<svg>\n<g></svg>')).toThrow('found xml-end-tag (line 2), expected');
    expect(() => readSvg('<html></html>')).toThrow('found <html>, expected <svg>');
    expect(() => readSvg(svg('<rect transform="skewX(3)" width="1" height="1"/>'))).toThrow(
      'found the transform "skewX"',
    );
  });
});
