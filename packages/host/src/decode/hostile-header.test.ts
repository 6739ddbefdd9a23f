import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  BufferTarget,
  EncodedAudioPacketSource,
  EncodedPacket,
  MkvOutputFormat,
  Mp4OutputFormat,
  OggOutputFormat,
  Output,
  type OutputFormat,
  WebMOutputFormat,
} from 'mediabunny';
import { expect, it, onTestFinished } from 'vitest';
import { openSound } from './open-sound.ts';
import { type FoundSound, SoundFault } from './sound-fault.ts';

/** One packet and how a stream of it is described. */
interface Stream {
  readonly codec: 'opus' | 'flac';
  readonly packet: Uint8Array;
  readonly seconds: number;
  readonly header: Uint8Array;
}

// standard: RFC 7845, 5.1: 19 bytes: version 1, one channel, no pre-skip, 48 kHz, no gain, family 0
const OPUS_HEAD = Uint8Array.from([...Buffer.from('OpusHead'), 1, 1, 0, 0, 0x80, 0xbb, 0, 0, 0, 0, 0]);

// standard: RFC 6716, 3.1: CELT, full band, 20 ms, one channel, one frame (of silence)
const OPUS: Stream = {
  codec: 'opus',
  packet: Uint8Array.of(0xf8, 0xff, 0xfe),
  seconds: 0.02,
  header: OPUS_HEAD,
};

// standard: RFC 9639, 8.2: blocks of 192 samples, 44,100 Hz, one channel of 16 bits, length and MD5 unknown
const STREAM_INFO = [0x00, 0xc0, 0x00, 0xc0, 0, 0, 0, 0, 0, 0, 0x0a, 0xc4, 0x40, 0xf0, 0, 0, 0, 0];

const FLAC: Stream = {
  codec: 'flac',
  // standard: RFC 9639, 9: a frame of 192 samples at 44.1 kHz, mono, 16 bits, all of them 0, both checksums right
  packet: Uint8Array.from([0xff, 0xf8, 0x19, 0x08, 0x00, 0xba, 0, 0, 0, 0x30, 0xb2]),
  seconds: 192 / 44_100,
  header: Uint8Array.from([...Buffer.from('fLaC'), 0x80, 0, 0, 34, ...STREAM_INFO, ...Array(16).fill(0)]),
};

/** A file of ten packets. */
async function fileIn(format: OutputFormat, { codec, packet, seconds, header }: Stream): Promise<Uint8Array> {
  const target = new BufferTarget();
  const output = new Output({ format, target });
  const source = new EncodedAudioPacketSource(codec);
  output.addAudioTrack(source);
  await output.start();
  const sampleRate = codec === 'opus' ? 48_000 : 44_100;
  const decoderConfig = { codec, sampleRate, numberOfChannels: 1, description: header };
  for (let n = 0; n < 10; n += 1)
    await source.add(new EncodedPacket(packet, 'key', n * seconds, seconds), { decoderConfig });
  await output.finalize();
  return new Uint8Array(target.buffer as ArrayBuffer);
}

/** How much there is in a file, or what is found wrong with it. */
async function outcomeOf(bytes: Uint8Array): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-header-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const path = join(folder, 'take');
  writeFileSync(path, bytes);
  try {
    const opened = await openSound(path, Buffer.from(bytes));
    let samples = 0;
    if ('blocks' in opened) for await (const block of opened.blocks) samples += block.length;
    return `${samples} samples`;
  } catch (error) {
    if (error instanceof SoundFault && 'found' in error.fact) return error.fact.found.is;
    throw error;
  }
}

/** A file in which some bytes of the header, named by where they begin, are others. */
async function changed(
  format: OutputFormat,
  stream: Stream,
  [mark, from]: readonly [string, number],
  bytes: readonly number[],
): Promise<Uint8Array> {
  const file = await fileIn(format, stream);
  file.set(bytes, Buffer.from(file).indexOf(mark, 0, 'latin1') + from);
  return file;
}

/** A header of Opus in which these bytes are others, and what comes after it. */
function opusHead(changes: Readonly<Record<number, number>>, ...after: readonly number[]): Uint8Array {
  const header = Uint8Array.from([...OPUS_HEAD, ...after]);
  for (const [at, value] of Object.entries(changes)) header[Number(at)] = value;
  return header;
}

/** A header of family 1: its streams, how many of them are coupled, and where each channel comes from. */
function mapped(streams: number, coupled: number, ...table: readonly number[]): Uint8Array {
  return opusHead({ 9: table.length, 18: 1 }, streams, coupled, ...table);
}

const CONTAINERS = {
  WebM: () => new WebMOutputFormat(),
  Ogg: () => new OggOutputFormat(),
  MP4: () => new Mp4OutputFormat(),
};
const REFUSED: FoundSound['is'] = 'packet';

// standard: RFC 7845, 5.1: ten packets of 20 ms are 9600 samples at 48 kHz, whatever the family; packets of one channel
// play in two. Where no channel, or more than there are streams for, is spoken of, nothing can be decoded.
it.each(Object.entries(CONTAINERS))(
  '[HO6000] in %s an Opus header of impossible channels is refused in words, a possible one heard',
  async (_, container) => {
    const of = async (header: Uint8Array) => outcomeOf(await fileIn(container(), { ...OPUS, header }));
    for (const header of [OPUS_HEAD, opusHead({ 9: 2 }), mapped(1, 1, 0, 1), mapped(1, 0, 0, 255)])
      expect(await of(header)).toBe('9600 samples');
    for (const channels of [0, 3, 255]) expect(await of(opusHead({ 9: channels }))).toBe(REFUSED);
    expect(await of(opusHead({ 18: 255 }))).toBe(REFUSED);
    for (const header of [mapped(1, 0, 7, 200), mapped(0, 0, 0, 1), mapped(1, 2, 0, 1)])
      expect(await of(header)).toBe(REFUSED);
    expect(await of(mapped(255, 255, ...Array(255).fill(254)))).toBe(REFUSED);
  },
);

it('[HO6000] a header that ends before its time is refused in words', async () => {
  for (const bytes of [0, 8, 9, 12, 18]) {
    // standard: RFC 8794: a size of one byte; an element Void (EC) fills what is no longer there
    const left = OPUS_HEAD.length - bytes;
    const filled = [0x80 | bytes, ...OPUS_HEAD.subarray(0, bytes), 0xec, 0x80 | (left - 2)];
    const webm = await changed(CONTAINERS.WebM(), OPUS, ['OpusHead', -1], filled);
    expect(await outcomeOf(webm)).toMatch(/^(?:noReadableTrack|noTrack|packet)$/);
    // standard: RFC 3533, section 6: the length of the only segment stands before it
    const ogg = await fileIn(CONTAINERS.Ogg(), OPUS);
    const at = Buffer.from(ogg).indexOf('OpusHead');
    const short = [...ogg.subarray(0, at - 1), bytes, ...ogg.subarray(at, at + bytes)];
    const cut = Uint8Array.from([...short, ...ogg.subarray(at + OPUS_HEAD.length)]);
    expect(await outcomeOf(cut)).toMatch(/^(?:noReadableTrack|noTrack|packet)$/);
  }
});

it('[HO6000] a FLAC header of nonsense is refused in words, one of sense heard', async () => {
  for (const [container, mark] of [
    [() => new MkvOutputFormat(), 'fLaC'],
    [CONTAINERS.MP4, 'dfLa'],
  ] as const) {
    // standard: RFC 9639, 9.1.1: ten frames of 192 samples, each of which says itself how it is made
    expect(await outcomeOf(await fileIn(container(), FLAC))).toBe('1920 samples');
    for (const nonsense of [Array(42).fill(0xff), Array(42).fill(0), [0x80, 0xff, 0xff, 0xff]]) {
      const file = await changed(container(), FLAC, [mark, 4], nonsense);
      expect(await outcomeOf(file)).toMatch(/^(?:1920 samples|noReadableTrack|rate|packet)$/);
    }
  }
});
