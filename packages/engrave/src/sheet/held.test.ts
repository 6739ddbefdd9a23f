/** What is held, on paper: ties, signs, the key, and what is read out. */
import { expect, it } from 'vitest';
import { collisionsOf } from '../../../../internal/testing/collisions.ts';
import { barsOf, engraver } from '../../test/setup.ts';
import { glyphsOf, layOut, textsOf, tilesOf } from '../../test/sheets.ts';
import type { Tile } from '../tile/tile.ts';

const BALLAD = `title: Held sweeps
playedWith: brushes
groove: {hihat-foot: . x . x, bass: x . x .}
exercises:
  - w ~ w ~
  - w ~ ~ ~ | ~ ~ w ~
  - w~~ ~~x w~~ ~.x
`;

const ROLLS = `title: Long rolls
feel: even
groove: {ride: x x.x x x.x, hihat-foot: . x . x, bass: x . x .}
exercises:
  - b ~ x .
  - x . b ~ | ~ ~ x .
  - .b~~ ~~x. .b~~ x
  - B ~ ~ ~ | ~ ~ ~ ~ | X . . . | x . . .
`;

/** How many ties a tile draws. */
const ties = (tile: Tile) => tile.drawing.groups.filter(({ classes }) => classes.includes('tie')).length;

const drawn = (parts: Parameters<typeof barsOf>[0], from = 0, to = 9): Tile =>
  engraver.engraveTile({
    id: 't',
    bars: barsOf(parts).slice(from, to),
    firstBar: from + 1,
    staff: 'full',
    staffSpaceMm: 1.6,
    widthMm: 120,
  });

it('[EN7600] what is held is tied from head to head, each with its sign, and over the end of a line on both lines', () => {
  const rolled = drawn({ snare: 'x . b ~ | ~ ~ x .' });
  // common practice: four quarters of one roll have three ties between them
  expect(ties(rolled)).toBe(3);
  // standard: SMuFL, buzzRoll, one on each stem of the roll
  expect(rolled.drawing.shapes.filter(({ glyph }) => glyph === 'E22A')).toHaveLength(4);
  expect(ties(drawn({ snare: 'b . b .' }))).toBe(0);
  // Broken between the bars: half a tie ends the first line, half a tie begins the second.
  expect([
    ties(drawn({ snare: 'x . b ~ | ~ ~ x .' }, 0, 1)),
    ties(drawn({ snare: 'x . b ~ | ~ ~ x .' }, 1)),
  ]).toEqual([2, 2]);
});

it('[EN7601] the sign of a buzz stands on its stem, between flag and head', () => {
  for (const text of ['.b.. . . .b', '.b~~ ~~.. .b .']) {
    const { drawing } = drawn({ snare: text });
    const stems = drawing.groups.filter(({ classes }) => classes.includes('stem'));
    const signs = drawing.shapes.filter(({ glyph }) => glyph === 'E22A');
    expect(signs.length).toBeGreaterThan(1);
    for (const { box, within } of signs) {
      const line = drawing.shapes.find((shape) => shape.glyph === null && shape.within === within);
      expect(stems.some(({ id }) => id === within)).toBe(true);
      // SMuFL, buzzRoll: it is centred on the stem; both ends of it lie on the stem
      expect(box.y).toBeGreaterThanOrEqual(line?.box.y ?? Number.POSITIVE_INFINITY);
      expect(box.y + box.height).toBeLessThanOrEqual((line?.box.y ?? 0) + (line?.box.height ?? 0));
    }
  }
});

it('[EN7602] the key names the tie where something is held, and what is held is read out with its end', () => {
  const sheet = layOut(BALLAD);
  expect(textsOf(sheet)).toContain('held, not struck again');
  expect(textsOf(layOut(BALLAD.replaceAll('~', '.')))).not.toContain('held, not struck again');
  const said = tilesOf(sheet).map(({ description }) => description);
  expect(said).toContain('Snare: 1 (sweep, held to 3), 3 (sweep, held to the bar line).');
  expect(said).toContain(
    'Bar 1. Snare: 1 (sweep, held over the bar line). Bar 2. Snare: held from the bar before to 3, 3 (sweep, held to the bar line).',
  );
  expect(said).toContain('Snare: 1 (sweep, held to 2 let), 2 let, 3 (sweep, held to 4 trip), 4 let.');
});

it('[EN7603] no tie and no roll stands on another sign, on one line and over a groove', () => {
  for (const text of [BALLAD, ROLLS]) {
    for (const staff of ['compact', 'full'] as const) {
      const sheet = layOut(text, { staff });
      expect(glyphsOf(sheet).size).toBeGreaterThan(3);
      expect([staff, tilesOf(sheet).flatMap(collisionsOf)]).toEqual([staff, []]);
    }
  }
});
