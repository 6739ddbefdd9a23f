import { Seconds } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { playNotes, reportOfNotes } from '../../../../internal/testing/played-notes.ts';

/** The exercise with its tempo changing evenly by some share over its eight bars of 21 s. */
function drifting(share: number) {
  return playNotes(1, 100, (note) => {
    const at = note.timeSeconds / 21;
    return { ...note, timeSeconds: Seconds(21 * (at - (share / 2) * at * (1 - at))) };
  });
}

describe('notes through a tempo that drifts', () => {
  it.each([0.08, 0.12, -0.12, 0.2, -0.2])(
    '[LI44] keeps every place when the tempo changes by %d',
    (share) => {
      const notes = drifting(share);
      const report = reportOfNotes(notes);
      expect(report.missed).toEqual([]);
      expect(report.strokes.map(({ written }) => written)).toEqual(notes.map(({ written }) => written));
      // definition: the derivative of the time that was given, at both ends
      const [first, last] = [report.tempo[0]?.bpm ?? 0, report.tempo.at(-1)?.bpm ?? 0];
      expect(Math.sign(last - first)).toBe(-Math.sign(share));
    },
  );
});
