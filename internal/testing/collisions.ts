/**
 * Signs that stand on each other.
 *
 * Conventions: a sign is a glyph of the music font with the box of its ink.
 */
import type { Item, Sheet, Tile } from '@shedbook/engrave';

/** What the boxes of two signs may share each way: a sixth of a staff space of 18 units, for curved edges. */
const SLACK = 3;

/** Pairs of signs of a tile that stand on each other, by their SMuFL code points. */
export function collisionsOf({ drawing, description }: Tile): readonly string[] {
  const signs = drawing.shapes.filter(({ glyph }) => glyph !== null);
  return signs.flatMap(({ box: a, glyph }, index) =>
    signs.slice(index + 1).flatMap(({ box: b, glyph: other }) => {
      const wide = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
      const high = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
      return wide > SLACK && high > SLACK ? [`${glyph} ${other} in ${description}`] : [];
    }),
  );
}

function tilesIn(items: readonly Item[]): readonly Tile[] {
  return items.flatMap((item) => {
    if (item.kind === 'group') return tilesIn(item.items);
    return item.kind === 'tile' ? [item.tile] : [];
  });
}

/** Every tile on every page. */
export function tilesOnPages({ pages }: Pick<Sheet, 'pages'>): readonly Tile[] {
  return pages.flatMap(({ items }) => tilesIn(items));
}
