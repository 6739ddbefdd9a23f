/**
 * The events of one track chunk.
 * Source: Standard MIDI Files 1.0 (MMA RP-001), "MTrk events"; MIDI 1.0, channel voice messages.
 */
import { Ticks } from '@shedbook/core';
import { ByteFault, type ByteReader, hex } from './byte-reader.ts';
import type { MidiFact } from './midi-fact.ts';
import type { ByteProblem } from './problem.ts';
import type { SmfEvent, SmfTrack } from './smf.ts';
import { decodeUtf8 } from './utf8.ts';

const TEXT_KINDS: Readonly<Record<number, 'text' | 'name' | 'marker'>> = {
  1: 'text',
  3: 'name',
  6: 'marker',
};

function bad(offset: number, found: MidiFact, expected: MidiFact): never {
  const repair = { fact: 'midi-damaged' } as const;
  throw new ByteFault({ code: 'midi-event', severity: 'error', offset, found, expected, repair });
}

/** Data bytes that follow a channel message. */
function dataLength(status: number): 1 | 2 {
  const high = status & 0xf0;
  return high === 0xc0 || high === 0xd0 ? 1 : 2;
}

function dataByte(reader: ByteReader): number {
  const offset = reader.offset;
  const value = reader.byte('midi-event-data');
  if (value >= 0x80)
    bad(offset, { fact: 'midi-byte-in-event', byte: hex(value) }, { fact: 'midi-data-wanted' });
  return value;
}

function channelEvent(reader: ByteReader, status: number, ticks: Ticks): SmfEvent | null {
  const key = dataByte(reader);
  if (dataLength(status) === 1) return null;
  const velocity = dataByte(reader);
  const high = status & 0xf0;
  if (high !== 0x80 && high !== 0x90) return null;
  const kind = high === 0x90 && velocity > 0 ? 'note-on' : 'note-off';
  return { kind, ticks, channel: (status & 0x0f) + 1, key, velocity };
}

function metaEvent(type: number, data: Uint8Array, ticks: Ticks, offset: number): SmfEvent | null {
  const at = (i: number) => data[i] ?? 0;
  const wants = (length: number, fact: 'midi-short-tempo' | 'midi-short-time-signature') => {
    if (data.length >= length) return;
    bad(offset, { fact, bytes: data.length }, { fact: 'midi-bytes', bytes: length });
  };
  const textKind = TEXT_KINDS[type];
  if (textKind) return { kind: textKind, ticks, text: decodeUtf8(data) };
  if (type === 0x51) {
    wants(3, 'midi-short-tempo');
    const microsecondsPerQuarter = at(0) * 65536 + at(1) * 256 + at(2);
    if (microsecondsPerQuarter === 0)
      bad(offset, { fact: 'midi-zero-tempo' }, { fact: 'at-least', bound: 1 });
    return { kind: 'tempo', ticks, microsecondsPerQuarter };
  }
  if (type === 0x58) {
    wants(4, 'midi-short-time-signature');
    if (at(0) === 0 || at(1) > 7) {
      const found = { fact: 'midi-time-signature-found', upper: at(0), power: at(1) } as const;
      bad(offset, found, { fact: 'midi-time-signature-wanted' });
    }
    return { kind: 'time-signature', ticks, upper: at(0), lower: 2 ** at(1), clocksPerClick: at(2) };
  }
  return null;
}

class TrackDecoder {
  readonly #reader: ByteReader;
  readonly events: SmfEvent[] = [];
  ticks = Ticks(0);
  ended = false;
  #running: number | null = null;

  constructor(reader: ByteReader) {
    this.#reader = reader;
  }

  next(): void {
    this.ticks = Ticks(this.ticks + this.#reader.vlq('midi-delta-time'));
    const offset = this.#reader.offset;
    const first = this.#reader.peek('midi-event');
    if (first < 0x80) {
      this.#channel(this.#running ?? this.#noStatus(offset, first));
      return;
    }
    this.#reader.byte('midi-status');
    if (first < 0xf0) {
      this.#running = first;
      this.#channel(first);
      return;
    }
    this.#running = null;
    if (first === 0xff) {
      this.#meta(offset);
      return;
    }
    if (first === 0xf0 || first === 0xf7) {
      this.#reader.take(this.#reader.vlq('midi-exclusive-length'), 'midi-exclusive-data');
      return;
    }
    bad(offset, { fact: 'midi-status-found', byte: hex(first) }, { fact: 'midi-event-wanted' });
  }

  #noStatus(offset: number, first: number): never {
    return bad(offset, { fact: 'midi-no-status', byte: hex(first) }, { fact: 'midi-status-wanted' });
  }

  #channel(status: number): void {
    const event = channelEvent(this.#reader, status, this.ticks);
    if (event) this.events.push(event);
  }

  #meta(offset: number): void {
    const type = this.#reader.byte('midi-meta-type');
    const data = this.#reader.take(this.#reader.vlq('midi-meta-length'), 'midi-meta-data');
    if (type === 0x2f) this.ended = true;
    const event = metaEvent(type, data, this.ticks, offset);
    if (event) this.events.push(event);
  }
}

/** Reads a track up to its end event; a track without one, or with bytes after it, gets a warning. */
export function decodeTrack(reader: ByteReader, problems: ByteProblem[]): SmfTrack {
  const track = new TrackDecoder(reader);
  while (reader.left > 0 && !track.ended) track.next();
  const warn = (found: MidiFact, expected: MidiFact) =>
    problems.push({
      code: 'midi-track-end',
      severity: 'warning',
      offset: reader.offset,
      found,
      expected,
      repair: null,
    });
  if (!track.ended) warn({ fact: 'midi-track-end' }, { fact: 'midi-end-event' });
  else if (reader.left > 0)
    warn({ fact: 'midi-bytes-after-end', bytes: reader.left }, { fact: 'midi-next-track' });
  return { events: track.events, endTicks: track.ticks };
}
