/** What an outside reader finds in a MIDI file. Library: midi-file. */
import { type MidiEvent, parseMidi } from 'midi-file';

/** What a file holds. */
export interface MidiFacts {
  /** Seconds, channel from 1, key, velocity; in order. */
  readonly notes: readonly (readonly [number, number, number, number])[];
  /** Seconds, microseconds a quarter note. */
  readonly tempi: readonly (readonly [number, number])[];
  /** Numerator and denominator. */
  readonly meters: readonly (readonly [number, number])[];
  /** Names of tracks, empty where one has none. */
  readonly tracks: readonly string[];
  /** From the start to the last event. */
  readonly durationSeconds: number;
}

/** Standard: RP-001 (SMF 1.0): 120 quarter notes a minute until a file says otherwise. */
const FIRST_TEMPO = 500_000;

/** Events of all tracks in the order of their ticks, each with its seconds. */
function timed(tracks: readonly (readonly MidiEvent[])[], ticksPerBeat: number) {
  const placed = tracks.flatMap((track) => {
    let tick = 0;
    return track.map((event) => {
      tick += event.deltaTime;
      return { tick, event };
    });
  });
  let [seconds, last, tempo] = [0, 0, FIRST_TEMPO];
  return placed
    .toSorted((a, b) => a.tick - b.tick)
    .map(({ tick, event }) => {
      // standard: RP-001: a tick lasts the tempo's microseconds a quarter note, divided by the ticks a quarter note
      seconds += ((tick - last) * tempo) / ticksPerBeat / 1e6;
      last = tick;
      if (event.type === 'setTempo') tempo = event.microsecondsPerBeat;
      return { seconds, event };
    });
}

/** midi-file hands out a byte of a text as a letter each; ours are UTF-8. */
function nameOf(track: readonly MidiEvent[]): string {
  const named = track.find((event) => event.type === 'trackName');
  return named?.type === 'trackName' ? Buffer.from(named.text, 'latin1').toString('utf8') : '';
}

/** Everything that is said of a MIDI file here. @throws when midi-file cannot read it */
export function readOutside(bytes: Uint8Array): MidiFacts {
  const { header, tracks } = parseMidi(bytes);
  if (header.ticksPerBeat === undefined) throw new Error('The file counts frames and not beats');
  const all = timed(tracks, header.ticksPerBeat);
  return {
    notes: all.flatMap(({ seconds, event }) =>
      event.type === 'noteOn'
        ? [[seconds, event.channel + 1, event.noteNumber, event.velocity] as const]
        : [],
    ),
    tempi: all.flatMap(({ seconds, event }) =>
      event.type === 'setTempo' ? [[seconds, event.microsecondsPerBeat] as const] : [],
    ),
    meters: all.flatMap(({ event }) =>
      event.type === 'timeSignature' ? [[event.numerator, event.denominator] as const] : [],
    ),
    tracks: tracks.map(nameOf),
    durationSeconds: all.at(-1)?.seconds ?? 0,
  };
}
