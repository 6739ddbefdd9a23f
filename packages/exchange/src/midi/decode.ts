/**
 * Bytes to a Standard MIDI File.
 *
 * Conventions: what a reader may skip (system exclusive, unknown meta events and chunks, controllers) is skipped
 * in silence; what it may not guess (a cut file, a missing status byte, time code instead of musical time) is
 * refused with the byte it is about. Running status is read. A note-on of velocity 0 is a note-off.
 * Source: Standard MIDI Files 1.0 (MMA RP-001); MIDI 1.0 for the lengths of channel messages.
 */
import { quoted } from '@shedbook/core';
import { ByteFault, ByteReader, hex } from './byte-reader.ts';
import { decodeTrack } from './decode-track.ts';
import type { MidiFact } from './midi-fact.ts';
import type { ByteProblem } from './problem.ts';
import type { Smf, SmfTrack } from './smf.ts';

/** A file, or null when it is refused; warnings stand beside a file that was read. */
export interface DecodedSmf {
  readonly file: Smf | null;
  readonly problems: readonly ByteProblem[];
}

interface Header {
  readonly format: 0 | 1;
  readonly trackCount: number;
  readonly ticksPerQuarter: number;
}

function refuse(code: string, offset: number, found: MidiFact, expected: MidiFact, repair: MidiFact): never {
  throw new ByteFault({ code, severity: 'error', offset, found, expected, repair });
}

function chunkType(reader: ByteReader): string {
  return String.fromCharCode(...reader.take(4, 'midi-chunk-type'));
}

function printable(text: string): string {
  return /^[\x20-\x7e]+$/.test(text) ? `"${text}"` : [...text].map((c) => hex(c.charCodeAt(0))).join(' ');
}

function readHeader(reader: ByteReader): Header {
  if (reader.left === 0) {
    refuse('midi-empty', 0, { fact: 'midi-empty-file' }, quoted('MThd'), { fact: 'midi-choose-file' });
  }
  if (reader.left < 4) reader.require(14, { fact: 'midi-header-chunk' });
  const type = chunkType(reader);
  if (type !== 'MThd') {
    const found = { fact: 'literal', text: printable(type) } as const;
    refuse('midi-header', 0, found, quoted('MThd'), { fact: 'midi-other-file' });
  }
  const length = reader.bigEndian(4, 'midi-header-length');
  if (length < 6) {
    const found = { fact: 'midi-header-found', bytes: length } as const;
    refuse('midi-header', 4, found, { fact: 'midi-header-wanted' }, { fact: 'midi-export-again' });
  }
  const body = reader.offset;
  const format = reader.bigEndian(2, 'midi-format');
  if (format !== 0 && format !== 1) {
    const found = { fact: 'midi-format-found', format } as const;
    refuse('midi-format', body, found, { fact: 'midi-formats' }, { fact: 'midi-export-format' });
  }
  const trackCount = reader.bigEndian(2, 'midi-track-count');
  const ticksPerQuarter = readDivision(reader);
  reader.take(length - 6, 'midi-header');
  return { format, trackCount, ticksPerQuarter };
}

function readDivision(reader: ByteReader): number {
  const offset = reader.offset;
  const division = reader.bigEndian(2, 'midi-division');
  if (division >= 0x8000) {
    const found: MidiFact = {
      fact: 'midi-time-code',
      frames: 256 - (division >> 8),
      ticks: division & 0xff,
    };
    refuse('midi-division', offset, found, { fact: 'midi-ticks' }, { fact: 'midi-export-musical-time' });
  }
  if (division === 0) {
    const wanted = { fact: 'at-least', bound: 1 } as const;
    refuse('midi-division', offset, { fact: 'midi-no-ticks' }, wanted, { fact: 'midi-export-again' });
  }
  return division;
}

/** Bytes of a file at most: half an hour of a drum set takes a fifth of it. */
const MOST_BYTES = 500_000;

function readChunks(bytes: Uint8Array, problems: ByteProblem[]): Smf {
  if (bytes.length > MOST_BYTES) {
    const found = { fact: 'midi-bytes', bytes: bytes.length } as const;
    refuse(
      'midi-size',
      0,
      found,
      { fact: 'midi-bytes-up-to', bytes: MOST_BYTES },
      { fact: 'midi-choose-file' },
    );
  }
  const reader = new ByteReader(bytes);
  const header = readHeader(reader);
  const tracks: SmfTrack[] = [];
  while (tracks.length < header.trackCount) {
    if (reader.left === 0) {
      const { trackCount } = header;
      const found = { fact: 'midi-end-after-tracks', read: tracks.length, tracks: trackCount } as const;
      refuse('midi-truncated', reader.offset, found, quoted('MTrk'), { fact: 'midi-cut' });
    }
    const type = chunkType(reader);
    const length = reader.bigEndian(4, 'midi-chunk-length');
    reader.require(length, { fact: 'midi-chunk-of', type: printable(type) });
    const start = reader.offset;
    reader.take(length, 'midi-chunk');
    if (type === 'MTrk') tracks.push(decodeTrack(new ByteReader(bytes, start, start + length), problems));
  }
  return { format: header.format, ticksPerQuarter: header.ticksPerQuarter, tracks };
}

/** Reads a file. An error among the problems means that `file` is null. */
export function decodeSmf(bytes: Uint8Array): DecodedSmf {
  const problems: ByteProblem[] = [];
  try {
    return { file: readChunks(bytes, problems), problems };
  } catch (fault) {
    if (!(fault instanceof ByteFault)) throw fault;
    return { file: null, problems: [...problems, fault.problem] };
  }
}
