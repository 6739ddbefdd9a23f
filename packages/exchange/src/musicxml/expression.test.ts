import { childOf, childrenOf, descend, parseLesson, perform, readXml } from '@shedbook/core';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { arbitraryDividedLesson } from '../../../../internal/testing/arbitrary-lesson.ts';
import { schemaValidator } from '../../test/schema.ts';
import { readMidi } from '../midi/read.ts';
import { writeMidi } from '../midi/write.ts';
import { readMusicXml } from './read.ts';
import { writeMusicXml } from './write.ts';

const TEXT = `title: T
tempo: 60
groove: {hihat: x x x x, bass: x . x .}
exercises:
  - pattern: x x x x | . . x x
    dynamics: p | < . . f
    above: softly | build
    below: "| brighter"
    fill: 3
`;

function lessonOf(text: string) {
  const { lesson } = parseLesson(text, 'x');
  if (!lesson) throw new Error('does not read');
  return lesson;
}

it('[EX72] dynamics, hairpins and texts are written at their places, and heads are as loud as they say', () => {
  const root = readXml(writeMusicXml(lessonOf(TEXT))).root;
  const measures = childrenOf(childOf(root ?? undefined, 'part'), 'measure');
  const said = measures.map((measure) =>
    childrenOf(measure, 'direction').flatMap((direction) => {
      const type = childOf(direction, 'direction-type')?.children[0];
      if (!type || ['metronome', 'rehearsal'].includes(type.name)) return [];
      const what = type.name === 'words' ? type.text : (type.attributes['type'] ?? type.children[0]?.name);
      const offset = childOf(direction, 'offset')?.text ?? '0';
      return [[direction.attributes['placement'], what, offset].join(' ')];
    }),
  );
  const divisions = Number(descend(measures[0], 'attributes', 'divisions')?.text);
  expect(said).toEqual([
    ['above softly 0', 'below p 0'],
    [
      'above build 0',
      'below brighter 0',
      'below crescendo 0',
      `below stop ${3 * divisions}`,
      `below f ${3 * divisions}`,
    ],
  ]);
  const snare = readMusicXml(writeMusicXml(lessonOf(TEXT))).strokes.filter(({ voice }) => voice === 'snare');
  // definition: p is -13 dB, f 0 dB; two thirds of the way on 3 of the second bar
  expect(snare.map(({ levelDb }) => Math.round(levelDb ?? 0))).toEqual([-13, -13, -13, -13, -4, 0]);
  const hihat = readMusicXml(writeMusicXml(lessonOf(TEXT))).strokes.filter(({ voice }) => voice === 'hihat');
  expect(hihat).toHaveLength(6);
});

it('[EX72] is valid against the schema, whatever is said', () => {
  const validate = schemaValidator();
  fc.assert(
    fc.property(arbitraryDividedLesson, (lesson) => {
      // standard: MusicXML 4.0, musicxml.xsd (internal/fixtures/musicxml-4.0)
      expect(validate(writeMusicXml(lesson), 'sheet.musicxml')).toEqual([]);
    }),
    { numRuns: 40, seed: 72 },
  );
});

it('[EX73] MIDI is as loud as the dynamics say, and silent in a fill', () => {
  const lesson = lessonOf(TEXT);
  const form = {
    name: 'f',
    sections: [{ play: 'pattern', bars: 2, ending: null }],
    repeat: 1,
    countInBars: 0,
  } as const;
  const performance = perform(lesson, { exercise: 1, form });
  const { notes } = readMidi(writeMidi(performance, { title: 'T', meter: lesson.meter }));
  const velocities = notes.filter(({ voice }) => voice === 'snare').map(({ velocity }) => velocity);
  // standard: DLS and SoundFont 2: a level in dB is 40·log10(v/90); p is -13 dB, f 0 dB
  const soft = Math.round(90 * 10 ** (-13 / 40));
  expect(velocities.slice(0, 4)).toEqual([soft, soft, soft, soft]);
  expect(velocities.at(-1)).toBe(90);
  expect(velocities[4]).toBeGreaterThan(soft);
  expect(notes.filter(({ voice }) => voice === 'hihat')).toHaveLength(6);
});
