import { readdirSync, readFileSync } from 'node:fs';
import {
  type Exercise,
  formatPattern,
  type Lesson,
  type Meter,
  meter,
  parseLesson,
  perform,
  printLesson,
  sectionOf,
  struckSlots,
} from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arbitraryDividedLesson } from '../../../../internal/testing/arbitrary-lesson.ts';
import { readMidi } from '../midi/read.ts';
import { writeMidiSheet } from '../midi/write.ts';
import { readMusicXml } from '../musicxml/read.ts';
import { writeMusicXml } from '../musicxml/write.ts';
import { findGroove } from './find-groove.ts';
import { LESSON_FIELD } from './inside.ts';

const DEMO = new URL('../../../../demo/', import.meta.url);
const DEMOS = readdirSync(DEMO).filter((file) => file.endsWith('.lesson.yaml'));

function lessonOf(text: string): Lesson {
  const { lesson, problems } = parseLesson(text, 'test.lesson.yaml');
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

const demo = (file: string) => lessonOf(readFileSync(new URL(file, DEMO), 'utf8'));

function midiOf(lesson: Lesson): Uint8Array {
  const sections = lesson.exercises.map(({ number }) => {
    const section = sectionOf(lesson, number);
    const [form] = section.forms;
    if (!form) throw new Error('no form');
    return {
      name: String(number),
      meter: section.meter,
      performance: perform(section, { exercise: number, form }),
    };
  });
  return writeMidiSheet(sections, { title: lesson.title, lessonText: printLesson(lesson) });
}

/** A lesson as plain data, so that two can be compared. */
const printed = (text: string | null) => (text === null ? null : printLesson(lessonOf(text)));

describe('the lesson inside', () => {
  it('[EX75] the demo lessons come back as they were', () => {
    expect(DEMOS.length).toBeGreaterThan(4);
    for (const file of DEMOS) {
      const lesson = demo(file);
      // definition: the same lesson prints the same
      expect([file, printed(readMusicXml(writeMusicXml(lesson)).lessonText)]).toEqual([
        file,
        printLesson(lesson),
      ]);
      expect([file, printed(readMidi(midiOf(lesson)).lessonText)]).toEqual([file, printLesson(lesson)]);
    }
  });

  it('[EX75] so does any divided lesson', () => {
    fc.assert(
      fc.property(arbitraryDividedLesson, (lesson) => {
        expect(printed(readMusicXml(writeMusicXml(lesson)).lessonText)).toBe(printLesson(lesson));
      }),
      { numRuns: 15 },
    );
  });

  it('[EX75] a file of one exercise, or without the groove, holds no lesson', () => {
    const lesson = demo('first-swing.lesson.yaml');
    expect(writeMusicXml(lesson, { exercises: [2] })).not.toContain(LESSON_FIELD);
    expect(writeMusicXml(lesson, { groove: false })).not.toContain(LESSON_FIELD);
  });

  it('[EX76] changed notes hold, and it is said', () => {
    const lesson = demo('bossa.lesson.yaml');
    const text = writeMusicXml(lesson);
    // standard: MusicXML 4.0: a note of a chord takes no time, so that one can be missing
    const fewer = text.replace(/<note [^>]*>\s*<chord\/>[\s\S]*?<\/note>/, '');
    expect(fewer).not.toBe(text);
    const other = readMusicXml(fewer);
    expect([other.lessonText, other.problems.map(({ code }) => code)]).toEqual([null, ['musicxml-lesson']]);
    expect(other.exercises).toHaveLength(lesson.exercises.length);
    const bytes = midiOf(lesson);
    // standard: MIDI 1.0: 99 is a note on of channel 10; its velocity is the third byte
    const at = bytes.indexOf(0x99, bytes.length / 2);
    const changed = Uint8Array.from(bytes);
    changed[at + 2] = (bytes[at + 2] ?? 0) === 64 ? 65 : 64;
    const take = readMidi(changed);
    expect([take.lessonText, take.problems.map(({ code }) => code)]).toEqual([null, ['midi-lesson']]);
  });
});

/** Every stroke of an exercise over a groove: voice, mark, bar and place. */
function strokesOf(
  exercise: Exercise,
  groove: readonly Exercise['parts'][number][],
  of: Meter,
): readonly string[] {
  const bars = exercise.parts[0]?.pattern.bars.length ?? 1;
  const own = new Set(exercise.parts.map(({ voice }) => voice));
  const all = [...groove.filter(({ voice }) => !own.has(voice)), ...exercise.parts];
  return all
    .flatMap(({ voice, pattern }) =>
      Array.from({ length: bars }, (_, bar) => pattern.bars[bar % pattern.bars.length] ?? []).flatMap(
        (cells, bar) =>
          cells.flatMap((each, beat) =>
            struckSlots(each).map(
              (slot) => `${voice} ${bar} ${beat} ${slot / each.marks.length} ${each.marks[slot]} ${of.text}`,
            ),
          ),
      ),
    )
    .toSorted();
}

describe('a groove from elsewhere', () => {
  it('[EX77] is taken out of the demo lessons, and every stroke stays', () => {
    expect(DEMOS.length).toBeGreaterThan(4);
    for (const file of DEMOS.filter((each) => !each.startsWith('limb'))) {
      const lesson = demo(file);
      const text = writeMusicXml(lesson, { lessonText: null });
      const { exercises, meter: read } = readMusicXml(text);
      const of = read ?? meter('4/4');
      const found = findGroove(exercises, of);
      const before = exercises.map((exercise) => strokesOf(exercise, [], of));
      expect([file, found.exercises.map((exercise) => strokesOf(exercise, found.groove, of))]).toEqual([
        file,
        before,
      ]);
      // definition: a groove of one bar stands in every exercise, but for the voice that exercises play
      const wanted = lesson.groove.filter(
        ({ voice }) =>
          voice !== lesson.comping &&
          lesson.groove.every(({ pattern }) => pattern.bars.length === 1) &&
          lesson.exercises.every(({ parts }) => parts.every((part) => part.voice !== voice)),
      );
      const texts = new Map(
        found.groove.map(({ voice, pattern }) => [voice, struckTextOf(formatPattern(pattern))]),
      );
      expect([
        file,
        wanted
          .filter(({ voice, pattern }) => texts.get(voice) !== struckTextOf(formatPattern(pattern)))
          .map(({ voice }) => voice),
      ]).toEqual([file, []]);
    }
  });

  it('[EX77] is not found in two exercises, nor where nothing is in common', () => {
    const two = readMusicXml(
      writeMusicXml(lessonOf('title: T\nexercises: ["x . . .", ". x . ."]\n'), { lessonText: null }),
    );
    expect(findGroove(two.exercises, meter('4/4')).groove).toEqual([]);
  });
});

/** A pattern by its struck places, whatever the slots it is written in. */
function struckTextOf(text: string): string {
  const beats = text.split(' ');
  return beats
    .map((beat) =>
      [...beat].flatMap((mark, i) => (mark === '.' ? [] : [`${mark}${i / beat.length}`])).join(','),
    )
    .join(' ');
}
