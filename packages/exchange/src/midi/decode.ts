/**
 * Bytes to a Standard MIDI File.
 *
 * Conventions: what a reader may skip (system exclusive, unknown meta events and chunks, controllers) is skipped
 * in silence; what it may not guess (a cut file, a missing status byte, time code instead of musical time) is
 * refused with the byte it is about. Running status is read. A note-on of velocity 0 is a note-off.
 * Source: Standard MIDI Files 1.0 (MMA RP-001); MIDI 1.0 for the lengths of channel messages.
 */
import { ByteFault, ByteReader, hex } from './byte-reader.ts';
import { decodeTrack } from './decode-track.ts';
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

function refuse(code: string, offset: number, found: string, expected: string, repair: string): never {
  throw new ByteFault({ code, severity: 'error', offset, found, expected, repair });
}

function chunkType(reader: ByteReader): string {
  return String.fromCharCode(...reader.take(4, 'a chunk type'));
}

function printable(text: string): string {
  return /^[\x20-\x7e]+$/.test(text) ? `"${text}"` : [...text].map((c) => hex(c.charCodeAt(0))).join(' ');
}

function readHeader(reader: ByteReader): Header {
  if (reader.left === 0) {
    refuse('midi-empty', 0, 'an empty file', '"MThd"', 'choose the Standard MIDI File itself');
  }
  if (reader.left < 4) reader.require(14, 'a header chunk');
  const type = chunkType(reader);
  if (type !== 'MThd') {
    refuse('midi-header', 0, printable(type), '"MThd"', 'this is not a Standard MIDI File');
  }
  const length = reader.bigEndian(4, 'header length');
  if (length < 6) {
    refuse('midi-header', 4, `a header of ${length} bytes`, 'a header of 6 bytes or more', 'export it again');
  }
  const body = reader.offset;
  const format = reader.bigEndian(2, 'format');
  if (format !== 0 && format !== 1) {
    refuse('midi-format', body, `format ${format}`, 'format 0 or 1', 'export it as a type 0 or type 1 file');
  }
  const trackCount = reader.bigEndian(2, 'number of tracks');
  const ticksPerQuarter = readDivision(reader);
  reader.take(length - 6, 'header');
  return { format, trackCount, ticksPerQuarter };
}

function readDivision(reader: ByteReader): number {
  const offset = reader.offset;
  const division = reader.bigEndian(2, 'division');
  if (division >= 0x8000) {
    const found = `time code of ${256 - (division >> 8)} frames a second and ${division & 0xff} ticks a frame`;
    refuse('midi-division', offset, found, 'ticks per quarter note', 'export it in musical time (beats)');
  }
  if (division === 0) {
    refuse('midi-division', offset, '0 ticks per quarter note', '1 or more', 'export it again');
  }
  return division;
}

function readChunks(bytes: Uint8Array, problems: ByteProblem[]): Smf {
  const reader = new ByteReader(bytes);
  const header = readHeader(reader);
  const tracks: SmfTrack[] = [];
  while (tracks.length < header.trackCount) {
    if (reader.left === 0) {
      const found = `the end of the file after ${tracks.length} of ${header.trackCount} tracks`;
      refuse(
        'midi-truncated',
        reader.offset,
        found,
        '"MTrk"',
        'the file is cut short: copy or export it again',
      );
    }
    const type = chunkType(reader);
    const length = reader.bigEndian(4, 'chunk length');
    reader.require(length, `${printable(type)} chunk`);
    const start = reader.offset;
    reader.take(length, 'chunk');
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
