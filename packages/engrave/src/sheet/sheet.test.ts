import { meter, patternStrokes } from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arbitraryLesson } from '../../../../internal/testing/arbitrary-lesson.ts';
import { fonts } from '../../test/setup.ts';
import {
  expectApart,
  expectInside,
  flat,
  fullness,
  glyphsOf,
  groupsOf,
  idsOf,
  layOut,
  textsOf,
  tilesOf,
} from '../../test/sheets.ts';
import { rootOf } from '../../test/xml.ts';
import { contains } from '../svg/geometry.ts';
import { boxOf, type GroupItem } from './item.ts';
import type { Sheet, SheetOptions } from './sheet.ts';

const SWING = `title: First swing
by: Oda Lindqvist-Reyes
tempo: { start: 80, goal: 120, step: 10 }
feel: triplet
groove: { ride: "x x.x x x.x", hihat-foot: ". x . x", bass: "x x x x" }
exercises:
  - "x.. ..x x.x ..."
  - { pattern: "..x ..x x.. x..", name: "Gaps", sticking: "R L R L", notes: "Keep the ride even." }
  - "xxx . x ..x"
`;

const LONG = 'An endless remark on the weight of the left foot. ';

/** The longest line that a lesson takes, in characters: the longest that a page has to bear. */
const LINE = 200;

/** Lessons that try to break the page. */
const HARD: Readonly<Record<string, string>> = {
  'long texts': JSON.stringify({
    title: LONG.repeat(20).slice(0, LINE),
    by: 'Supercalifragilistic'.repeat(30).slice(0, LINE),
    exercises: [
      {
        pattern: 'x x x x',
        name: 'Иван и Ηλέκτρα på Þingvellir 日本語 😀 '.repeat(12).slice(0, LINE),
        notes: LONG.repeat(200),
      },
      { pattern: '. . . .', name: 'W'.repeat(LINE) },
    ],
    forms: { [`a ${'very '.repeat(10)}long name`]: { sections: [{ pattern: 4 }, { time: 2 }] } },
    sheet: { counts: true },
  }),
  'sextuplets with ornaments in five': JSON.stringify({
    title: 'Six',
    meter: '5/4',
    tempo: { start: 40, goal: 399, step: 1 },
    groove: { hihat: 'xxxxxx xxxxxx xxxxxx xxxxxx xxxxxx', bass: 'xxxx x x x x' },
    exercises: ['gfdgfd gfdgfd gfdgfd gfdgfd gfdgfd', 'xxxxxx xxxx xxx xx x | . . . . . | xxxxxx x x x x'],
    sheet: { counts: true, scale: 2 },
  }),
  'many bars': JSON.stringify({
    title: 'Bars',
    exercises: [Array.from({ length: 40 }, (_, i) => (i % 2 ? 'x x.x . x' : '..x . xxx x')).join(' | ')],
    sheet: { staff: 'full', paper: 'Letter' },
  }),
  nothing: JSON.stringify({
    title: 'T',
    groove: {},
    exercises: ['. . . .'],
    sheet: { tickBoxes: false, legend: false },
  }),
};

describe('margins', () => {
  it('[EN21] [EN22] hard lessons stay inside the margins and exercises apart', () => {
    for (const [name, text] of Object.entries(HARD)) {
      for (const paper of ['A4', 'Letter', 'tablet'] as const) {
        const sheet = layOut(text, { paper });
        expectInside(sheet);
        expectApart(sheet);
        expect([name, sheet.pages.length > 0]).toEqual([name, true]);
      }
    }
  });

  it('[EN21] [EN22] [EN33] so does any lesson, and every stroke has its place', () => {
    const settings = fc.record({
      paper: fc.constantFrom('A4', 'Letter', 'A5', 'tablet'),
      counts: fc.boolean(),
      staff: fc.constantFrom('compact', 'full'),
      scale: fc.constantFrom(0.6, 1, 1.4, 2),
    });
    fc.assert(
      fc.property(arbitraryLesson, settings, (lesson, options) => {
        const sheet = layOut(lesson, options as Partial<SheetOptions>);
        expectInside(sheet);
        expectApart(sheet);
        const placed = sheet.places.flatMap((place) => place.slots).filter((slot) => slot.id !== null).length;
        // definition: what a repeat sign stands for is printed once, before it
        const own = lesson.exercises.map(({ parts, barRepeats = [] }) => {
          const isSigned = (bar: number) => barRepeats.some(({ from, to }) => bar >= from && bar < to);
          const strokes = parts.flatMap((part) => patternStrokes(part.pattern, lesson.meter));
          return strokes.filter(({ bar }) => !isSigned(bar)).length;
        });
        expect(placed).toBeGreaterThanOrEqual(own.reduce((sum, count) => sum + count, 0));
      }),
      { numRuns: 12 },
    );
  });
});

/** A lesson of so many exercises, each of so many bars. */
const many = (count: number, more = '', bar = 'x.. ..x x.x ...') =>
  `title: Many\nfeel: triplet\n${more}exercises:\n${Array.from({ length: count }, () => `  - "${bar}"\n`).join('')}`;

describe('breaks', () => {
  it('[EN46] no page is half empty but the last, and none has one or two exercises alone', () => {
    for (const text of [
      ...[1, 5, 15, 17, 24, 25, 49].map((count) => many(count)),
      many(29, 'sheet: { staff: full }\n'),
    ]) {
      const sheet = layOut(text);
      expect(
        fullness(sheet)
          .slice(0, -1)
          .filter((share) => share < 0.6),
      ).toEqual([]);
      const counts = groupsOf(sheet)
        .slice(1)
        .map((groups) => groups.length);
      expect(counts.filter((count) => count < 3)).toEqual([]);
    }
  });

  it('[EN46] a section stays with its heading', () => {
    for (const before of [6, 8, 10, 12, 13, 14]) {
      const exercises = (count: number) =>
        `[${Array.from({ length: count }, () => '"x.. ..x x.x ..."').join(', ')}]`;
      const sheet = layOut(
        `title: T\nfeel: triplet\nsections:\n  - { heading: One, exercises: ${exercises(before)} }\n  - { heading: Two, tempo: 90, text: "Sing it.", exercises: ${exercises(6)} }\n`,
      );
      const page = sheet.pages.findIndex((_, index) => textsOf(sheet, index).includes('Two'));
      expect(sheet.places.find(({ exercise }) => exercise === before + 1)?.page).toBe(page);
    }
  });

  it('[EN47] a chosen number of exercises a page is kept', () => {
    for (const [perPage, expected] of [
      [4, [4, 4, 1]],
      [10, [10, 3]],
      [18, [18, 5]],
    ] as const) {
      const count = expected.reduce((sum, each) => sum + each, 0);
      const sheet = layOut(many(count, `sheet: { perPage: ${perPage}, staff: full }\n`));
      expect(groupsOf(sheet).map((groups) => groups.length)).toEqual(expected);
      expectInside(sheet);
      expectApart(sheet);
    }
  });

  /** A lesson of exercises, by the name that each has, or null. */
  const named = (names: readonly (string | null)[], more = '') =>
    `title: Named\nfeel: triplet\n${more}exercises:\n${names
      .map((name) => `  - { pattern: "x.. ..x x.x ..."${name === null ? '' : `, name: "${name}"`} }\n`)
      .join('')}`;

  /** Numbers of the exercises of each row, by the height at which they stand. */
  const rowsOf = (sheet: Sheet) =>
    sheet.pages.flatMap((_, page) => {
      const places = sheet.places.filter((each) => each.page === page);
      const heights = [...new Set(places.map(({ slots }) => Math.round(slots[0]?.yMm ?? 0)))];
      return heights.map((height) =>
        places
          .filter(({ slots }) => Math.round(slots[0]?.yMm ?? 0) === height)
          .map(({ exercise }) => exercise),
      );
    });

  it('[EN2800] a name that heads the exercises after it begins a row', () => {
    const sheet = layOut(named(['One', null, null, 'Two', null, 'Three', null, null, null]));
    // definition: two columns; three, two and four exercises under a heading each
    expect(rowsOf(sheet)).toEqual([[1, 2], [3], [4, 5], [6, 7], [8, 9]]);
    expectInside(sheet);
    expectApart(sheet);
  });

  it('[EN3400] a heading too long for its exercise reaches over the ones beside it, where none of them has a name', () => {
    const long = 'On 1, 2 and 3, each with its trip and let; the trip and let of 4';
    const told = (names: readonly (string | null)[]) => {
      const sheet = layOut(named(names));
      expectInside(sheet);
      expectApart(sheet);
      return textsOf(sheet).filter((text) => text !== '' && `${long} `.includes(text) && text.length > 6);
    };
    // definition: one line of text; where the neighbour has a name of its own, two
    expect(told([long, null, 'Two', null])).toEqual([long]);
    expect(told([long, 'Two', 'Three', 'Four'])).toHaveLength(2);
  });

  it('[EN2800] names of single exercises leave rows full', () => {
    const full = [[1, 2], [3, 4], [5]];
    // definition: a name without a name on the first exercise, and two names in a row, are of their own exercises
    expect(rowsOf(layOut(named([null, null, null, 'Two', null])))).toEqual(full);
    expect(rowsOf(layOut(named(['One', null, null, 'Two', 'Three'])))).toEqual(full);
  });

  it('[EN2800] headings begin no row where that would take a page more', () => {
    const block = ['Name', null, null];
    const names = Array.from({ length: 6 }, () => block).flat();
    const alike = layOut(named(names.map((_, i) => `Name ${i + 1}`)));
    const perPage = layOut(named(names, 'sheet: { perPage: 18 }\n'));
    // definition: eighteen exercises in two columns are nine rows on the page that they were asked for; blocks of three would be twelve
    expect(perPage.pages).toHaveLength(1);
    expect(alike.pages.length).toBeLessThanOrEqual(layOut(named(names)).pages.length);
    expect(rowsOf(perPage)).toHaveLength(9);
  });

  it('[EN48] one bar is not drawn out over a row, and sparse bars stand three abreast', () => {
    const widths = (text: string) => layOut(text).places.map(({ widthMm }) => widthMm);
    const dense = widths(many(6, '', '.g.g ..gx .g.g g..g').replace('feel: triplet\n', ''));
    expect(Math.max(...dense)).toBeLessThan(160);
    expect(new Set(dense.map((width) => width.toFixed(3))).size).toBe(1);
    expect(Math.max(...widths(many(6, '', 'x . x .')))).toBeLessThan(60);
  });
});

describe('repeats', () => {
  // standard: SMuFL glyphnames: repeatDot E044
  const closes = (text: string) =>
    tilesOf(layOut(text))
      .filter(({ title }) => title.startsWith('Exercise'))
      .map(({ drawing }) => drawing.shapes.filter(({ glyph }) => glyph === 'E044').length);

  it('[EN49] what goes round has a repeat sign, anything else a single line', () => {
    const bars = (count: number) => Array.from({ length: count }, () => 'x . . .').join(' | ');
    expect(closes(`title: T\nexercises: ["${bars(1)}", "${bars(2)}", "${bars(4)}"]\n`)).toEqual([2, 2, 0, 0]);
  });
});

describe('paper', () => {
  it('[EN23] pages have the size of the standard', () => {
    // standard: ISO 216: A4 is 210 × 297 mm
    expect(layOut(SWING, { paper: 'A4' }).pages[0]).toMatchObject({ widthMm: 210, heightMm: 297 });
    // standard: ANSI/ASME Y14.1: Letter is 8.5 × 11 inches of 25.4 mm
    // standard: ISO 216: A5 is 148 × 210 mm
    expect(layOut(SWING, { paper: 'A5' }).pages[0]).toMatchObject({ widthMm: 148, heightMm: 210 });
    // definition: a tablet's screen is 3 : 4
    const [tablet] = layOut(SWING, { paper: 'tablet' }).pages;
    expect((tablet?.widthMm ?? 0) / (tablet?.heightMm ?? 1)).toBeCloseTo(3 / 4, 2);
    const [letter] = layOut(SWING, { paper: 'Letter' }).pages;
    expect(letter?.widthMm).toBeCloseTo(8.5 * 25.4, 9);
    expect(letter?.heightMm).toBeCloseTo(11 * 25.4, 9);
  });
});

describe('header', () => {
  it('[EN24] has title, teacher, meter, tempo and feel', () => {
    const texts = textsOf(layOut(SWING));
    expect(texts).toEqual(
      expect.arrayContaining(['First swing', 'Oda Lindqvist-Reyes', '4/4', '= 80', 'goal 120', 'swing']),
    );
    // common practice: swing is marked as two eighths = a quarter and an eighth of a triplet
    const [even, swung] = ['mark-even', 'mark-swung'].map((id) =>
      tilesOf(layOut(SWING)).find((tile) => tile.heads[0]?.id.startsWith(id)),
    );
    expect([even?.heads.length, swung?.heads.length]).toEqual([2, 2]);
    // standard: SMuFL glyphnames: tuplet3 E883
    expect(swung?.drawing.shapes.map((shape) => shape.glyph)).toContain('E883');
  });

  it('[EN24] other feels and a left-handed set-up are said in words', () => {
    const texts = (more: string) => textsOf(layOut(SWING.replace('feel: triplet', more)));
    expect(texts('feel: 1.8:1')).toContain('swing 1.8:1');
    expect(texts('feel: 2:1 sixteenths\nsetUp: left-handed')).toEqual(
      expect.arrayContaining(['swing', 'left-handed']),
    );
    // definition: triplets that are written out are played as they stand; of eighths it is said how
    expect(texts('feel: even')).not.toContain('straight');
    const eighths = 'title: T\ngroove: {hihat: xx xx xx xx}\nexercises: ["x . x ."]\n';
    expect(textsOf(layOut(eighths))).toContain('straight');
    expect(texts('feel: by tempo')).toContain('swing by tempo');
    // definition: the division of a compound beat is in three already, so triplet feel is as written
    const compound = textsOf(layOut('title: T\nmeter: 12/8\nfeel: triplet\nexercises: ["x x x x"]\n'));
    expect(compound).not.toContain('swing');
  });

  it('[EN25] the tempo counts the beat of the meter, whether or not it divides', () => {
    const printed = (of: string, tempo: string) => {
      const beats = meter(of)
        .beats.map(() => 'x')
        .join(' ');
      const sheet = layOut(`title: T\nmeter: ${of}\ntempo: ${tempo}\nexercises: ["${beats}"]\n`);
      const mark = tilesOf(sheet).find(({ content }) => content.includes('mark-tempo'));
      const glyphs = mark?.drawing.shapes.map(({ glyph }) => glyph);
      // standard: SMuFL, noteheadBlack E0A4, noteheadHalf E0A3
      const head = glyphs?.includes('E0A4') ? 'black' : glyphs?.includes('E0A3') ? 'half' : 'other';
      return { head, isDotted: mark?.content.includes('class="dots"'), texts: textsOf(sheet) };
    };
    const says = (...texts: readonly string[]) => expect.arrayContaining([...texts]);
    // definition: a dotted quarter is 3/2 of a quarter, so 90 quarters a minute are 60 dotted ones
    expect(printed('12/8', '{ start: 90, goal: 120, step: 15 }')).toEqual({
      ...{ head: 'black', isDotted: true, texts: says('= 60', 'goal 80', '60', '70', '80') },
    });
    // definition: 100 quarters a minute are 66 2/3 dotted ones, and 70 are 46 2/3
    expect(printed('9/8', '{ start: 100, goal: 121, step: 15 }')).toEqual({
      ...{ head: 'black', isDotted: true, texts: says('= 67', 'goal 81', '67', '77', '81') },
    });
    expect(printed('6/8', '70').texts).toEqual(says('= 47'));
    // definition: a half note is two quarters
    expect(printed('2/2', '120')).toEqual({ head: 'half', isDotted: false, texts: says('= 60') });
    expect(printed('3/4', '90')).toEqual({ head: 'black', isDotted: false, texts: says('= 90') });
  });

  it('[EN35] a picture stands in the corner of the first page', () => {
    const sheet = layOut(SWING, {
      codeSvg:
        '<svg viewBox="0 0 2 2"><rect width="1" height="1"/><rect x="1" y="1" width="1" height="1"/></svg>',
    });
    const pictures = sheet.pages.map((page) => page.items.filter((item) => item.kind === 'picture'));
    const [picture] = pictures[0] ?? [];
    if (!picture) throw new Error('no picture');
    const { margins } = sheet.pages[0] as Sheet['pages'][number];
    const box = boxOf(picture);
    expect(box.x + box.width).toBeCloseTo(margins.x + margins.width, 6);
    expect(box.y).toBeCloseTo(margins.y, 6);
    expect(pictures.slice(1).flat()).toEqual([]);
    expectInside(sheet);
    expect(() => layOut(SWING, { codeSvg: '<svg><image/></svg>' })).toThrow('found <image> in an SVG');
  });
});

describe('groove and legend', () => {
  it('[EN26] the groove is printed once with its stages', () => {
    const sheet = layOut(SWING);
    expect(tilesOf(sheet).filter((tile) => tile.title === 'Groove').length).toBe(1);
    expect(textsOf(sheet)).toEqual(
      expect.arrayContaining([
        // definition: the default balance on the one scale of dynamics: 0, -8, feathered, -4 dB
        ...['Build it up', 'ride, f', '+ hi-hat foot, mp', '+ bass drum, feathered', '+ the exercise, mf'],
      ]),
    );
    const long = layOut(
      'title: T\ngroove: { ride: "x x x x | x.x x x x | x x x x | x x x.x x" }\nexercises: ["x . . ."]\n',
    );
    const bars = tilesOf(long)
      .filter((tile) => tile.title === 'Groove')
      .flatMap((tile) => tile.heads.map((head) => head.bar));
    expect([...new Set(bars)]).toEqual([1, 2, 3, 4]);
  });

  it('[EN27] a form of the teacher is explained, and none that every lesson has', () => {
    const forms =
      'forms: { "four and two": { sections: [{ pattern: 4, ending: rimshot + crash }, { time: 2 }], repeat: 4 }, hush: { sections: [{ time: 4 }] } }\n';
    const texts = textsOf(layOut(SWING + forms)).join(' ');
    expect(texts).toContain(
      '4 bars of the pattern, the last ending on rim shot + crash on the last triplet of 4; then 2 bars of time; all of it 4 times.',
    );
    expect(texts).not.toContain('hush');
    expect(textsOf(layOut(SWING)).join(' ')).not.toMatch(/loop|four and two|bars of the pattern/);
  });

  it('[EN28] the legend has what is printed and nothing else', () => {
    const labels = [
      'ride',
      'snare',
      'bass drum',
      'hi-hat foot',
      'side stick',
      'rim shot',
      'crash',
      'accent',
      'ghost note',
      'flam',
      'drag',
      'buzz',
      'bell of the ride',
      'splash with the foot',
      'open hi-hat',
      'right, left hand',
    ];
    const legendOf = (text: string) => textsOf(layOut(text)).filter((each) => labels.includes(each));
    const plain = legendOf('title: T\ngroove: { hihat: "x x x x" }\nlead: hihat\nexercises: ["x . x ."]\n');
    expect([...new Set(plain)]).toEqual(['snare']);
    const all = legendOf(
      'title: T\ngroove: { ride: "b x x x", hihat-foot: "o . x ." }\nexercises: [{ pattern: "X g f d", sticking: "R L R L" }, "b s r x"]\n',
    );
    for (const label of labels.filter((each) => !['bass drum', 'crash', 'open hi-hat'].includes(each)))
      expect(all).toContain(label);
    for (const label of ['bass drum', 'crash', 'open hi-hat']) expect(all).not.toContain(label);
  });
});

describe('exercises', () => {
  it('[EN29] have number, name, hands, counts and remarks', () => {
    const sheet = layOut(SWING, { counts: true });
    const [first, second] = groupsOf(sheet).flat();
    const texts = (group: GroupItem | undefined) =>
      flat(group?.items ?? []).flatMap((item) => (item.kind === 'text' ? [item.runs[0]?.text] : []));
    // common practice: triplets are counted "1 trip let"
    expect(texts(first)).toEqual(expect.arrayContaining(['1', 'trip', 'let', '2', '3', '4']));
    expect(texts(second)).toEqual(expect.arrayContaining(['2', 'Gaps', 'R', 'L', 'Keep the ride even.']));
    expect(second?.label).toBe('Exercise 2: Gaps');
    expect(texts(groupsOf(layOut(SWING, { stickings: false })).flat()[1])).not.toContain('R');
  });

  it('[EN29] counts and hands stand under their heads', () => {
    const sheet = layOut(SWING, { counts: true });
    const group = groupsOf(sheet).flat()[1];
    const tile = group?.items.find((item) => item.kind === 'tile');
    if (tile?.kind !== 'tile') throw new Error('no tile');
    const middles = (text: string) =>
      (group?.items ?? []).flatMap((item) =>
        item.kind === 'text' && item.runs[0]?.text === text ? [item.x + item.widthMm / 2] : [],
      );
    const heads = tile.tile.heads.map((head) => head.xMm + tile.x);
    for (const x of [...middles('R'), ...middles('L')]) {
      expect(Math.min(...heads.map((head) => Math.abs(head - x)))).toBeLessThan(0.01);
    }
    expect(middles('let').some((x) => Math.abs(x - (heads[0] ?? 0)) < 0.01)).toBe(true);
  });

  it('[EN30] tempi to tick off go from start to goal', () => {
    const boxes = (tempo: string) => {
      const [group] = groupsOf(layOut(SWING.replace('{ start: 80, goal: 120, step: 10 }', tempo))).flat();
      const rects = (group?.items ?? []).filter((item) => item.kind === 'rect').length;
      const texts = (group?.items ?? []).flatMap((item) =>
        item.kind === 'text' && /^\d{2,}/.test(item.runs[0]?.text ?? '') ? [Number(item.runs[0]?.text)] : [],
      );
      return { rects, texts };
    };
    expect(boxes('{ start: 80, goal: 120, step: 10 }')).toEqual({ rects: 5, texts: [80, 90, 100, 110, 120] });
    expect(boxes('{ start: 80, goal: 95, step: 10 }').texts).toEqual([80, 90, 95]);
    expect(boxes('{ start: 80, goal: 80, step: 10 }').texts).toEqual([80]);
    const many = boxes('{ start: 40, goal: 299, step: 1 }').texts;
    expect([many[0], many.at(-1), many.length > 5]).toEqual([40, 299, true]);
  });

  it('[EN31] a lone voice stands on one line, several on five, a full sheet has the groove', () => {
    const staffOf = (text: string, staff: 'compact' | 'full') => {
      const tile = tilesOf(layOut(text, { staff })).find((each) => each.title === 'Exercise 1');
      return {
        lines: (tile?.staffBottomMm ?? 0) - (tile?.staffTopMm ?? 0) > 4 ? 5 : 1,
        voices: new Set(tile?.heads.map((head) => head.voice)),
      };
    };
    const two = SWING.replace('- "x.. ..x x.x ..."', '- { pattern: { snare: "x . x .", bass: ". x . x" } }');
    expect(staffOf(SWING, 'compact')).toEqual({ lines: 1, voices: new Set(['snare']) });
    expect(staffOf(two, 'compact')).toEqual({ lines: 5, voices: new Set(['snare', 'bass']) });
    expect(staffOf(SWING, 'full')).toEqual({
      lines: 5,
      voices: new Set(['ride', 'hihat-foot', 'bass', 'snare']),
    });
  });

  it('[EN32] long exercises go on in the next row, each bar once', () => {
    const bars = Array.from({ length: 7 }, () => 'x x.x . x').join(' | ');
    const sheet = layOut(`title: T\nexercises: ["${bars}", "x . . ."]\n`);
    const printed = sheet.places
      .filter((place) => place.exercise === 1)
      .map((place) => [...new Set(place.slots.map((slot) => slot.bar))]);
    expect(printed.flat()).toEqual([1, 2, 3, 4, 5, 6, 7]);
    expect(printed.length).toBeGreaterThan(1);
    expect(new Set(sheet.places.filter((place) => place.exercise === 1).map((place) => place.yMm)).size).toBe(
      printed.length,
    );
  });
});

describe('places', () => {
  it('[EN33] every slot has a place where its page shows it', () => {
    const sheet = layOut(SWING);
    const [first] = sheet.places;
    // definition: three slots in each of four beats
    expect(first?.slots.map(({ bar, beat, slot, id }) => `${bar}.${beat}.${slot}${id ? '!' : ''}`)).toEqual([
      '1.1.1!',
      '1.1.2',
      '1.1.3',
      '1.2.1',
      '1.2.2',
      '1.2.3!',
      '1.3.1!',
      '1.3.2',
      '1.3.3!',
      '1.4.1',
      '1.4.2',
      '1.4.3',
    ]);
    for (const place of sheet.places) {
      const xs = place.slots.map((slot) => slot.xMm);
      expect(xs).toEqual(xs.toSorted((a, b) => a - b));
      for (const slot of place.slots) {
        expect(
          contains(
            { x: place.xMm, y: place.yMm, width: place.widthMm, height: place.heightMm },
            { x: slot.xMm, y: slot.yMm, width: 0, height: 0 },
            0,
          ),
        ).toBe(true);
        if (slot.id !== null) expect(sheet.pages[place.page]?.svg).toContain(`id="${slot.id}"`);
      }
    }
  });

  it('[EN40] texts of a page can be outlines that say what they spell, of the same size and place', () => {
    const [plain, outlined] = [layOut(SWING), layOut(SWING, { outlineText: true })].map(
      (each) => each.pages[0],
    );
    expect(plain?.svg).toContain('>First swing</text>');
    expect(outlined?.svg).not.toContain('<text');
    expect(outlined?.svg).toContain('aria-label="First swing"');
    const { unitsPerEm, glyphs } = fonts.outline({ face: 'bold', text: 'First swing' });
    const last = glyphs.at(-1);
    const before = fonts.widthMm('First swin', 'bold', 1);
    // definition: the last letter stands where the letters before it end, kerning aside
    expect(Math.abs((last?.x ?? 0) / unitsPerEm - before)).toBeLessThan(0.05);
    // definition: ten letters and a space, which has no outline
    expect(glyphs).toHaveLength(10);
    expect(rootOf(outlined?.svg ?? '').name).toBe('svg');
  });

  it('[EN34] ids are unique on a page of many exercises, and the page is XML', () => {
    const exercises = Array.from(
      { length: 60 },
      (_, i) => `  - "${['x..', '..x', 'x.x', 'xx'][i % 4]} ${['x', '.x.', '...', 'xxx'][i % 3]} x .x"`,
    );
    const sheet = layOut(`title: "<Sixty> & more"\nexercises:\n${exercises.join('\n')}\n`, { scale: 0.7 });
    for (const page of sheet.pages) {
      const ids = idsOf(page.svg);
      expect(ids.length).toBeGreaterThan(100);
      expect(new Set(ids).size).toBe(ids.length);
    }
    expect(glyphsOf(sheet).has('E0A4')).toBe(true);
  });

  it('[EN20] characters that no font has are reported', () => {
    expect(layOut('title: カイト\nexercises: ["x . . ."]\n').missingCharacters).toEqual(['カ', 'イ', 'ト']);
    expect(layOut(SWING).missingCharacters).toEqual([]);
  });
});

describe('clef and meter', () => {
  /** Tiles of exercises that begin with a clef. @source SMuFL, unpitchedPercussionClef1 */
  const clefs = (sheet: Sheet) =>
    tilesOf(sheet)
      .filter(({ drawing }) => drawing.shapes.some(({ glyph }) => glyph === 'E069'))
      .flatMap(({ heads }) => heads[0]?.id.replace(/-b.*/, '') ?? []);
  const beats = ['x. x.', 'xx x.', 'x. xx', '.x x.', 'x. .x'].map((beat) => `${beat} ${beat}`);
  const three = (groove: string) =>
    `title: T\ngroove: ${groove}\nexercises:\n${beats.map((each) => `  - {pattern: {hihat: xx xx xx xx, bass: ${each}}}`).join('\n')}\n`;

  it('[EN5202] stand before the first exercise where no groove has them, and all stay abreast', () => {
    const bare = layOut(three('{}'));
    expect(clefs(bare)).toEqual(['e1']);
    expect(clefs(layOut(three('{ride: x x x x}')))).toEqual(['groove']);
    const tops = groupsOf(bare)[0]?.map(({ y }) => Math.round(y)) ?? [];
    expect(tops.slice(0, 3)).toEqual([tops[0], tops[0], tops[0]]);
    expectInside(bare);
    expectApart(bare);
  });

  it('[EN5202] so they do in a section without a groove', () => {
    const text = `title: T\nsections:\n  - {heading: Clap, groove: {}, comping: clap, exercises: [x x x x, x . x .]}\n  - {heading: Ride, exercises: [x . x .]}\n`;
    expect(clefs(layOut(text))).toEqual(['e1', 'section-2-groove']);
  });
});
