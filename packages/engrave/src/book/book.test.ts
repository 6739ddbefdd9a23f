import { type Lesson, meter, parsePattern } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { ENGLISH_SHEET } from '../../../../internal/testing/in-english.ts';
import { readPdf } from '../../../../internal/testing/pdf.ts';
import { engraver, fonts, lessonOf } from '../../test/setup.ts';
import { flat } from '../../test/sheets.ts';
import { writePdf } from '../pdf/write-pdf.ts';
import { boxOf } from '../sheet/item.ts';
import { rhythmOf } from '../sheet/rhythm.ts';
import { contains } from '../svg/geometry.ts';
import { type BookContent, layOutBook } from './book.ts';

const swing = lessonOf('title: Swing\nby: Oda\nfeel: triplet\nexercises: [x.. ..x x.x ..., x x x x]\n');
const limbs = lessonOf(`title: Limbs
sections:
  - {heading: Ride, comping: ride, exercises: [xx xx xx xx]}
  - {heading: Feet, comping: bass, exercises: [x... .x.. ..x. ...x]}
`);

const book = (over: Partial<BookContent> = {}, lessons: readonly Lesson[] = [swing, limbs]) =>
  layOutBook(
    {
      ...{ title: 'Two lessons', by: 'Oda', text: 'Begin *slowly*.', lessons, paper: 'A4' },
      ...{ twoSided: true, contents: true, key: true, index: true },
      ...over,
    },
    { engraver, fonts, words: ENGLISH_SHEET },
  );

const textsOn = (pages: ReturnType<typeof book>['pages'], page: number) =>
  flat(pages[page - 1]?.items ?? []).flatMap((item) =>
    item.kind === 'text' ? [item.runs.map((run) => run.text).join('')] : [],
  );

describe('a book', () => {
  it('[EN381] has title, contents, key, chapters on right-hand pages, and an index that name their pages', () => {
    const { pages, outline } = book();
    const said = (page: number) => textsOn(pages, page).filter((text) => text !== '.');
    expect(pages.length % 2).toBe(0);
    expect(said(1)).toEqual(['Two lessons', 'Oda']);
    expect(said(2)).toEqual([]);
    // definition: title 1, blank 2, contents 3, key 4; the chapters on 5 and 7, the index on 9
    const list = said(3);
    expect(list).toContain('Contents');
    expect(list.slice(list.indexOf('Swing'))).toEqual(['Swing', '5', 'Limbs', '7', 'Ride', '7', 'Feet', '7']);
    expect(said(4)).toContain('Key to the notation');
    expect(said(5)).toContain('Swing');
    expect(said(6)).toEqual([]);
    expect(said(7)).toContain('Limbs');
    const index = said(9);
    expect(index.slice(index.indexOf('ride'))).toEqual([
      ...['ride', 'eighths', '7', 'bass drum', 'sixteenths', '7'],
      ...['snare', 'beats', '5', 'triplets', '5'],
    ]);
    expect(outline.map(({ title, page }) => `${title} ${page + 1}`)).toEqual([
      ...['Contents 3', 'Key to the notation 4', 'Swing 5', 'Limbs 7', 'Index by voice and rhythm 9'],
    ]);
  });

  it('[EN381] runs its heads on the outer side, and leaves no page blank where it is printed on one', () => {
    const { pages } = book({ twoSided: false });
    expect(pages.every((_, index) => textsOn(pages, index + 1).length > 0)).toBe(true);
    const two = book().pages;
    const number = (page: number) =>
      flat(two[page - 1]?.items ?? []).find(
        (item) => item.kind === 'text' && item.runs[0]?.text === `${page}` && item.weight === 'bold',
      );
    expect([number(4)?.x, (number(5)?.x ?? 0) > 150]).toEqual([12, true]);
    expect(textsOn(two, 4)).toContain('Two lessons');
    for (const page of two) {
      for (const item of flat(page.items)) expect(contains(page.margins, boxOf(item), 0.02)).toBe(true);
    }
  });

  it('[EN381] is one PDF with bookmarks, its key told once', async () => {
    const { pages, outline } = book();
    const facts = await readPdf(await writePdf(pages, fonts, { title: 'Two lessons', outline }));
    expect(facts.pages).toHaveLength(pages.length);
    const legends = pages.filter((_, index) => textsOn(pages, index + 1).includes('bass drum (exercises)'));
    expect(legends).toHaveLength(1);
  });

  it('[EN382] names the finest rhythm of a part as the trade does', () => {
    const of = (text: string, written = '4/4') =>
      rhythmOf(meter(written), { voice: 'snare', pattern: parsePattern(text) });
    // common practice: names of note values and tuplets, by what a beat of the meter is divided into
    expect(of('x x x x')).toBe('beats');
    expect(of('x x.x x x')).toBe('triplets');
    expect(of('x. .x x x')).toBe('eighths');
    expect(of('x... ...x x x')).toBe('sixteenths');
    expect(of('x..... .....x x x')).toBe('sextuplets');
    expect([of('x.x ..x', '6/8'), of('x.x.xx ...', '6/8'), of('x.x. ....', '6/8')]).toEqual([
      'eighths',
      'sixteenths',
      'duplets',
    ]);
    expect(of('xx .. .. ..', '4/8')).toBe('sixteenths');
  });
});
