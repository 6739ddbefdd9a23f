import { TakeDb } from '@shedbook/core';
import { expect, it } from 'vitest';
import { playNotes, reportOfNotes } from '../../../../internal/testing/played-notes.ts';
import { leadLevelDb, tellingOf, voiceLevelDb } from './lead-level.ts';

/** Floats are added and taken away again: rounding only. */
const DB_DECIMALS = 9;

it('[LI55] levels of a report are relative to its lead voice, whatever the gain', () => {
  const plain = reportOfNotes(playNotes(1, 100, (note) => note));
  const louder = reportOfNotes(
    playNotes(1, 100, (note) => ({ ...note, levelDb: TakeDb(note.levelDb - 37.5) })),
  );
  expect(plain.voices.ride?.levelDb).toBe(0);
  louder.strokes.forEach((stroke, i) => {
    expect(stroke.levelDb).toBeCloseTo(plain.strokes[i]?.levelDb ?? Number.NaN, DB_DECIMALS);
  });
  for (const [voice, db] of Object.entries(plain.balanceDb)) {
    // definition: played as the lesson asks
    const asked = (plain.lessonBalanceDb[voice as 'ride'] ?? Number.NaN) - (plain.lessonBalanceDb.ride ?? 0);
    expect(db, voice).toBeCloseTo(asked, DB_DECIMALS);
    expect(louder.balanceDb[voice as 'ride'], voice).toBeCloseTo(asked, DB_DECIMALS);
  }
});

it('[LI55] where the lead voice stays out, the others tell where it would lie', () => {
  const askedDb = { ride: 0, bass: -18, snare: -4 };
  const strokes = [
    { voice: 'bass', levelDb: -58, timeSeconds: 0 },
    { voice: 'snare', levelDb: -44, timeSeconds: 1 },
    { voice: 'crash', levelDb: 0, timeSeconds: 2 },
  ] as const;
  // definition: both lie 40 dB under what is asked; a crash that is not asked for says nothing
  expect(leadLevelDb('ride', strokes, askedDb)).toBe(-40);
  expect(leadLevelDb('ride', [], askedDb)).toBe(0);
});

/** A hat of accents and plain strokes by turns, 6 dB apart, heard 30 dB under what is asked; every second one under a drum. */
const HAT = Array.from({ length: 16 }, (_, i) => {
  const asked = i % 2 === 0 ? 6 : 0;
  const place = { expected: { stroke: { levelDb: asked } } };
  return { voice: 'hihat', timeSeconds: i / 4, levelDb: asked - 30, place } as const;
});
const ASKED = 3;

it('[LI4403] a voice is as loud whichever of its accents were heard', () => {
  // definition: 30 dB under the middle of what is asked
  expect(voiceLevelDb(HAT, ASKED)).toBe(ASKED - 30);
  expect(voiceLevelDb(HAT.slice(0, 15), ASKED)).toBe(ASKED - 30);
  expect(voiceLevelDb(HAT.slice(5, 6), ASKED)).toBe(ASKED - 30);
  expect(voiceLevelDb([{ voice: 'hihat', levelDb: -24 }], ASKED)).toBe(-24);
});

it('[LI4403] strokes that sound alone tell how loud a voice is, where they are enough', () => {
  const drums = HAT.filter((_, i) => i % 2 === 0).map(({ timeSeconds }) => ({
    ...{ voice: 'bass', levelDb: -20, place: null, timeSeconds: timeSeconds + 0.01 },
  })) as readonly { voice: 'bass'; levelDb: number; timeSeconds: number; place: null }[];
  const all = [...HAT, ...drums].toSorted((a, b) => a.timeSeconds - b.timeSeconds);
  expect(tellingOf('hihat', all)).toEqual(HAT.filter((_, i) => i % 2 === 1));
  expect(tellingOf('bass', all)).toEqual(drums);
  expect(tellingOf('hihat', all.slice(0, 6)).length).toBe(4);
});
