import { meter, parsePattern, patternStrokes, toNumber, VOICES, type Voice } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { barsOf, engraver } from '../../test/setup.ts';
import { rootOf } from '../../test/xml.ts';
import { type Box, contains } from '../svg/geometry.ts';
import { loadEngraver } from './load-engraver.ts';
import type { Tile, TileRequest } from './tile.ts';

const SPACE_MM = 2;

function tile(parts: Parameters<typeof barsOf>[0], over: Partial<TileRequest> = {}, meterText = '4/4'): Tile {
  return engraver.engraveTile({
    id: 'e1',
    bars: barsOf(parts, meterText),
    staff: 'full',
    staffSpaceMm: SPACE_MM,
    widthMm: 120,
    ...over,
  });
}

function overlap(a: Box, b: Box): boolean {
  const apart = a.x + a.width <= b.x || b.x + b.width <= a.x;
  return !apart && a.y + a.height > b.y && b.y + b.height > a.y;
}

const glyphs = (of: Tile) => of.drawing.shapes.flatMap((shape) => shape.glyph ?? []);

/** Lines and spaces from the bottom line of the staff to a head's middle. */
function positionOf(of: Tile, voice: Voice): number {
  const head = of.heads.find((each) => each.voice === voice);
  if (!head) throw new Error(`no ${voice}`);
  const bottomMm = of.staffBottomMm - (0.15 * SPACE_MM) / 4;
  return Math.round(((bottomMm - head.yMm) / SPACE_MM) * 2);
}

/** Staff positions from the bottom line E4 = 0. */
const STEPS = {
  D4: -1,
  F4: 1,
  G4: 2,
  A4: 3,
  B4: 4,
  C5: 5,
  D5: 6,
  E5: 7,
  F5: 8,
  G5: 9,
  A5: 10,
  B5: 11,
  C6: 12,
};

describe('staff', () => {
  it('[EN7] every voice stands where published maps put it', () => {
    const places: Readonly<Record<Voice, number>> = {
      // published: MusicXML 4.0 tutorial, Percussion (bass drum in the bottom space, snare in the third, hi-hat above the staff)
      bass: STEPS.F4,
      snare: STEPS.C5,
      hihat: STEPS.G5,
      'hihat-open': STEPS.G5,
      // published: timucua.com, Acoustic Composition III (ride on the top line, crash on the first ledger line)
      ride: STEPS.F5,
      crash: STEPS.A5,
      // published: florento/MEI-GMD mapping.md, "note US" (hi-hat foot D4, side stick C5)
      'hihat-foot': STEPS.D4,
      sidestick: STEPS.C5,
      // common practice: the rim shot stands at the snare
      rimshot: STEPS.C5,
      // from memory: N. Weinberg, Guide to Standardized Drumset Notation (toms); E5 and D5 also in MEI-GMD
      'tom-high': STEPS.E5,
      'tom-mid': STEPS.D5,
      'tom-low': STEPS.A4,
      // published: florento/MEI-GMD mapping.md, "note US" (five toms: E5 D5 B4 A4 G4)
      'tom-floor': STEPS.G4,
      // common practice: further cymbals above the crash; the cowbell in the top space
      splash: STEPS.B5,
      china: STEPS.C6,
      cowbell: STEPS.E5,
      // ours: the middle line
      clap: STEPS.B4,
    };
    for (const voice of VOICES)
      expect([voice, positionOf(tile({ [voice]: 'x . . .' }), voice)]).toEqual([voice, places[voice]]);
  });

  it('[EN7] cymbals and side stick have x heads, drums black ones', () => {
    // standard: SMuFL glyphnames: noteheadXBlack E0A9, noteheadBlack E0A4; common practice: x for cymbals
    for (const voice of ['ride', 'hihat', 'crash', 'hihat-foot', 'sidestick'] as const) {
      expect(glyphs(tile({ [voice]: 'x . . .' }))).toContain('E0A9');
    }
    for (const voice of ['bass', 'snare', 'tom-high', 'tom-mid', 'tom-low'] as const) {
      expect(glyphs(tile({ [voice]: 'x . . .' }))).toContain('E0A4');
    }
  });

  it('[EN8] hands have stems up, feet stems down', () => {
    const both = tile({ snare: 'x . . .', bass: 'x . . .' });
    const stems = both.drawing.groups.filter((group) => group.classes.includes('stem'));
    const middle = (voice: Voice) =>
      (both.heads.find((head) => head.voice === voice)?.yMm ?? 0) / both.mmPerUnit + both.drawing.viewBox.y;
    const [up, down] = stems.toSorted((a, b) => a.box.y - b.box.y);
    expect((up?.box.y ?? 0) + 2 * 18).toBeLessThan(middle('snare'));
    expect((down?.box.y ?? 0) + (down?.box.height ?? 0) - 2 * 18).toBeGreaterThan(middle('bass'));
  });

  it('[EN7] on one line every voice stands on the line', () => {
    const line = tile({ snare: 'x s r X' }, { staff: 'line' });
    expect(line.heads.length).toBe(4);
    for (const head of line.heads)
      expect(head.yMm).toBeCloseTo((line.staffTopMm + line.staffBottomMm) / 2, 1);
  });
});

describe('signs', () => {
  const signs: readonly (readonly [string, Parameters<typeof barsOf>[0], readonly string[]])[] = [
    // standard: SMuFL glyphnames: accidentalParensLeft E26A, accidentalParensRight E26B
    ['ghost note', { snare: 'g . . .' }, ['E26A', 'E26B']],
    // standard: SMuFL glyphnames: articAccentAbove E4A0
    ['accent', { snare: 'X . . .' }, ['E4A0']],
    // standard: SMuFL glyphnames: brassMuteOpen E5E7, MusicXML 4.0's glyph for an open hi-hat
    ['open hi-hat', { hihat: 'o . . .' }, ['E5E7', 'E0A9']],
    // standard: SMuFL glyphnames: noteheadSlashedBlack1 E0CF
    ['rim shot', { snare: 'r . . .' }, ['E0CF']],
    // standard: SMuFL glyphnames: noteheadDiamondBlack E0DB
    ['bell', { ride: 'b . . .' }, ['E0DB']],
    // standard: SMuFL glyphnames: noteheadCircleX E0B3
    ['splash', { 'hihat-foot': 'o . . .' }, ['E0B3']],
    // standard: SMuFL glyphnames: buzzRoll E22A
    ['buzz', { snare: 'b . . .' }, ['E22A']],
    // standard: SMuFL glyphnames: unpitchedPercussionClef1 E069, timeSig4 E084, restQuarter E4E5
    ['signature and rest', { snare: 'x . x x' }, ['E4E5']],
  ];

  it('[EN9] every sign has its SMuFL glyph', () => {
    for (const [name, parts, codes] of signs) {
      expect([name, codes.filter((code) => !glyphs(tile(parts)).includes(code))]).toEqual([name, []]);
    }
  });

  it('[EN9] a flam has one grace note and a drag two, small and before the note', () => {
    for (const [text, count] of [
      ['f . . .', 1],
      ['d . . .', 2],
    ] as const) {
      const engraved = tile({ snare: text });
      const heads = engraved.drawing.shapes
        .filter((shape) => shape.glyph === 'E0A4')
        .toSorted((a, b) => a.box.x - b.box.x);
      const [main] = heads.slice(-1);
      expect(heads.length).toBe(count + 1);
      // common practice: grace notes are about three quarters of the size
      for (const grace of heads.slice(0, -1))
        expect(grace.box.width).toBeLessThan(0.8 * (main?.box.width ?? 0));
    }
  });

  const boxesOf = (of: Tile, kind: string) =>
    of.drawing.groups.filter((group) => group.classes.includes(kind)).map(({ box }) => box);
  /** Staff spaces in the units of a drawing. */
  const UNITS = 18;

  it('[EN50] stems are as long as an octave', () => {
    for (const parts of [{ snare: '.x ..x x ...x' }, { ride: '.x ..x x ...x' }, { bass: '.x ..x x ...x' }]) {
      for (const staff of ['line', 'full'] as const) {
        const of = tile(parts, { staff, widthMm: 160 });
        const heads = boxesOf(of, 'notehead');
        const stems = boxesOf(of, 'stem');
        // common practice: three and a half spaces, from the middle of the head to the end of the stem
        const lengths = heads.map((head, i) => {
          const middle = head.y + head.height / 2;
          const stem = stems[i] ?? head;
          return ('bass' in parts ? stem.y + stem.height - middle : middle - stem.y) / UNITS;
        });
        // definition: four strokes
        expect(lengths).toHaveLength(4);
        // definition: where stems go down, a flag has half a space more
        const most = 'bass' in parts ? 4 : 3.5;
        expect(lengths.filter((length) => length < 3.25 || length > most + 0.25)).toEqual([]);
      }
    }
  });

  it('[EN50] a flag keeps off the head and the rest after it', () => {
    for (const text of ['..x x ..x ..x', '.x .x x .', '..x ... ..x .']) {
      const of = tile({ snare: text }, { staff: 'line', widthMm: null });
      const after = [...boxesOf(of, 'notehead'), ...boxesOf(of, 'rest')];
      const flags = boxesOf(of, 'flag');
      const spaces = flags.map(({ x, width }) => {
        const next = Math.min(...after.map((each) => each.x).filter((each) => each > x));
        return (next - x - width) / UNITS;
      });
      expect(spaces.length).toBeGreaterThan(0);
      expect(spaces.filter((space) => space < 0.4)).toEqual([]);
    }
  });

  it('[EN50] the parentheses of a ghost note keep off stem and flag', () => {
    for (const text of ['g . . .', '..g .g ...g .']) {
      const of = tile({ snare: text }, { staff: 'line' });
      const closing = of.drawing.shapes.filter(({ glyph }) => glyph === 'E26B').map(({ box }) => box);
      expect(closing.length).toBeGreaterThan(0);
      // definition: a stem is two units wide; one unit is the least gap that a printer shows
      const stems = boxesOf(of, 'stem').map(({ y, x, height }) => ({ x: x - 1, y, width: 4, height }));
      const near = [...stems, ...boxesOf(of, 'flag')];
      expect(closing.filter((box) => near.some((each) => overlap(box, each)))).toEqual([]);
    }
  });

  it('[EN7706] what stands last in a bar keeps off its line and off a repeat sign', () => {
    for (const text of ['g . . x..g', 'g.g. . . ...g', '..g ..g ..g ..x', 'x . . x..x']) {
      for (const barLines of ['repeat', 'single'] as const) {
        for (const widthMm of [null, 60]) {
          const of = tile({ snare: text }, { staff: 'line', barLines, widthMm });
          const end = Math.max(...boxesOf(of, 'barLine').map(({ x }) => x));
          const last = of.drawing.shapes.filter(({ glyph, box }) => glyph !== null && box.x < end);
          const right = Math.max(
            ...last.filter(({ glyph }) => glyph !== 'E044').map(({ box }) => box.x + box.width),
          );
          // common practice: at least half a space, about as much as between a head and its dot
          expect([text, barLines, widthMm, (end - right) / UNITS >= 0.45]).toEqual([
            text,
            barLines,
            widthMm,
            true,
          ]);
        }
      }
    }
  });

  it('[EN51] an accent of one voice stands at that voice', () => {
    const place = (parts: Parameters<typeof barsOf>[0]) => {
      const of = tile(parts);
      const accents = of.drawing.shapes.filter(({ glyph }) => glyph === 'E4A0' || glyph === 'E4A1');
      return accents.map(({ box }) => {
        const middleMm = (box.y + box.height / 2 - of.drawing.viewBox.y) * of.mmPerUnit;
        const beside = of.heads.find(({ yMm }) => Math.abs(yMm - middleMm) < 0.2 * SPACE_MM);
        return beside?.voice ?? (middleMm < of.staffTopMm ? 'over' : 'under');
      });
    };
    expect(place({ ride: 'x . . .', snare: 'X . . .' })).toEqual(['snare']);
    expect(place({ ride: 'X . . .', snare: 'x . . .' })).toEqual(['over']);
    expect(place({ ride: 'X . . .', snare: 'X . . .' })).toEqual(['over', 'snare']);
    expect(place({ snare: 'X . . .' })).toEqual(['over']);
    expect(place({ ride: 'x . . .', bass: 'X . . .' })).toEqual(['under']);
    expect(place({ bass: 'X . . .', 'hihat-foot': 'x . . .' })).toEqual(['bass']);
  });

  it('[EN9] plain strokes have none of these signs', () => {
    const plain = glyphs(tile({ snare: 'x x x x' }));
    expect(plain.filter((code) => code !== 'E0A4')).toEqual([]);
  });

  it('[EN10] a beamed triplet has its number alone, any other a bracket too', () => {
    const classes = (text: string) => tile({ snare: text }).drawing.groups.flatMap((group) => group.classes);
    // standard: SMuFL glyphnames: tuplet3 E883, tuplet6 E886
    expect(glyphs(tile({ snare: 'xxx . . .' }))).toContain('E883');
    expect(glyphs(tile({ snare: 'xxxxxx . . .' }))).toContain('E886');
    expect(classes('xxx . . .')).not.toContain('tupletBracket');
    for (const text of ['x.x . . .', '..x . . .', '.xx . . .']) {
      expect(classes(text)).toContain('tupletBracket');
      expect(glyphs(tile({ snare: text }))).toContain('E883');
    }
    expect(classes('xx xxxx x .')).not.toContain('tupletNum');
  });

  it('[EN12] clef and meter are printed where asked for', () => {
    const signed = (meterText: string, snare: string) =>
      glyphs(tile({ snare }, { signature: true }, meterText));
    // standard: SMuFL glyphnames: unpitchedPercussionClef1 E069, timeSig0 E080 (and so timeSig1 E081 …), timeSigPlusSmall E08D
    expect(signed('4/4', 'x x x x')).toEqual(expect.arrayContaining(['E069', 'E084', 'E084']));
    expect(signed('12/8', 'x x x x')).toEqual(expect.arrayContaining(['E081', 'E082', 'E088']));
    expect(signed('2+2+3/8', 'x x x')).toEqual(expect.arrayContaining(['E082', 'E08D', 'E083', 'E088']));
    expect(glyphs(tile({ snare: 'x x x x' }))).not.toContain('E069');
  });
});

describe('time', () => {
  const cases: readonly (readonly [string, Parameters<typeof barsOf>[0]])[] = [
    ['4/4', { snare: 'x.. ..x x.x ... | xx xxxx xxxxxx x', bass: 'x . ..x .' }],
    ['4/4', { ride: 'x x.x x x.x', snare: '..x x..x . xxxxxx', 'hihat-foot': '. x . x' }],
    ['12/8', { ride: 'x.x xx xxxxxx x', bass: '..x . x.. xxxx' }],
    ['3/4', { snare: 'x. .x ...x', bass: '. . x' }],
    ['2+2+3/8', { hihat: 'xx x. xxx', snare: '.x . ..x' }],
    ['5/4', { snare: '. . . . .', bass: '. . . . x' }],
  ];

  it('[EN11] verovio hears every stroke at its score time, and the last bar ends in time', () => {
    for (const [meterText, parts] of cases) {
      const engraved = tile(parts, { timemap: true, widthMm: 180 }, meterText);
      const of = meter(meterText);
      const heard = engraved.timemap.flatMap((entry) => entry.on.map((id) => [id, entry.quarters] as const));
      const starts = new Map(heard);
      const bars = Math.max(...Object.values(parts).map((text) => parsePattern(text).bars.length));
      let written = 0;
      for (const [voice, text] of Object.entries(parts)) {
        const pattern = parsePattern(text);
        for (const stroke of patternStrokes(pattern, of)) {
          for (let bar = stroke.bar; bar < bars; bar += pattern.bars.length) {
            // library: verovio 6.3, renderToTimemap: quarter notes from the start
            const quarters = 4 * (toNumber(stroke.at) + (bar - stroke.bar) * toNumber(of.bar));
            const inBar = 4 * toNumber(stroke.at) - 4 * stroke.bar * toNumber(of.bar);
            const head = engraved.heads.find(
              (each) =>
                each.voice === voice &&
                each.bar === bar + 1 &&
                Math.abs(4 * toNumber(each.start) - inBar) < 1e-9,
            );
            expect(starts.get(head?.id ?? '')).toBeCloseTo(quarters, 3);
            written += 1;
          }
        }
      }
      expect(heard.length).toBe(written);
      expect(engraved.heads.length).toBe(written);
    }
  });

  it('[EN11] every layer adds up to the bar in verovio', () => {
    for (const [meterText, parts] of cases) {
      const full = tile(
        {
          ...parts,
          crash: meter(meterText)
            .beats.map(() => 'x')
            .join(' '),
        },
        { timemap: true },
        meterText,
      );
      const bars = Math.max(...Object.values(parts).map((text) => parsePattern(text).bars.length));
      // definition: what sounds last stops at the last bar line at the latest
      const end = full.timemap.at(-1)?.quarters ?? 0;
      expect(end).toBeCloseTo(4 * toNumber(meter(meterText).bar) * bars, 3);
    }
  });

  it('[EN13] heads know their bar, start and voice; later lines count on', () => {
    const engraved = tile({ snare: 'x . ..x . | . x . .' }, { firstBar: 3, id: 'groove' });
    expect(engraved.heads.map(({ bar, start, voice }) => [bar, start.num / start.den, voice])).toEqual([
      [3, 0, 'snare'],
      [3, 8 / 12, 'snare'],
      [4, 1 / 4, 'snare'],
    ]);
    for (const head of engraved.heads) expect(engraved.svg).toContain(`id="${head.id}"`);
  });

  it('[EN14] equal times are equal distances', () => {
    const engraved = tile({ ride: 'x xx xxxx xxx', bass: 'x . ..x x' }, { widthMm: 170 });
    const perWhole = engraved.heads
      .filter((head) => toNumber(head.start) > 0)
      .map((head) => (head.xMm - (engraved.heads[0]?.xMm ?? 0)) / toNumber(head.start));
    // definition: proportional; verovio rounds to a tenth of a unit and draws heads of different widths
    for (const each of perWhole) expect(Math.abs(each - (perWhole.at(-1) ?? 0))).toBeLessThan(0.02 * each);
    const silent = engraved.xAt(1, { num: 3, den: 8 });
    expect(silent).toBeCloseTo(
      engraved.heads.find((head) => head.voice === 'ride' && head.start.num === 3)?.xMm ?? 0,
      6,
    );
    // an empty moment: the e of 2 lies halfway between 2 and its and
    expect(engraved.xAt(1, { num: 5, den: 16 })).toBeCloseTo(
      (engraved.xAt(1, { num: 1, den: 4 }) + silent) / 2,
      1,
    );
  });

  it('[EN14] bars without a head of their own keep the scale', () => {
    const engraved = tile({ snare: 'x x x x | . . . .' }, { staff: 'line', widthMm: 160 });
    const beat = engraved.xAt(1, { num: 1, den: 4 }) - engraved.xAt(1, { num: 0, den: 1 });
    expect(engraved.xAt(2, { num: 3, den: 4 }) - engraved.xAt(2, { num: 1, den: 4 })).toBeCloseTo(
      2 * beat,
      6,
    );
    expect(engraved.xAt(2, { num: 3, den: 4 })).toBeLessThan(160);
  });
});

describe('tile', () => {
  it('[EN15] is as wide as asked for, and its ink lies inside it', () => {
    for (const widthMm of [70, 100, 180]) {
      for (const [snare, staff] of [
        ['x.. ..x x.x ...', 'line'],
        ['xxxx x.x. x xx', 'full'],
        ['X f d .', 'full'],
      ] as const) {
        const engraved = tile({ snare }, { widthMm, staff });
        expect(Math.abs(engraved.widthMm - widthMm)).toBeLessThan(0.3);
        for (const shape of engraved.drawing.shapes)
          expect(contains(engraved.drawing.viewBox, shape.box, 1e-6)).toBe(true);
      }
    }
  });

  it('[EN16] the same request gives the same bytes, whatever was engraved before', async () => {
    const request = {
      id: 'e7',
      bars: barsOf({ snare: 'x.x ..x . x' }),
      staff: 'line',
      staffSpaceMm: 2,
      widthMm: 80,
    } as const;
    const first = engraver.engraveTile(request).svg;
    const other = await loadEngraver();
    other.engraveTile({ ...request, id: 'e8' });
    expect(other.engraveTile(request).svg).toBe(first);
  });

  it('[EN16] two tiles of one pattern share no id', () => {
    const ids = (id: string) =>
      [...tile({ snare: 'x.x ..x . x' }, { id }).svg.matchAll(/\sid="([^"]+)"/g)].map((match) => match[1]);
    const first = new Set(ids('e1'));
    expect(ids('e2').filter((id) => first.has(id))).toEqual([]);
  });

  it('[EN17] names itself and says what it shows', () => {
    const engraved = tile({ snare: 'x . . .' }, { title: 'Exercise 1, <first>', description: 'Snare: 1.' });
    const root = rootOf(engraved.svg);
    const text = (name: string) => root.children.find((child) => child.name === name)?.text;
    expect(root.attributes.role).toBe('img');
    expect([text('title'), text('desc')]).toEqual(['Exercise 1, <first>', 'Snare: 1.']);
    expect(engraved.svg).not.toContain('Verovio');
  });
});
