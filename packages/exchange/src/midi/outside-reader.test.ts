import { groupBy, type Lesson, perform } from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type MidiFacts, readOutside } from '../../../../internal/testing/midi.ts';
import { anyLesson, onceThrough, swingLesson } from '../../test/lessons.ts';
import { readMidi } from './read.ts';
import { writeMidi } from './write.ts';

/** Seconds are added up as floats; this is far below one tick. */
const FLOAT_SECONDS = 1e-6;

/** Times in order for each channel, key and velocity. */
function timesByNote(notes: MidiFacts['notes']): ReadonlyMap<string, readonly number[]> {
  const groups = groupBy(notes, ([, ...note]) => note.join(' '));
  return new Map([...groups].map(([note, each]) => [note, each.map(([time]) => time).sort((a, b) => a - b)]));
}

function compare(lesson: Lesson): void {
  const exercise = lesson.exercises[0] as Lesson['exercises'][number];
  const performance = perform(lesson, { exercise: 1, form: onceThrough(exercise, 1) });
  const bytes = writeMidi(performance, { title: lesson.title, meter: lesson.meter });
  const outside = readOutside(bytes);
  const ours = readMidi(bytes);
  const own = ours.notes.map(
    ({ timeSeconds, channel, key, velocity }) => [timeSeconds, channel, key, velocity] as const,
  );
  const inside = timesByNote(own);
  const found = timesByNote(outside.notes);
  expect([...found.keys()].sort()).toEqual([...inside.keys()].sort());
  for (const [note, times] of inside) {
    expect(found.get(note)).toHaveLength(times.length);
    for (const [i, time] of times.entries()) {
      expect(Math.abs((found.get(note)?.[i] ?? 0) - time)).toBeLessThan(FLOAT_SECONDS);
    }
  }
  expect(outside.durationSeconds).toBeCloseTo(performance.durationSeconds, 4);
  const { upper, lower } = lesson.meter;
  expect(outside.meters).toEqual([[upper, lower]]);
}

describe('another library reads what we write', () => {
  it('[EX23] finds the same notes at the same times in a swing lesson', () => {
    // library: midi-file 1.2
    compare(swingLesson());
    const performance = perform(swingLesson(), {
      exercise: 1,
      form: onceThrough(swingLesson().exercises[0]!),
    });
    const { tracks, tempi } = readOutside(
      writeMidi(performance, { title: 'Tänzchen', meter: swingLesson().meter }),
    );
    expect(tracks).toEqual(['Tänzchen', 'ride', 'hi-hat foot', 'bass drum', 'snare']);
    expect(tempi).toEqual([[0, 500_000]]);
  });

  it('[EX23] finds the same notes at the same times in any lesson', () => {
    // library: midi-file 1.2
    fc.assert(fc.property(anyLesson, compare), { numRuns: 8 });
  });
});
