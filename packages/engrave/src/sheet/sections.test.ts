import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { arbitraryDividedLesson } from '../../../../internal/testing/arbitrary-lesson.ts';
import { fonts } from '../../test/setup.ts';
import { expectApart, expectInside, flat, idsOf, layOut, textsOf } from '../../test/sheets.ts';
import { wrapRuns } from '../text/wrap-runs.ts';
import { style } from './setting.ts';
import type { Sheet } from './sheet.ts';

const DIVIDED = `title: First swing
text: Four limbs, *one* time.
tempo: {start: 72, goal: 120}
feel: triplet
groove: {ride: x x.x x x.x, hihat-foot: . x . x, bass: x x x x}
lead: ride
sections:
  - heading: The other hand
    text: |
      **Soft**, and behind the ride.

      - on the beat, see [the room](https://www.example.org/tannery/)
      - off the beat
    exercises: [..x ... ..x ...]
  - heading: The same faster
    tempo: {start: 100, goal: 120}
    comping: bass
    exercises: [x . x ., x x x x]
  - heading: A waltz
    meter: 3/4
    feel: even
    groove: {ride: xx x xx}
    exercises: [x . .]
`;

const all = (sheet: Sheet) => sheet.pages.flatMap((_, page) => textsOf(sheet, page));
it('[EN43] prints every section under its heading, with its text', () => {
  const sheet = layOut(DIVIDED);
  // Pages one under the other.
  const lines = sheet.pages.flatMap((page, index) =>
    flat(page.items).flatMap((item) =>
      item.kind === 'text'
        ? [
            {
              y: item.y + 1000 * index,
              text: item.runs
                .map((run) => run.text)
                .join('')
                .trim(),
            },
          ]
        : [],
    ),
  );
  const y = (text: string) => lines.find((line) => line.text === text)?.y ?? -1;
  const exercise = (number: number) => {
    const place = sheet.places.find((each) => each.exercise === number);
    return place ? place.yMm + 1000 * place.page : -1;
  };
  const order = [
    ...[y('First swing'), y('one'), y('The other hand'), y('Soft'), exercise(1)],
    ...[y('The same faster'), exercise(2), y('A waltz'), exercise(4)],
  ];
  expect(order).toEqual(order.toSorted((a, b) => a - b));
  expect(Math.min(...order)).toBeGreaterThan(0);
});

it('[EN43] prints of meter, tempo, feel, groove and forms what has changed', () => {
  const sheet = layOut(DIVIDED);
  const texts = all(sheet);
  const count = (text: string) => texts.filter((each) => each === text).length;
  // The second section changes the tempo only; the third meter, feel and groove.
  expect([count('= 72'), count('= 100'), count('4/4'), count('3/4'), count('straight')]).toEqual([
    2, 1, 1, 1, 1,
  ]);
  expect(count('Groove')).toBe(2);
  expect(count('loop')).toBe(0);
  const key = ['ride', 'hi-hat foot', 'bass drum', 'snare', 'side stick'];
  expect(key.map(count)).toEqual([1, 1, 1, 1, 0]);
});

it('[EN43] [EN33] draws each exercise in its own meter', () => {
  const { places } = layOut(DIVIDED);
  const beats = (exercise: number) =>
    Math.max(
      ...places
        .filter((each) => each.exercise === exercise)
        .flatMap((each) => each.slots.map((slot) => slot.beat)),
    );
  expect([1, 2, 4].map(beats)).toEqual([4, 4, 3]);
});

it('[EN44] sets emphasis in its own cut, hangs the signs of lists and shows where a link leads', () => {
  const sheet = layOut(DIVIDED);
  const items = flat(sheet.pages[0]?.items ?? []).flatMap((item) => (item.kind === 'text' ? [item] : []));
  const of = (start: string) =>
    items.find((item) =>
      item.runs
        .map((run) => run.text)
        .join('')
        .startsWith(start),
    );
  expect([of('one')?.weight, of('Soft')?.weight, of('Four limbs')?.weight]).toEqual([
    'italic',
    'bold',
    'regular',
  ]);
  expect(of('•')?.x).toBeLessThan(of('on the beat')?.x ?? 0);
  expect(all(sheet)).toContain('on the beat, see the room (example.org/tannery)');
});

it('[EN44] loses no letter where it breaks lines', () => {
  const words = fc.array(fc.string({ maxLength: 30 }), { maxLength: 12 }).map((parts) => parts.join(' '));
  const runs = fc.array(fc.record({ text: words, weight: fc.constantFrom('regular', 'bold', 'italic') }));
  fc.assert(
    fc.property(runs, fc.integer({ min: 5, max: 120 }), (given, widthMm) => {
      const styled = given.map(({ text, weight }) => ({ text, style: style(weight as 'bold', 4) }));
      const lines = wrapRuns(fonts, styled, widthMm);
      const letters = (pieces: readonly { readonly text: string }[]) =>
        pieces
          .map(({ text }) => text)
          .join('')
          .replaceAll(/\s/g, '');
      expect(letters(lines.flat())).toBe(letters(styled));
    }),
    { seed: 11, numRuns: 200 },
  );
});

it('[EN45] leaves no heading alone at the foot of a page', () => {
  // Sections of one exercise, more and more of them before the last heading, so that it falls everywhere on a page.
  for (let before = 1; before <= 13; before += 1) {
    const section = (heading: string) => `  - heading: ${heading}\n    exercises: [x x x x]\n`;
    const sections = Array.from({ length: before }, (_, i) => section(`Part ${i + 1}`)).join('');
    const sheet = layOut(`title: T\nsections:\n${sections}${section('Last')}`);
    const page = sheet.pages.findIndex((_, index) => textsOf(sheet, index).includes('Last'));
    expect([before, sheet.places.at(-1)?.page]).toEqual([before, page]);
  }
});

it('[EN21] [EN22] [EN34] keeps any divided lesson inside the margins, apart, and under ids of its own', () => {
  fc.assert(
    fc.property(arbitraryDividedLesson, fc.constantFrom('compact', 'full'), (lesson, staff) => {
      const sheet = layOut(lesson, { staff: staff as 'compact' });
      expectInside(sheet);
      expectApart(sheet);
      for (const page of sheet.pages) {
        const ids = idsOf(page.svg);
        expect(new Set(ids).size).toBe(ids.length);
      }
      expect(new Set(sheet.places.map((place) => place.exercise)).size).toBe(lesson.exercises.length);
    }),
    { numRuns: 5 },
  );
});

it('[EN2901] a page never ends with a heading and its text alone', () => {
  const sheet = layOut(readFileSync('demo/limb-by-limb.lesson.yaml', 'utf8'));
  const isFollowed = sheet.pages.map((page) => {
    const items = flat(page.items);
    const staves = items.filter((each) => each.kind === 'tile' && each.tile.widthMm > 30);
    const notes = Math.max(...staves.map(({ y }) => y));
    const headings = items.filter((each) => each.kind === 'text' && each.role === 'H2').map(({ y }) => y);
    // definition: under every heading there are notes on its page
    return headings.every((y) => y < notes);
  });
  expect(isFollowed).toEqual([true, true, true, true]);
});

it('[EN3500] prints what comes first under the heading, and counts under what is clapped', () => {
  const sheet = layOut(`title: First swing
sections:
  - heading: Count and clap
    groove: {}
    comping: clap
    exercises: [x.x x.x x.x x.x]
  - heading: Time
    before: Count and clap
    exercises: [x.. ..x x.x ...]
`);
  const texts = all(sheet);
  expect(texts.indexOf('First: Count and clap')).toBe(texts.indexOf('Time') + 1);
  // common practice: triplets are counted 1 trip let; the exercise that is played has no counts unless they are asked for
  expect(texts.filter((text) => text === 'let')).toHaveLength(4);
  // The key to the notation apart, one groove is printed, and one way of building it up.
  expect(texts.filter((text) => text === 'Groove')).toHaveLength(1);
  expectInside(sheet);
  expectApart(sheet);
});
