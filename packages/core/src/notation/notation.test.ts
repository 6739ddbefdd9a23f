import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arbitraryMeter, arbitraryPattern } from '../../../../internal/testing/arbitrary-lesson.ts';
import type { Voice } from '../kit/voice.ts';
import { type Cell, cell } from '../rhythm/cell.ts';
import { add, equals, formatFraction, fraction, ZERO } from '../rhythm/fraction.ts';
import { meter } from '../rhythm/meter.ts';
import { formatPattern, patternStrokes } from '../rhythm/pattern.ts';
import type { BarPart } from './layers.ts';
import { notateBar } from './notate.ts';
import type { NotatedBar, NotatedLayer } from './notation.ts';

const cells = (text: string): readonly Cell[] => text.split(' ').map(cell);

/** A layer in shorthand: `n8b` a beamed eighth, `r4` a quarter rest, `3:2[` a tuplet with a bracket. */
function shorthand(layer: NotatedLayer | undefined): string {
  return (layer?.groups ?? [])
    .map((group) => {
      const tuplet = group.tuplet
        ? `${group.tuplet.actual}:${group.tuplet.normal}${group.tuplet.bracket ? '[' : ' '}`
        : '';
      const events = group.events.map(
        ({ kind, value, beamed }) => `${kind[0]}${value.base}${value.dots ? '.' : ''}${beamed ? 'b' : ''}`,
      );
      return tuplet + events.join(' ');
    })
    .join(' / ');
}

function write(of: string, text: string, voice: Voice = 'snare'): string {
  return shorthand(notateBar([{ voice, cells: cells(text) }], meter(of)).layers[0]);
}

const parts = arbitraryMeter.chain((of) =>
  fc.record({
    of: fc.constant(of),
    ride: arbitraryPattern('ride', of),
    snare: arbitraryPattern('snare', of),
    bass: arbitraryPattern('bass', of),
  }),
);

describe('notation', () => {
  it('[NO1] adds every layer up to the bar', () => {
    fc.assert(
      fc.property(parts, ({ of, ride, snare, bass }) => {
        const bar = notate(of.text, [
          ['ride', formatPattern(ride)],
          ['snare', formatPattern(snare)],
          ['bass', formatPattern(bass)],
        ]);
        for (const layer of bar.layers) {
          const events = layer.groups.flatMap((group) => group.events);
          expect(
            equals(
              events.reduce((sum, event) => add(sum, event.duration), ZERO),
              of.bar,
            ),
          ).toBe(true);
          let at = ZERO;
          for (const event of events) {
            expect(formatFraction(event.start)).toBe(formatFraction(at));
            at = add(at, event.duration);
          }
          expect(layer.groups.reduce((beats, group) => beats + group.beats, 0)).toBe(of.beats.length);
        }
      }),
    );
  });

  it('[NO5] has a head for every struck slot, at its place, and no other', () => {
    fc.assert(
      fc.property(parts, ({ of, ride, snare }) => {
        const bar = notate(of.text, [
          ['ride', formatPattern(ride)],
          ['snare', formatPattern(snare)],
        ]);
        const heads = bar.layers
          .flatMap((layer) => layer.groups.flatMap((group) => group.events))
          .flatMap((event) => event.heads.map((head) => `${formatFraction(event.start)} ${head.mark}`));
        const struck = [ride, snare].flatMap((pattern) =>
          patternStrokes(pattern, of).map((stroke) => `${formatFraction(stroke.at)} ${stroke.mark}`),
        );
        expect(heads.toSorted()).toEqual(struck.toSorted());
      }),
    );
  });

  it('[NO2][NO3] spells triplet cells', () => {
    // common practice: swing notated in triplets
    expect(write('4/4', 'x.. ..x x.x ...')).toBe('n4 / 3:2[r4 n8 / 3:2[n4 n8 / r4');
    expect(write('4/4', 'xxx .xx xx. .x.')).toBe(
      '3:2 n8b n8b n8b / 3:2[r8 n8b n8b / 3:2[n8b n8b r8 / 3:2[r8 n8 r8',
    );
  });

  it('[NO2] spells eighths and sixteenths', () => {
    // common practice: durations to the next note, rests that show the half of the beat
    expect(write('4/4', 'x.x. .x x..x .x.x')).toBe('n8b n8b / r8 n8 / n8.b n16b / r16 n8b n16b');
    expect(write('4/4', '...x .x.. ..xx xx..')).toBe('r8 r16 n16 / r16 n16 r8 / r8 n16b n16b / n16b n16b r8');
  });

  it('[NO2][NO3] spells compound meters without triplets, and duplets with them', () => {
    // common practice: the division of a dotted quarter is three eighths; two in its time are a duplet 2:3
    expect(write('6/8', 'x.x xxx')).toBe('n4 n8 / n8b n8b n8b');
    expect(write('12/8', 'x x.. ... ..x')).toBe('n4. / n4. / r4. / r4 n8');
    expect(write('6/8', 'xx xxxx')).toBe('2:3 n8b n8b / 4:6 n16b n16b n16b n16b');
    expect(write('6/8', 'xxxxxx x.....')).toBe('n16b n16b n16b n16b n16b n16b / n4.');
  });

  it('[NO2][NO3] spells sextuplets, half-note beats and additive meters', () => {
    expect(write('4/4', 'xxxxxx x.x.x. x..x.. x.....')).toBe(
      '6:4 n16b n16b n16b n16b n16b n16b / 3:2 n8b n8b n8b / n8b n8b / n4',
    );
    expect(write('2/2', 'xx xxx')).toBe('n4 n4 / 3:2[n4 n4 n4');
    expect(write('2+2+3/8', 'xx x x.x')).toBe('n8b n8b / n4 / n4 n8');
  });

  it('[NO8] beams a voice by its own beat where another divides it otherwise', () => {
    // common practice: ride triplets over a snare in eighths or sixteenths: cymbals up, drums down
    for (const [snare, spelled] of [
      ['xx . . .', 'n8b n8b / r4 / r2'],
      ['xxxx . . .', 'n16b n16b n16b n16b / r4 / r2'],
    ] as const) {
      const bar = notate('4/4', [
        ['ride', 'x.x x x x'],
        ['snare', snare],
      ]);
      expect(bar.layers.map((layer) => [layer.layer, layer.stems, shorthand(layer)])).toEqual([
        [1, 'up', '3:2[n4 n8 / n4 / n4 / n4'],
        [2, 'down', spelled],
      ]);
    }
    // definition: the foot's triplets leave no layer that sixteenths fit
    const three = notate('4/4', [
      ['ride', 'x.x x x x'],
      ['snare', 'xxxx . . .'],
      ['bass', 'x.x x x x'],
    ]);
    expect(three.layers.map((layer) => [layer.layer, layer.stems])).toEqual([
      [1, 'up'],
      [2, 'down'],
      [3, 'up'],
    ]);
  });

  it('[NO8] writes no subdivision that none of its voices has', () => {
    fc.assert(
      fc.property(parts, ({ of, ride, snare, bass }) => {
        const bar = notate(of.text, [
          ['ride', formatPattern(ride)],
          ['snare', formatPattern(snare)],
          ['bass', formatPattern(bass)],
        ]);
        const slots = bar.layers.flatMap((layer) =>
          layer.groups.flatMap((group) => group.events.map((event) => event.slots)),
        );
        expect(slots.filter((each) => each > 8)).toEqual([]);
      }),
    );
  });

  it('[NO4] puts hands up and feet down, on one stem where struck together', () => {
    const bar = notate('4/4', [
      ['ride', 'x x.x x x.x'],
      ['snare', '. ..x x .'],
      ['bass', 'x x x x'],
      ['hihat-foot', '. x . x'],
    ]);
    expect(bar.layers.map((layer) => layer.stems)).toEqual(['up', 'down']);
    const heads = bar.layers.map((layer) =>
      layer.groups.map((group) =>
        group.events.map((event) => event.heads.map((head) => head.voice).join('+')).join(' '),
      ),
    );
    expect(heads).toEqual([
      ['ride', 'ride ride+snare', 'ride+snare', 'ride ride'],
      ['bass', 'bass+hihat-foot', 'bass', 'bass+hihat-foot'],
    ]);
    expect(notate('4/4', [['bass', 'x x x x']]).layers.map((layer) => layer.stems)).toEqual(['down']);
  });

  it('[NO6] joins the rests of silent halves and silent bars', () => {
    // common practice: a half rest may stand for beats 1–2 or 3–4 of 4/4, never for 2–3
    expect(write('4/4', '. . x x')).toBe('r2 / n4 / n4');
    expect(write('4/4', 'x . . x')).toBe('n4 / r4 / r4 / n4');
    expect(write('4/4', '... . .. .')).toBe('r1');
    expect(write('3/4', '. . x')).toBe('r4 / r4 / n4');
    expect(write('6/8', '... ...')).toBe('r1');
    const rest = notateBar([], meter('3/4')).layers[0]?.groups[0]?.events[0];
    expect(rest?.duration).toEqual(fraction(3, 4));
  });

  it('[NO5] carries accents, ghosts, articulations and stickings on their heads', () => {
    const part: BarPart = { voice: 'snare', cells: cells('X g s B'), sticking: ['R', 'L', 'L', 'R'] };
    const bar = notateBar([part], meter('4/4'));
    const heads = bar.layers[0]?.groups.flatMap((group) => group.events.flatMap((event) => event.heads));
    expect(heads).toMatchObject([
      { voice: 'snare', accent: true, ghost: false, sticking: 'R' },
      { voice: 'snare', ghost: true, sticking: 'L' },
      { voice: 'sidestick', sticking: 'L' },
      { voice: 'snare', articulation: 'buzz', accent: true, sticking: 'R' },
    ]);
  });

  it('[NO5] refuses parts that do not fit', () => {
    expect(() => notateBar([{ voice: 'snare', cells: cells('x x') }], meter('4/4'))).toThrow(RangeError);
    expect(() => notateBar([{ voice: 'ride', cells: cells('s x x x') }], meter('4/4'))).toThrow(RangeError);
  });
});

function notate(of: string, voices: readonly (readonly [Voice, string])[]): NotatedBar {
  return notateBar(
    voices.map(([voice, text]) => ({ voice, cells: cells(text) })),
    meter(of),
  );
}
