/**
 * Files that a decoder takes as they are, piece by piece: FLAC, MP3 and Ogg Vorbis.
 *
 * Sources: libFLAC, libmpg123 and libvorbis compiled to WebAssembly; the lengths that are promised are those of
 * FLAC's STREAMINFO block (RFC 9639, 8.2) and of the Xing or Info header of an MP3 file (G. Bouvigne, "Mp3 Info Tag
 * rev 1").
 */

import { createReadStream } from 'node:fs';
import { FLACDecoder } from '@wasm-audio-decoders/flac';
import { OggVorbisDecoder } from '@wasm-audio-decoders/ogg-vorbis';
import { MPEGDecoder } from 'mpg123-decoder';
import { type DecodedSound, inFull, letGo, mixDown, ofFile, requireRate } from './decoded-sound.ts';
import { cannotRead, type SoundKind } from './sound-fault.ts';

const PIECE_BYTES = 65_536;

interface Decoded {
  readonly channelData: readonly Float32Array[];
  readonly sampleRate: number;
  readonly errors: readonly { readonly message: string }[];
}

/** A decoder of a whole file, as the libraries have it. */
interface StreamDecoder {
  readonly ready: Promise<void>;
  decode(bytes: Uint8Array): Decoded | Promise<Decoded>;
  flush?(): Promise<Decoded>;
  free(): void;
}

/** Decodes piece by piece; a file of which nothing can be decoded is refused. */
async function* decodePieces(path: string, decoder: StreamDecoder): AsyncGenerator<Decoded> {
  await decoder.ready;
  const { flush } = decoder;
  try {
    for await (const piece of createReadStream(path, { highWaterMark: PIECE_BYTES })) {
      yield await ofFile(() => decoder.decode(piece as Uint8Array));
    }
    if (flush) yield await ofFile(() => flush.call(decoder));
  } finally {
    letGo(() => decoder.free());
  }
}

/** The sound of a decoder: its rate is known once the first samples are there. */
async function openStream(path: string, kind: SoundKind, decoder: StreamDecoder): Promise<DecodedSound> {
  const pieces = decodePieces(path, decoder);
  let first: Decoded | null = null;
  for (;;) {
    const { value, done } = await pieces.next();
    if (done) throw cannotRead({ is: 'without', kind });
    if ((value.channelData[0]?.length ?? 0) === 0) continue;
    first = value;
    break;
  }
  const head = first;
  async function* blocks(): AsyncGenerator<Float32Array> {
    yield mixDown(head.channelData);
    for await (const { channelData } of pieces) yield mixDown(channelData);
  }
  return { sampleRateHz: requireRate(head.sampleRate), blocks: blocks() };
}

/** From byte 10 of the first block of a FLAC file: 20 bits of rate, 3 of channels, 5 of width, 36 of samples. */
function flacSeconds(head: Buffer): number | null {
  const at = head.indexOf('fLaC', 0, 'latin1') + 18;
  if (head.length < at + 8) return null;
  const sampleRateHz = head.readUIntBE(at, 3) >> 4;
  const samples = (head.readUInt8(at + 3) & 0x0f) * 2 ** 32 + head.readUInt32BE(at + 4);
  return samples > 0 && sampleRateHz > 0 ? samples / sampleRateHz : null;
}

/** Opens a FLAC file. @throws SoundFault when it is none. */
export async function openFlac(path: string, head: Buffer): Promise<DecodedSound> {
  const sound = await openStream(path, 'flac', new FLACDecoder());
  return { ...sound, blocks: inFull(sound, flacSeconds(head)) };
}

/** Opens an Ogg Vorbis file. @throws SoundFault when it is none. */
export async function openVorbis(path: string): Promise<DecodedSound> {
  return openStream(path, 'vorbis', new OggVorbisDecoder());
}

/** Samples in a frame by the version bits of its header: MPEG 1 has 1152, its half rates 576. */
const MPEG_1 = 3;

/** Seconds that the Xing or Info header of the first frame promises, or null when there is none. */
function mp3Seconds(head: Buffer, sampleRateHz: number): number | null {
  const at = Math.max(head.indexOf('Xing', 0, 'latin1'), head.indexOf('Info', 0, 'latin1'));
  if (at < 0 || at + 12 > head.length || (head.readUInt32BE(at + 4) & 1) === 0) return null;
  const sync = head.lastIndexOf(0xff, at);
  const version = sync < 0 ? MPEG_1 : (head.readUInt8(sync + 1) >> 3) & 3;
  return (head.readUInt32BE(at + 8) * (version === MPEG_1 ? 1152 : 576)) / sampleRateHz;
}

/** Opens an MP3 file, the silence that its encoder added taken off. @throws SoundFault when it is none. */
export async function openMp3(path: string, head: Buffer): Promise<DecodedSound> {
  const sound = await openStream(path, 'mp3', new MPEGDecoder());
  return { ...sound, blocks: inFull(sound, mp3Seconds(head, sound.sampleRateHz)) };
}
