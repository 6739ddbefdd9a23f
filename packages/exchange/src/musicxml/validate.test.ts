import { Bpm } from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyLesson, lessonOf, swingLesson } from '../../test/lessons.ts';
import { schemaValidator } from '../../test/schema.ts';
import { writeMusicXml } from './write.ts';

const validate = schemaValidator();

describe('MusicXML is valid against its schema', () => {
  it('[EX40] as a sheet, as one exercise, without the groove, with a date, and with no exercise at all', () => {
    const lesson = swingLesson();
    const texts = [
      writeMusicXml(lesson),
      writeMusicXml(lesson, { exercises: [2], date: '2026-11-25', bpm: Bpm(97.5) }),
      writeMusicXml(lesson, { groove: false }),
      writeMusicXml({ ...lesson, exercises: [] }),
      writeMusicXml(lessonOf({ by: null, title: '' })),
      writeMusicXml({ ...lesson, playedWith: 'brushes' }),
    ];
    // standard: MusicXML 4.0, musicxml.xsd (internal/fixtures/musicxml-4.0)
    for (const text of texts) expect(validate(text, 'sheet.musicxml')).toEqual([]);
  });

  it('[EX40] for any lesson', () => {
    fc.assert(
      fc.property(anyLesson, (lesson) => {
        // standard: MusicXML 4.0, musicxml.xsd (internal/fixtures/musicxml-4.0)
        expect(validate(writeMusicXml(lesson), 'sheet.musicxml')).toEqual([]);
      }),
    );
  });

  it('[EX41] tells what breaks the schema and where', () => {
    const broken = writeMusicXml(swingLesson()).replace('<sign>percussion</sign>', '<sign>drums</sign>');
    const line = broken.split('\n').findIndex((each) => each.includes('drums')) + 1;
    // standard: MusicXML 4.0, musicxml.xsd: clef-sign is an enumeration without "drums"
    expect(validate(broken, 'sheet.musicxml')[0]).toMatchObject({ line });
    expect(validate('<score-partwise', 'sheet.musicxml')[0]).toMatchObject({ line: 1 });
  });
});
