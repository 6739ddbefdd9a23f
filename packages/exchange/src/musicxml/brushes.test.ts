import { Bpm, type Lesson, parseLesson, perform } from '@shedbook/core';
import { expect, it } from 'vitest';
import { onceThrough } from '../../test/lessons.ts';
import { readMidi } from '../midi/read.ts';
import { BRUSH_PROGRAM } from '../midi/smf.ts';
import { writeMidi } from '../midi/write.ts';
import { readMusicXml } from './read.ts';
import { writeMusicXml } from './write.ts';

const lesson = parseLesson(
  `title: A slow one
playedWith: brushes
groove: {hihat-foot: . x . x}
exercises: [w x.W x s]
sections:
  - {heading: Sticks again, playedWith: sticks, exercises: [x . x .]}
`,
  'slow.lesson.yaml',
).lesson as Lesson;

it('[EX1401] brushes and sweeps come back from MusicXML without the lesson inside', () => {
  const text = writeMusicXml(lesson, { lessonText: null });
  // standard: MusicXML 4.0, beater-value "wire brush" and "snare stick", notehead-value "slash"
  expect(text.match(/<beater>[^<]*/g)).toEqual(['<beater>wire brush', '<beater>snare stick']);
  expect(text.match(/>slash</g)).toHaveLength(2);
  const { playedWith, exercises, problems } = readMusicXml(text);
  expect([playedWith, problems]).toEqual(['brushes', []]);
  const snare = exercises[0]?.parts.find(({ voice }) => voice === 'snare');
  expect(snare?.pattern.bars[0]?.map((cell) => cell.text)).toEqual(['w', 'x.W', 'x', 's']);
  const plain = { ...lesson, playedWith: 'sticks', sections: [] } as Lesson;
  expect(writeMusicXml(plain, { lessonText: null })).not.toContain('beater');
});

it('[EX1401] MIDI chooses the brush set where brushes play, and a sweep comes back as one', () => {
  const exercise = lesson.exercises[0] as Lesson['exercises'][number];
  const options = { exercise: 1, form: onceThrough(exercise, 1), bpm: Bpm(60) };
  const bytes = writeMidi(perform(lesson, options), { title: 'A', meter: lesson.meter });
  const text = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  // standard: MIDI 1.0, program change on channel 10 is C9; General MIDI 2, brush set 41 counted from 1
  expect([text.match(/00c928/g)?.length, BRUSH_PROGRAM]).toEqual([1, 0x28]);
  const struck = readMidi(bytes).notes.filter(({ voice }) => voice === 'snare');
  expect(struck.map(({ articulation }) => articulation)).toEqual(['sweep', 'normal', 'sweep', 'normal']);
});
