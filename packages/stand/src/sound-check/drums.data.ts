/** What is played to try a device: one bar of a beat, round and round. */
import { Bpm, LeadDb, type SoundingVoice } from '@shedbook/core';
import type { Program, ProgramStroke } from '@shedbook/playing';

/** Voices on each quarter of the bar. */
const BEATS: readonly (readonly SoundingVoice[])[] = [
  ['hihat', 'bass'],
  ['hihat', 'snare'],
  ['hihat', 'bass'],
  ['hihat', 'snare'],
];

const stroke = (voice: SoundingVoice, beat: number): ProgramStroke => ({
  ...{ place: beat / 4, voice, articulation: 'normal', mark: 'x', role: 'groove', levelDb: LeadDb(0) },
  ...{ written: { bar: 1, beat: beat + 1, slot: 1 }, slots: 1, patternBar: null },
});

/** Quarter notes a minute: two seconds are a bar. */
export const DRUMS_BPM = Bpm(120);

/** The bar. */
export const DRUMS: Program = {
  shape: 'sound check',
  exercise: null,
  strokes: BEATS.flatMap((voices, beat) => voices.map((voice) => stroke(voice, beat))),
  clicks: [],
  beats: BEATS.map((_, beat) => ({ place: beat / 4, bar: 1, beat: beat + 1 })),
  bars: [{ bar: 1, play: 'time', patternBar: null, place: 0 }],
  start: 0,
  end: 1,
};
