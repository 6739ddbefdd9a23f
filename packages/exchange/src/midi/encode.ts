/**
 * A Standard MIDI File to bytes.
 *
 * Conventions: every event carries its own status byte (no running status), so that a damaged byte harms one
 * event only; a note ends with a note-off, not with a note-on of velocity 0.
 * Source: Standard MIDI Files 1.0 (MMA RP-001).
 */
import type { Smf, SmfEvent, SmfTrack, TextEvent } from './smf.ts';
import { encodeUtf8 } from './utf8.ts';
import { encodeVlq } from './vlq.ts';

const META_TEXT: Readonly<Record<TextEvent['kind'], number>> = { text: 0x01, name: 0x03, marker: 0x06 };

function bigEndian(value: number, bytes: number): readonly number[] {
  return Array.from({ length: bytes }, (_, i) => Math.floor(value / 256 ** (bytes - 1 - i)) % 256);
}

function meta(type: number, data: readonly number[]): readonly number[] {
  return [0xff, type, ...encodeVlq(data.length), ...data];
}

function message(event: SmfEvent): readonly number[] {
  switch (event.kind) {
    case 'note-on':
    case 'note-off': {
      const status = (event.kind === 'note-on' ? 0x90 : 0x80) | (event.channel - 1);
      return [status, event.key, event.velocity];
    }
    case 'program':
      return [0xc0 | (event.channel - 1), event.program];
    case 'tempo':
      return meta(0x51, bigEndian(event.microsecondsPerQuarter, 3));
    case 'time-signature':
      return meta(0x58, [event.upper, Math.log2(event.lower), event.clocksPerClick, 8]);
    default:
      return meta(META_TEXT[event.kind], encodeUtf8(event.text));
  }
}

function chunk(type: string, body: readonly number[]): readonly number[] {
  return [...encodeUtf8(type), ...bigEndian(body.length, 4)].concat(body);
}

function trackBody(track: SmfTrack): readonly number[] {
  const body: number[] = [];
  let now = 0;
  for (const event of track.events) {
    body.push(...encodeVlq(event.ticks - now), ...message(event));
    now = event.ticks;
  }
  body.push(...encodeVlq(track.endTicks - now), ...meta(0x2f, []));
  return body;
}

/**
 * The bytes of a file.
 * @throws RangeError when the events of a track are not in order of time.
 */
export function encodeSmf(file: Smf): Uint8Array {
  const header = [
    ...bigEndian(file.format, 2),
    ...bigEndian(file.tracks.length, 2),
    ...bigEndian(file.ticksPerQuarter, 2),
  ];
  const chunks = [chunk('MThd', header), ...file.tracks.map((track) => chunk('MTrk', trackBody(track)))];
  return Uint8Array.from(chunks.flat());
}
