import { describe, expect, it } from 'vitest';
import { contextSecondsAt, readKitNote } from './midi-clock.ts';

const PAIR = { contextSeconds: 2, pageMs: 10_000 };

function note(...data: readonly number[]) {
  return readKitNote({ data: Uint8Array.from(data), timeStamp: 10_250 }, PAIR);
}

describe('notes of a kit', () => {
  it('[ST70] reads the voices of General MIDI on channel 10', () => {
    // standard: General MIDI 1, percussion key map: 36 bass drum 1, 38 acoustic snare, 42 closed hi-hat,
    // 44 pedal hi-hat, 51 ride cymbal 1, 49 crash cymbal 1, 37 side stick
    const voices = [36, 38, 42, 44, 51, 49, 37].map((key) => note(0x99, key, 90)?.voice);
    expect(voices).toEqual(['bass', 'snare', 'hihat', 'hihat-foot', 'ride', 'crash', 'sidestick']);
  });

  it('[ST70] puts a time stamp on the clock of the sound', () => {
    // definition: 250 ms after the moment at which 2 s left the loudspeaker
    expect(note(0x99, 38, 90)?.seconds).toBeCloseTo(2.25, 9);
    expect(contextSecondsAt(9_000, PAIR)).toBeCloseTo(1, 9);
  });

  it('[ST70] says a level, 0 dB for a plain stroke, more for a harder one', () => {
    // standard: MusicXML 4.0, dynamics: forte is velocity 90
    expect(note(0x99, 38, 90)?.levelDb).toBeCloseTo(0, 9);
    // standard: DLS 2 and SoundFont 2: 40 log10 of the ratio of velocities
    expect(note(0x99, 38, 45)?.levelDb).toBeCloseTo(-12.04, 2);
  });

  it('[ST70] takes nothing else for a stroke', () => {
    // standard: MIDI 1.0: note-on with velocity 0 is a note-off; 0x8n note-off, 0xBn controller, 0xFE active sensing
    expect(note(0x99, 38, 0)).toBeNull();
    expect(note(0x89, 38, 64)).toBeNull();
    expect(note(0xb9, 4, 64)).toBeNull();
    expect(note(0xfe)).toBeNull();
    expect(note(0x99, 100, 90)).toBeNull();
    expect(readKitNote({ data: null, timeStamp: 0 }, PAIR)).toBeNull();
  });
});
