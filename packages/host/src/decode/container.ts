/**
 * Sound inside a container: WebM, Matroska, MP4, M4A, the sound of a phone's video, and Ogg Opus.
 *
 * Sources: mediabunny takes the container apart; packets go to libopus or libFLAC compiled to WebAssembly. Opus in every container begins with the pre-skip of its header (RFC 7845, 5.1), which is no sound.
 */
import { FLACDecoder } from '@wasm-audio-decoders/flac';
import { ALL_FORMATS, EncodedPacketSink, FilePathSource, Input, type InputAudioTrack } from 'mediabunny';
import { OpusDecoder } from 'opus-decoder';
import {
  type DecodedSound,
  type ForFfmpeg,
  inFull,
  letGo,
  mixDown,
  ofFile,
  requireRate,
} from './decoded-sound.ts';
import { breaksOff } from './sound-fault.ts';

/** Packets that are decoded together. */
const PACKETS = 32;

interface Decoded {
  readonly channelData: readonly Float32Array[];
}

interface PacketDecoder {
  readonly ready: Promise<void>;
  decodeFrames(packets: Uint8Array[]): Decoded | Promise<Decoded>;
  free(): void;
}

/** A decoder of packets and the rate that it gives, which for Opus is always 48 kHz. */
interface Decoding {
  readonly decoder: PacketDecoder;
  readonly sampleRateHz: number;
}

/** The header of an Opus stream: how many channels and how they are coupled. Source: RFC 7845, 5.1. */
function opusDecoder(header: Uint8Array): PacketDecoder {
  const view = new DataView(header.buffer, header.byteOffset, header.byteLength);
  const channels = view.getUint8(9);
  const preSkip = view.getUint16(10, true);
  if (view.getUint8(18) === 0) {
    return new OpusDecoder({ channels, preSkip, streamCount: 1, coupledStreamCount: channels - 1 });
  }
  return new OpusDecoder({
    channels,
    preSkip,
    streamCount: view.getUint8(19),
    coupledStreamCount: view.getUint8(20),
    channelMappingTable: Array.from({ length: channels }, (_, i) => view.getUint8(21 + i)),
  });
}

/** A decoder that is ready, which it never gets where a header speaks of no channel or of more than there can be. */
async function ready(decoder: PacketDecoder): Promise<PacketDecoder> {
  await decoder.ready;
  return decoder;
}

async function decodingOf(track: InputAudioTrack): Promise<Decoding | null> {
  const codec = await track.getCodec();
  if (codec === 'flac')
    return { decoder: await ready(new FLACDecoder()), sampleRateHz: await track.getSampleRate() };
  const description = (await track.getDecoderConfig())?.description;
  if (codec !== 'opus' || !description) return null;
  const header = ArrayBuffer.isView(description)
    ? new Uint8Array(description.buffer, description.byteOffset, description.byteLength)
    : new Uint8Array(description);
  return { decoder: await ready(opusDecoder(header)), sampleRateHz: 48_000 };
}

async function* someAtATime(track: InputAudioTrack): AsyncGenerator<Uint8Array[]> {
  let packets: Uint8Array[] = [];
  for await (const packet of new EncodedPacketSink(track).packets()) {
    packets.push(packet.data);
    if (packets.length < PACKETS) continue;
    yield packets;
    packets = [];
  }
  if (packets.length > 0) yield packets;
}

async function* packetBlocks(
  input: Input,
  track: InputAudioTrack,
  decoder: PacketDecoder,
): AsyncGenerator<Float32Array> {
  try {
    let isHeard = false;
    for await (const packets of someAtATime(track)) {
      const block = mixDown((await decoder.decodeFrames(packets)).channelData);
      isHeard ||= block.length > 0;
      yield block;
    }
    // what decoders cannot decode they pass over, where a header is wrong all of it
    if (!isHeard) throw breaksOff({ is: 'packet' });
  } catch {
    throw breaksOff({ is: 'packet' });
  } finally {
    letGo(() => decoder.free());
    letGo(() => input.dispose());
  }
}

/**
 * Opens the sound in a container; what is not decoded here (AAC above all) is for FFmpeg.
 * @throws SoundFault when the container cannot be read or has no sound.
 */
export async function openContainer(path: string): Promise<DecodedSound | ForFfmpeg> {
  const input = new Input({ formats: ALL_FORMATS, source: new FilePathSource(path) });
  const track = await input.getPrimaryAudioTrack().catch(() => {
    throw breaksOff({ is: 'noReadableTrack' });
  });
  if (!track) {
    letGo(() => input.dispose());
    throw breaksOff({ is: 'noTrack' });
  }
  const wholeSeconds = await ofFile(() => input.getDurationFromMetadata([track]));
  const decoding = await ofFile(() => decodingOf(track));
  if (decoding) {
    const blocks = packetBlocks(input, track, decoding.decoder);
    const sound = { sampleRateHz: requireRate(decoding.sampleRateHz), blocks };
    return { ...sound, blocks: inFull(sound, wholeSeconds) };
  }
  const codec = ((await ofFile(() => track.getCodec())) ?? 'unknown').toUpperCase();
  letGo(() => input.dispose());
  return { forFfmpeg: { is: 'codec', codec }, wholeSeconds };
}
