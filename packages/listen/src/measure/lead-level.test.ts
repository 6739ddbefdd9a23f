import { TakeDb } from '@shedbook/core';
import { expect, it } from 'vitest';
import { playNotes, reportOfNotes } from '../../../../internal/testing/played-notes.ts';
import { leadLevelDb } from './lead-level.ts';

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
    { voice: 'bass', levelDb: -58 },
    { voice: 'snare', levelDb: -44 },
    { voice: 'crash', levelDb: 0 },
  ] as const;
  // definition: both lie 40 dB under what is asked; a crash that is not asked for says nothing
  expect(leadLevelDb('ride', strokes, askedDb)).toBe(-40);
  expect(leadLevelDb('ride', [], askedDb)).toBe(0);
});
