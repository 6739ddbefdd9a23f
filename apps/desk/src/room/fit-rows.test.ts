import { meter, parsePattern } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { closeQuarter, fitRows } from './fit-rows.ts';

const FOUR = meter('4/4');

/** Width of a CSS pixel in mm. standard: CSS Values and Units 3: an inch has 96 px and 25.4 mm */
const MM_PER_PX = 25.4 / 96;

describe('an exercise in the lesson room', () => {
  it('[ST37] has heads as high as letters that are read at two metres', () => {
    const quarterWidth = closeQuarter([parsePattern('x.x ..x x.x ...')], FOUR);
    // A desk screen of 1440 by 900, less its head, its foot and the ledge.
    const fit = fitRows({
      bars: 1,
      meter: FOUR,
      quarterWidth,
      rowHeight: 105,
      widthPx: 1320,
      heightPx: 600,
    });
    expect(fit.rows).toHaveLength(1);
    // standard: ISO 9241-303: characters subtend 20 to 22 minutes of arc; at 2 m 20 minutes are 11.6 mm
    expect(fit.scale * 10 * MM_PER_PX).toBeGreaterThanOrEqual(2000 * Math.tan((20 / 60) * (Math.PI / 180)));
  });

  it('[ST37] stands in two rows where one would be small, and never gets larger than its place', () => {
    const request = { bars: 1, meter: FOUR, quarterWidth: 57, rowHeight: 105, widthPx: 360, heightPx: 480 };
    const tall = fitRows(request);
    expect(tall.rows.map((row) => [row.fromBeat, row.toBeat])).toEqual([
      [0, 2],
      [2, 4],
    ]);
    const waltz = fitRows({ ...request, meter: meter('3/4') });
    expect(waltz.rows.map((row) => [row.fromBeat, row.toBeat])).toEqual([
      [0, 2],
      [2, 3],
    ]);
    const flat = fitRows({ ...request, widthPx: 800, heightPx: 180 });
    expect(flat.rows).toHaveLength(1);
    for (const [fit, width, height] of [
      [tall, 360, 480],
      [flat, 800, 180],
    ] as const) {
      expect(fit.scale * fit.width).toBeLessThanOrEqual(width + 1e-6);
      expect(fit.scale * 105 * fit.rows.length).toBeLessThanOrEqual(height + 1e-6);
    }
  });

  it('[ST37] holds every beat of every bar once and in order', () => {
    for (const [name, bars] of [
      ['4/4', 1],
      ['4/4', 4],
      ['3/4', 2],
      ['12/8', 2],
      ['5/4', 1],
    ] as const) {
      const beats = meter(name).beats.length;
      for (const widthPx of [320, 700, 1800]) {
        const { rows } = fitRows({
          bars,
          meter: meter(name),
          quarterWidth: 60,
          rowHeight: 100,
          widthPx,
          heightPx: 500,
        });
        const told = rows.flatMap((row) =>
          Array.from({ length: row.toBar - row.fromBar }, (_, bar) => row.fromBar + bar).flatMap((bar) =>
            Array.from({ length: row.toBeat - row.fromBeat }, (_, beat) => bar * beats + row.fromBeat + beat),
          ),
        );
        expect(told).toEqual(Array.from({ length: bars * beats }, (_, index) => index));
      }
    }
  });

  it('[ST37] [ST1502] gives slots that lie close together the room of a head, and a last ghost note that of its parenthesis', () => {
    expect(closeQuarter([parsePattern('x x x x')], FOUR)).toBe(56);
    // source: Leland's outlines as layout.ts places them: a head's middle stands 16 units into its slot, the bar line 10
    // behind the beat, its dots reach 7 before it, and a closing parenthesis 11.5 behind the head's middle
    const ghosts = closeQuarter([parsePattern('x x x ...g')], FOUR) / 4;
    expect(ghosts - 16 + 10 - 7).toBeGreaterThan(11.5);
    const sixths = closeQuarter([parsePattern('xxxxxx x x x')], FOUR);
    // source: the outline of Leland's black notehead is 1.29 staff spaces wide, 12.9 units
    expect(sixths / 6).toBeGreaterThan(12.9);
  });
});
