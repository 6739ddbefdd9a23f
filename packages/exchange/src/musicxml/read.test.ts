import {
  add,
  type Exercise,
  formatFraction,
  fraction,
  isAccent,
  type Lesson,
  multiply,
  perform,
  type Stroke,
} from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyLesson, onceThrough } from '../../test/lessons.ts';
import { readMusicXml } from './read.ts';
import { writeMusicXml } from './write.ts';

interface Told {
  readonly place: string;
  readonly levelDb: number;
}

function tell(at: string, stroke: { voice: string; articulation: string; sticking: string | null }): string {
  return `${at} ${stroke.voice} ${stroke.articulation} ${stroke.sticking ?? '-'}`;
}

function byPlace(a: Told, b: Told): number {
  return a.place < b.place ? -1 : a.place > b.place ? 1 : 0;
}

/** Every stroke of an exercise, accents and ghost notes told by their marks. */
function played(lesson: Lesson, exercise: Exercise): readonly Told[] {
  const { strokes } = perform(lesson, { exercise: exercise.number, form: onceThrough(exercise) });
  const touch = ({ mark }: Stroke) => (isAccent(mark) ? 'accent' : mark === 'g' ? 'ghost' : 'plain');
  return strokes
    .map((s) => ({ place: `${tell(formatFraction(s.at), s)} ${touch(s)}`, levelDb: s.levelDb }))
    .sort(byPlace);
}

/** Percent of forte is written to a hundredth: at −30 dB that is 0.03 % of the amount, 0.005 dB. */
const LEVEL_DB = 0.01;

describe('MusicXML is read back', () => {
  it('[EX50] with every stroke of any lesson: place, voice, articulation, touch, hand and level', () => {
    fc.assert(
      fc.property(anyLesson, (lesson) => {
        for (const exercise of lesson.exercises) {
          const reading = readMusicXml(writeMusicXml(lesson, { exercises: [exercise.number] }));
          expect(reading.problems).toEqual([]);
          const read = reading.strokes
            .map((s) => {
              const at = add(multiply(lesson.meter.bar, fraction(s.bar)), s.inBar);
              const touch = s.accent ? 'accent' : s.ghost ? 'ghost' : 'plain';
              return { place: `${tell(formatFraction(at), s)} ${touch}`, levelDb: s.levelDb ?? Number.NaN };
            })
            .sort(byPlace);
          const wanted = played(lesson, exercise);
          expect(read.map((s) => s.place)).toEqual(wanted.map((s) => s.place));
          for (const [i, s] of read.entries()) {
            expect(Math.abs(s.levelDb - (wanted[i] as Told).levelDb)).toBeLessThan(LEVEL_DB);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  it('[EX51] as exercises that play the same, with number, title, meter and tempo', () => {
    fc.assert(
      fc.property(anyLesson, (lesson) => {
        const reading = readMusicXml(writeMusicXml(lesson));
        expect([reading.meter?.text, reading.bpm]).toEqual([lesson.meter.text, lesson.tempo.startBpm]);
        const struck = lesson.exercises.filter((exercise) => played(lesson, exercise).length > 0);
        expect(reading.exercises.map((exercise) => exercise.number)).toEqual(
          struck.map((each) => each.number),
        );
        const again = { ...lesson, groove: [], exercises: reading.exercises };
        for (const [i, exercise] of reading.exercises.entries()) {
          const withoutHands = (told: readonly Told[]) =>
            told.map(({ place }) => place.replace(/ [RLB-] /, ' '));
          expect(withoutHands(played(again, exercise))).toEqual(
            withoutHands(played(lesson, struck[i] as Exercise)),
          );
        }
      }),
      { numRuns: 40 },
    );
  });
});
