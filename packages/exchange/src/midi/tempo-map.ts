/**
 * Ticks to seconds through the tempo events of a file.
 * Source: Standard MIDI Files 1.0 (MMA RP-001): microseconds per quarter note; 500 000 until the first event.
 */
import { Bpm, type Fraction, fraction, Seconds, Ticks } from '@shedbook/core';
import { DEFAULT_MICROSECONDS_PER_QUARTER, type Smf } from './smf.ts';

/** A tempo and where it begins. */
export interface MidiTempo {
  readonly ticks: Ticks;
  /** Score time from the start of the file, in whole notes. */
  readonly at: Fraction;
  readonly timeSeconds: Seconds;
  readonly microsecondsPerQuarter: number;
  /** Quarter notes a minute. */
  readonly bpm: Bpm;
}

/** Score time of a tick, in whole notes from the start of the file. */
export function ticksToWholeNotes(ticks: Ticks, ticksPerQuarter: number): Fraction {
  return fraction(ticks, 4 * ticksPerQuarter);
}

/** The tempi of a file in order, the first at tick 0. */
export function tempoMapOf(file: Smf): readonly MidiTempo[] {
  const set = new Map([[Ticks(0), DEFAULT_MICROSECONDS_PER_QUARTER]]);
  for (const event of file.tracks.flatMap((track) => track.events)) {
    if (event.kind === 'tempo') set.set(event.ticks, event.microsecondsPerQuarter);
  }
  let seconds = 0;
  let before = { ticks: Ticks(0), microsecondsPerQuarter: 0 };
  return [...set]
    .sort(([a], [b]) => a - b)
    .map(([ticks, microsecondsPerQuarter]) => {
      seconds += ((ticks - before.ticks) / file.ticksPerQuarter) * (before.microsecondsPerQuarter / 1e6);
      before = { ticks, microsecondsPerQuarter };
      return {
        ticks,
        at: ticksToWholeNotes(ticks, file.ticksPerQuarter),
        timeSeconds: Seconds(seconds),
        microsecondsPerQuarter,
        bpm: Bpm(60e6 / microsecondsPerQuarter),
      };
    });
}

/** A clock that gives the seconds of ticks asked for in any order. */
export function midiClock(map: readonly MidiTempo[], ticksPerQuarter: number): (ticks: Ticks) => Seconds {
  return (ticks) => {
    let low = 0;
    let high = map.length - 1;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if ((map[middle] as MidiTempo).ticks <= ticks) low = middle;
      else high = middle - 1;
    }
    const tempo = map[low] as MidiTempo;
    return Seconds(
      tempo.timeSeconds + ((ticks - tempo.ticks) / ticksPerQuarter) * (tempo.microsecondsPerQuarter / 1e6),
    );
  };
}
