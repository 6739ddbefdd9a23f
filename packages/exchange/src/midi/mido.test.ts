import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { type Lesson, perform } from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyLesson, onceThrough, swingLesson } from '../../test/lessons.ts';
import { groupBy } from '../patterns/group-by.ts';
import { readMidi } from './read.ts';
import { writeMidi } from './write.ts';

const SCRIPT = fileURLToPath(new URL('../../test/mido_notes.py', import.meta.url));

interface MidoFile {
  /** Seconds, channel from 1, key, velocity. */
  readonly notes: readonly (readonly [number, number, number, number])[];
  readonly tempi: readonly (readonly [number, number])[];
  readonly meters: readonly (readonly [number, number, number])[];
  readonly tracks: readonly string[];
  readonly length: number;
}

/** Debian installs mido for its own Python, which need not be the first one found. */
const PYTHONS = ['/usr/bin/python3', 'python3'];

function readWithMido(bytes: Uint8Array): MidoFile {
  const said: string[] = [];
  for (const python of PYTHONS) {
    const { status, stdout, stderr } = spawnSync(python, [SCRIPT], { input: bytes, encoding: 'utf8' });
    if (status === 0) return JSON.parse(stdout);
    said.push(stderr);
  }
  throw new Error(
    `This test needs python3 with mido (Debian: apt-get install python3-mido). ${said.join(' ')}`,
  );
}

/** mido adds up float deltas; this is far below one tick. */
const FLOAT_SECONDS = 1e-6;

/** Times in order for each channel, key and velocity. */
function timesByNote(notes: MidoFile['notes']): ReadonlyMap<string, readonly number[]> {
  const groups = groupBy(notes, ([, ...note]) => note.join(' '));
  return new Map([...groups].map(([note, each]) => [note, each.map(([time]) => time).sort((a, b) => a - b)]));
}

function compare(lesson: Lesson): void {
  const exercise = lesson.exercises[0] as Lesson['exercises'][number];
  const performance = perform(lesson, { exercise: 1, form: onceThrough(exercise, 1) });
  const bytes = writeMidi(performance, { title: lesson.title, meter: lesson.meter });
  const outside = readWithMido(bytes);
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
  expect(outside.length).toBeCloseTo(performance.durationSeconds, 4);
  const { upper, lower } = lesson.meter;
  expect(outside.meters.map(([numerator, denominator]) => [numerator, denominator])).toEqual([
    [upper, lower],
  ]);
}

describe('mido reads what we write', () => {
  it('[EX23] finds the same notes at the same times in a swing lesson', () => {
    // library: mido (Debian python3-mido), read by test/mido_notes.py
    compare(swingLesson());
    const performance = perform(swingLesson(), {
      exercise: 1,
      form: onceThrough(swingLesson().exercises[0]!),
    });
    const { tracks, tempi } = readWithMido(
      writeMidi(performance, { title: 'Tänzchen', meter: swingLesson().meter }),
    );
    expect(tracks).toEqual(['Tänzchen', 'ride', 'hi-hat foot', 'bass drum', 'snare']);
    expect(tempi).toEqual([[0, 500_000]]);
  });

  it('[EX23] finds the same notes at the same times in any lesson', () => {
    // library: mido (Debian python3-mido), read by test/mido_notes.py
    fc.assert(fc.property(anyLesson, compare), { numRuns: 8 });
  });
});
