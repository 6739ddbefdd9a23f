/** What is held, as MusicXML and MIDI: tied notes with a tremolo on each, bounces until the end; and back. */
import { Bpm, formatPattern, type Lesson, parseLesson, perform } from '@shedbook/core';
import { expect, it } from 'vitest';
import { decodeSmf } from '../midi/decode.ts';
import { writeMidi } from '../midi/write.ts';
import { readMusicXml } from './read.ts';
import { writeMusicXml } from './write.ts';

const lessonOf = (exercise: string, brushes = false): Lesson => {
  const text = `title: T\nfeel: even\n${brushes ? 'playedWith: brushes\n' : ''}groove: {}\nexercises: ["${exercise}"]\n`;
  const { lesson } = parseLesson(text, 'a.lesson.yaml');
  if (!lesson) throw new Error(exercise);
  return lesson;
};

const again = (exercise: string, brushes = false) => {
  const xml = writeMusicXml(lessonOf(exercise, brushes), { lessonText: null });
  const part = readMusicXml(xml).exercises[0]?.parts[0];
  return { xml, text: part && formatPattern(part.pattern) };
};

it('[EX7600] what is held is written as tied notes, each with its tremolo, and comes back from them alone', () => {
  const { xml } = again('x . b ~ | ~ ~ x .');
  const count = (sign: string) => xml.split(sign).length - 1;
  // standard: MusicXML 4.0, tie and tied: three ties between four notes, each of them begun and ended
  expect([count('<tie type="start"/>'), count('<tie type="stop"/>')]).toEqual([3, 3]);
  expect([count('<tied type="start"/>'), count('<tied type="stop"/>')]).toEqual([3, 3]);
  // standard: MusicXML 4.0, tremolo of type unmeasured: 0 marks
  expect(count('<tremolo type="unmeasured">0</tremolo>')).toBe(4);
  for (const text of ['x . b ~ | ~ ~ x .', 'b ~. x .', '.b~~ ~x . B', 'b ~~x . x'])
    expect(again(text).text).toBe(text);
  expect(again('w ~ . x | w ~x . .', true).text).toBe('w ~ . x | w ~x . .');
});

it('[EX7600] a tie of a plain note lets it ring, and is no roll', () => {
  const { xml } = again('b ~ x .');
  const plain = xml.replaceAll(/<ornaments>.*?<\/ornaments>/gs, '');
  const part = readMusicXml(plain).exercises[0]?.parts[0];
  expect(part && formatPattern(part.pattern)).toBe('x . x .');
});

it('[EX7601] in MIDI a held roll bounces until its end and a held sweep is one note as long as it is', () => {
  const notes = (exercise: string, brushes = false) => {
    const lesson = lessonOf(exercise, brushes);
    const form = {
      name: 'f',
      sections: [{ play: 'pattern' as const, bars: 1, ending: null }],
      repeat: 1,
      countInBars: 0,
    };
    const bytes = writeMidi(perform(lesson, { exercise: 1, form, bpm: Bpm(60) }), {
      title: 'T',
      meter: lesson.meter,
    });
    return decodeSmf(bytes).file?.tracks.flatMap(({ events }) => events) ?? [];
  };
  const on = notes('b ~ . .').filter(({ kind }) => kind === 'note-on');
  // definition: at 60 two beats last two seconds, 6720 ticks of 3360 a quarter
  expect(Math.max(...on.map(({ ticks }) => ticks))).toBeGreaterThan(6720 * 0.95);
  expect(on.every(({ ticks }) => ticks < 6720)).toBe(true);
  expect(notes('b . . .').filter(({ kind }) => kind === 'note-on').length).toBeLessThan(on.length);
  const swept = notes('w ~ . .', true).filter(({ kind }) => kind === 'note-on' || kind === 'note-off');
  expect(swept.map(({ kind, ticks }) => [kind, ticks])).toEqual([
    ['note-on', 0],
    ['note-off', 6720],
  ]);
});
