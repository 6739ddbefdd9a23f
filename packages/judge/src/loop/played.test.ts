import { type FullReport, seededRandom } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { isRecordingItself } from './played.ts';

describe('the recording itself', () => {
  const heardWith = (spreadMs: number, kind: 'audio' | 'midi') => {
    const { next } = seededRandom('hands');
    const strokes = Array.from({ length: 20 }, () => ({ offsetMs: 8 + spreadMs * (next() - next()) }));
    return { report: { take: { kind }, strokes } as unknown as FullReport, refusal: null };
  };

  it('[ST94] is told from a student by its evenness, and only where a microphone hears', () => {
    // published: Hellmer & Madison 2015, Music Perception 33(2): drummers scatter by several ms
    expect(isRecordingItself(heardWith(1, 'audio'))).toBe(true);
    expect(isRecordingItself(heardWith(12, 'audio'))).toBe(false);
    expect(isRecordingItself(heardWith(0, 'midi'))).toBe(false);
    expect(isRecordingItself({ report: null, refusal: { fact: 'nothing-played' } })).toBe(false);
  });
});
