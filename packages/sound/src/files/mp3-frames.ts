/**
 * The frames of an MP3 stream, and the first frame that tells players how long the music is.
 *
 * An encoder puts silence before the music and fills its last frame up. Only a tag in a frame of its own says how
 * much; without it a player shows a wrong length and a loop limps.
 *
 * Conventions: MPEG-1 Layer III only: 32, 44.1 and 48 kHz, 1152 samples a frame; big-endian.
 * Sources: ISO/IEC 11172-3 2.4.1.3 (frame header); the Xing and LAME header as read by ffmpeg's mp3 demuxer
 * (libavformat/mp3dec.c): `Info` or `Xing`, flags, frames, bytes, seek table, quality, encoder, delay and padding
 * as two numbers of twelve bits, a checksum (CRC-16, polynomial 0x8005 reflected) of what comes before it.
 */

const KBPS = [0, 32, 40, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320];
const RATES_HZ = [44100, 48000, 32000];
/** Samples in a frame. */
export const FRAME_SAMPLES = 1152;
/** Samples of silence that the encoder (LAME) puts first. */
export const ENCODER_DELAY = 576;

const TAG_AT = 36;
const TAG_BYTES = 156;
const SEEK_POINTS = 100;

function frameBytes(bytes: Uint8Array, at: number): number {
  const third = bytes[at + 2] as number;
  const kbps = KBPS[third >> 4] as number;
  const rate = RATES_HZ[(third >> 2) & 3] as number;
  return Math.floor((144000 * kbps) / rate) + ((third >> 1) & 1);
}

/** Where each frame of a stream starts, in bytes. @throws RangeError when the stream is not MPEG-1 Layer III. */
export function findFrames(stream: Uint8Array): readonly number[] {
  const starts: number[] = [];
  for (let at = 0; at + 4 <= stream.length; at += frameBytes(stream, at)) {
    if (stream[at] !== 0xff || ((stream[at + 1] as number) & 0xfe) !== 0xfa) {
      throw new RangeError(`Internal error: no MP3 frame at byte ${at}`);
    }
    starts.push(at);
  }
  return starts;
}

/** CRC-16 with the reflected polynomial 0x8005, from 0. */
export function crc16(bytes: Uint8Array): number {
  let crc = 0;
  for (const byte of bytes) {
    crc ^= byte;
    for (let i = 0; i < 8; i += 1) crc = crc & 1 ? (crc >> 1) ^ 0xa001 : crc >> 1;
  }
  return crc;
}

/** The header of a frame of the same kind, at the lowest rate that leaves room for the tag. */
function tagHeader(first: Uint8Array): { header: readonly number[]; length: number } {
  for (let index = 1; index < KBPS.length; index += 1) {
    const third = (index << 4) | ((first[2] as number) & 0x0c);
    const header = [0xff, (first[1] as number) | 1, third, first[3] as number];
    const length = frameBytes(Uint8Array.from(header), 0);
    if (length >= TAG_AT + TAG_BYTES) return { header, length };
  }
  throw new RangeError('Internal error: no room for the tag');
}

function letters(text: string): Uint8Array {
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}

function writeSeekTable(tag: Uint8Array, at: number, starts: readonly number[], total: number): void {
  for (let i = 0; i < SEEK_POINTS; i += 1) {
    const start = starts[Math.floor((i * starts.length) / SEEK_POINTS)] ?? 0;
    tag[at + i] = Math.min(255, Math.floor((256 * start) / total));
  }
}

/**
 * A frame to put before a stream of `samples` samples of music.
 * @returns a silent frame that carries length, seek table, delay and padding.
 */
export function infoFrame(stream: Uint8Array, samples: number): Uint8Array {
  const starts = findFrames(stream);
  const { header, length } = tagHeader(stream);
  const frame = new Uint8Array(length);
  const view = new DataView(frame.buffer);
  frame.set(header);
  frame.set(letters('Xing'), TAG_AT);
  view.setUint32(TAG_AT + 4, 0b1111);
  view.setUint32(TAG_AT + 8, starts.length);
  view.setUint32(TAG_AT + 12, stream.length + length);
  writeSeekTable(frame, TAG_AT + 16, starts, stream.length);
  frame.set(letters('LAME3.100'), TAG_AT + 120);
  const padding = starts.length * FRAME_SAMPLES - ENCODER_DELAY - samples;
  const both = (ENCODER_DELAY << 12) | Math.max(0, Math.min(4095, padding));
  view.setUint8(TAG_AT + 141, both >> 16);
  view.setUint16(TAG_AT + 142, both & 0xffff);
  view.setUint32(TAG_AT + 148, stream.length + length);
  view.setUint16(TAG_AT + 154, crc16(frame.subarray(0, TAG_AT + 154)));
  return frame;
}
