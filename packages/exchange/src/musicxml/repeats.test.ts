import { childrenOf, parseLesson, readXml, type XmlElement } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { createMeiWriter } from '../../test/engraved.ts';
import { schemaValidator } from '../../test/schema.ts';
import { readMusicXml } from './read.ts';
import { writeMusicXml } from './write.ts';

const WAYS = [
  'repeats: 1-4',
  'repeats: {bars: 1-2, endings: [3, 4]}',
  'repeats: {bars: 1-2, endings: [3, 4], times: 4}',
  'repeats: {bars: 1, times: 2, endings: [2-3, 4]}',
  'repeats: [1, {bars: 2-4, times: 3}]',
  'barRepeats: [2, 4]',
  'barRepeats: 3-4',
];

const BARS = 'x x . . | x x . . | . . x x | . . x x';
const SAME = 'x x . . | . . x x | x x . . | . . x x';

function lessonOf(said: string) {
  const pattern = said === 'barRepeats: 3-4' ? SAME : BARS;
  const { lesson, problems } = parseLesson(
    `title: T\ngroove: {hihat: x x x x, bass: x . x .}\nexercises:\n  - {pattern: ${pattern}, ${said}}\n`,
    'x',
  );
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

function measuresOf(root: XmlElement | null): readonly XmlElement[] {
  const found: XmlElement[] = [];
  const walk = (element: XmlElement) => {
    if (element.name === 'measure') found.push(element);
    element.children.forEach(walk);
  };
  if (root) walk(root);
  return found;
}

describe('repeats in MusicXML', () => {
  it('[EX380] are valid, and come back as they were, without the lesson inside too', () => {
    const validate = schemaValidator();
    for (const way of WAYS) {
      const lesson = lessonOf(way);
      const text = writeMusicXml(lesson, { lessonText: null });
      // standard: MusicXML 4.0, musicxml.xsd (internal/fixtures/musicxml-4.0)
      expect(validate(text, 'sheet.musicxml')).toEqual([]);
      const [read] = readMusicXml(text).exercises;
      expect([way, read?.repeats, read?.barRepeats]).toEqual([
        way,
        lesson.exercises[0]?.repeats,
        lesson.exercises[0]?.barRepeats,
      ]);
    }
  });

  it('[EX380] are what verovio shows: the same notes, repeat signs, endings and signs in place of notes', async () => {
    const toMei = await createMeiWriter();
    // library: verovio 6 (package-lock.json), its MEI of our MusicXML
    const shown = WAYS.map((way) => {
      const text = writeMusicXml(lessonOf(way));
      const mei = readXml(toMei(text)).root;
      const measures = measuresOf(mei);
      const lines = measures.map(
        ({ attributes }) => `${attributes['left'] ?? ''}/${attributes['right'] ?? ''}`,
      );
      const endings: string[] = [];
      let notes = 0;
      const signs: string[] = [];
      const walk = (element: XmlElement) => {
        if (element.name === 'ending')
          endings.push(`${element.attributes['n']}: ${childrenOf(element, 'measure').length}`);
        if (element.name === 'note') notes += 1;
        if (/^mRpt/.test(element.name)) signs.push(element.name);
        element.children.forEach(walk);
      };
      if (mei) walk(mei);
      return { way, lines, endings, signs, notes };
    });
    const notesOf = (way: string) => readMusicXml(writeMusicXml(lessonOf(way))).strokes.length;
    for (const { way, signs, notes } of shown) {
      if (signs.length === 0) expect([way, notes]).toEqual([way, notesOf(way)]);
    }
    const seen = shown.map(({ way, lines, endings, signs }) =>
      [way, lines.join(' '), endings.join(' '), signs.join(' ')].join('; '),
    );
    // definition: what is printed for each, by MEI's names; a sign stands in both layers of a bar. Of a sign for two
    // bars verovio's reader of MusicXML makes two of one bar: it knows no other (its source, iomusxml.cpp).
    expect(seen).toEqual([
      'repeats: 1-4; rptstart/ / / /rptend; ; ',
      'repeats: {bars: 1-2, endings: [3, 4]}; rptstart/ / /rptend /end; 1: 1 2: 1; ',
      'repeats: {bars: 1-2, endings: [3, 4], times: 4}; rptstart/ / /rptend /end; 1, 2, 3: 1 4: 1; ',
      'repeats: {bars: 1, times: 2, endings: [2-3, 4]}; rptstart/ / /rptend /end; 1: 2 2: 1; ',
      'repeats: [1, {bars: 2-4, times: 3}]; rptstart/rptend rptstart/ / /rptend; ; ',
      'barRepeats: [2, 4]; / / / /end; ; mRpt mRpt mRpt mRpt',
      'barRepeats: 3-4; / / / /end; ; mRpt mRpt mRpt mRpt',
    ]);
  });
});
