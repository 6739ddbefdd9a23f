/**
 * Hostile files, grown from good ones: each change keeps the file's structure, its sizes and its checksums mended, so
 * that a reader gets past its first look.
 *
 * Sources: RIFF (WAV, SoundFont 2); Standard MIDI Files 1.0, chunks; RFC 3533, Ogg pages and their checksum; RFC 8794,
 * EBML elements; PKWARE APPNOTE 6.3, written anew by fflate.
 */
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';

const NUMBERS = [
  '0',
  '1',
  '-1',
  '0.5',
  '1e9',
  '999999999',
  '4294967296',
  '-0',
  '1e-9',
  '2147483647',
  '17',
  '255',
];
const TEXTS = [
  '',
  ' ',
  'x',
  '"',
  "$'",
  '\u0001',
  '\ud800',
  '</a>',
  '&#x0;',
  '../../x',
  'é'.repeat(300),
  '[[[[',
  '*a',
  'null',
];

/** Some bytes changed, taken out, said twice or put elsewhere. */
export function changeBytes(bytes, random, from = 0) {
  if (bytes.length <= from) return bytes;
  const at = from + random.below(bytes.length - from);
  const length = 1 + random.below(random.of([1, 4, 64, 1000]));
  const out = bytes.slice();
  switch (random.below(6)) {
    case 0:
      out[at] ^= 1 << random.below(8);
      return out;
    case 1:
      out.fill(random.of([0, 0x7f, 0x80, 0xff]), at, at + random.of([1, 2, 4, 8]));
      return out;
    case 2:
      for (let i = at; i < Math.min(out.length, at + length); i += 1) out[i] = random.below(256);
      return out;
    case 3:
      return Uint8Array.from([...bytes.subarray(0, at), ...bytes.subarray(at + length)]);
    case 4: {
      const piece = bytes.subarray(at, at + length);
      const times = random.of([1, 1, 2, 50]);
      const all = [bytes.subarray(0, at), ...Array.from({ length: times }, () => piece), bytes.subarray(at)];
      return Uint8Array.from(Buffer.concat(all));
    }
    default:
      return Uint8Array.from(Buffer.concat([bytes.subarray(0, at), bytes.subarray(at).subarray(0, length)]));
  }
}

/** A number, a word or a line of a text changed, taken out or said many times. */
export function changeText(text, random) {
  const found = [...text.matchAll(random.of([/-?\d+(?:\.\d+)?/g, /[A-Za-z][\w-]*/g, /"[^"\n]*"|>[^<]+</g]))];
  const lines = text.split('\n');
  const line = random.below(lines.length);
  switch (random.below(5)) {
    case 0:
      return lines.toSpliced(line, 1).join('\n');
    case 1:
      return lines
        .toSpliced(line, 0, ...Array.from({ length: random.of([1, 3, 2000]) }, () => lines[line]))
        .join('\n');
    case 2: {
      const other = random.below(lines.length);
      return lines.with(line, lines[other]).with(other, lines[line]).join('\n');
    }
    default: {
      const match = found.length > 0 ? random.of(found) : null;
      if (!match) return text + random.of(TEXTS);
      const [old] = match;
      const isNumber = /^-?\d/.test(old);
      const other = isNumber ? random.of(NUMBERS) : random.of(found)[0];
      const fresh = random.below(4) === 0 ? random.of(TEXTS) : other;
      return text.slice(0, match.index) + fresh + text.slice(match.index + old.length);
    }
  }
}

const inText = (bytes, random) => strToU8(changeText(strFromU8(bytes), random));

const word = (bytes, at, size, little) => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return size === 4 ? view.getUint32(at, little) : view.getUint16(at, little);
};

const sized = (id, body, little) => {
  const head = new Uint8Array(8);
  head.set(id, 0);
  new DataView(head.buffer).setUint32(4, body.length, little);
  return Buffer.concat([head, body]);
};

/** The chunks of a file that is made of them: four letters, a size, a body. */
function chunksOf(bytes, from, isRiff) {
  const chunks = [];
  for (let at = from; at + 8 <= bytes.length; ) {
    const size = Math.min(word(bytes, at + 4, 4, isRiff), bytes.length - at - 8);
    chunks.push({ id: bytes.slice(at, at + 4), body: bytes.slice(at + 8, at + 8 + size) });
    at += 8 + size + (isRiff ? size % 2 : 0);
  }
  return chunks;
}

function joinChunks(chunks, isRiff) {
  return Buffer.concat(
    chunks.flatMap(({ id, body }) => [
      sized(id, body, isRiff),
      ...(isRiff && body.length % 2 ? [new Uint8Array(1)] : []),
    ]),
  );
}

/** One of some chunks changed, left out, said twice or moved; in RIFF a list is gone into. */
function changeChunks(chunks, random, isRiff) {
  if (chunks.length === 0) return chunks;
  const at = random.below(chunks.length);
  const chunk = chunks[at];
  const act = random.below(12);
  if (act === 0) return chunks.toSpliced(at, 1);
  if (act === 1) return chunks.toSpliced(at, 0, chunk);
  if (act === 2) return chunks.toReversed();
  const isList = isRiff && String.fromCharCode(...chunk.id) === 'LIST' && chunk.body.length > 12;
  if (!isList) return chunks.with(at, { ...chunk, body: changeBytes(chunk.body, random) });
  const inside = joinChunks(changeChunks(chunksOf(chunk.body, 4, true), random, true), true);
  return chunks.with(at, { ...chunk, body: Buffer.concat([chunk.body.subarray(0, 4), inside]) });
}

/** A RIFF file: its chunks changed and their sizes mended. */
export function changeRiff(bytes, random) {
  const inside = joinChunks(changeChunks(chunksOf(bytes, 12, true), random, true), true);
  return Uint8Array.from(sized(bytes.subarray(0, 4), Buffer.concat([bytes.subarray(8, 12), inside]), true));
}

/** A MIDI file: its tracks changed and their sizes mended. */
export function changeMidi(bytes, random) {
  return Uint8Array.from(joinChunks(changeChunks(chunksOf(bytes, 0, false), random, false), false));
}

/** A ZIP file: one of the files inside changed as a text, lengths and checksums mended. */
export function changeZip(bytes, random) {
  const files = unzipSync(bytes);
  const name = random.of(Object.keys(files));
  const act = random.below(10);
  if (act === 0) delete files[name];
  else if (act === 1) files[`${name}${random.of(TEXTS)}`] = files[name];
  else files[name] = random.below(3) === 0 ? changeBytes(files[name], random) : inText(files[name], random);
  return zipSync(files);
}

const CRC = Array.from({ length: 256 }, (_, i) => {
  let rest = i << 24;
  for (let bit = 0; bit < 8; bit += 1) rest = rest & 0x8000_0000 ? (rest << 1) ^ 0x04c1_1db7 : rest << 1;
  return rest >>> 0;
});

/** The checksum of an Ogg page whose own field is zero. Source: RFC 3533, section 6. */
function oggChecksum(page) {
  let rest = 0;
  for (const byte of page) rest = ((rest << 8) ^ CRC[((rest >>> 24) & 255) ^ byte]) >>> 0;
  return rest;
}

/** An Ogg file: one page changed behind its header, and its checksum mended. */
export function changeOgg(bytes, random) {
  const starts = [];
  for (let at = 0; at + 27 <= bytes.length; at += 1)
    if (bytes[at] === 0x4f && strFromU8(bytes.subarray(at, at + 4), true) === 'OggS') starts.push(at);
  const index = random.below(starts.length);
  const from = starts[index];
  const page = bytes.slice(from, starts[index + 1] ?? bytes.length);
  const bodyAt = 27 + page[26];
  if (bodyAt < page.length)
    for (let n = 0; n <= random.below(4); n += 1)
      page[bodyAt + random.below(page.length - bodyAt)] = random.below(256);
  if (random.below(5) === 0) page[random.of([5, 6, 7, 14, 18])] = random.below(256);
  page.fill(0, 22, 26);
  new DataView(page.buffer).setUint32(22, oggChecksum(page), true);
  const out = bytes.slice();
  out.set(page, from);
  return out;
}

/** A size of an EBML element and how many bytes it takes. */
function ebmlNumber(bytes, at, keepsMark) {
  const length = Math.clz32(bytes[at]) - 23;
  if (length > 8) return null;
  let value = keepsMark ? bytes[at] : bytes[at] & (0xff >> length);
  for (let i = 1; i < length; i += 1) value = value * 256 + (bytes[at + i] ?? 0);
  return { value, length };
}

const MASTERS = new Set([
  0x1a45_dfa3, 0x1853_8067, 0x1654_ae6b, 0xae, 0xe1, 0x1f43_b675, 0x1549_a966, 0xa0, 0x114d_9b74, 0x4dbb,
]);

/** Where the bodies of EBML elements lie that hold no others. */
function ebmlLeaves(bytes, from, to) {
  const leaves = [];
  for (let at = from; at < to; ) {
    const id = ebmlNumber(bytes, at, true);
    const size = id && ebmlNumber(bytes, at + id.length, false);
    if (!size) return leaves;
    const body = at + id.length + size.length;
    const end = Math.min(to, body + size.value);
    if (MASTERS.has(id.value)) leaves.push(...ebmlLeaves(bytes, body, end));
    else leaves.push([body, end]);
    if (end <= at) return leaves;
    at = end;
  }
  return leaves;
}

/** A WebM file: bytes inside of some element changed, its sizes as they are. */
export function changeWebm(bytes, random) {
  const leaves = ebmlLeaves(bytes, 0, bytes.length).filter(([from, to]) => to > from);
  if (leaves.length === 0) return changeBytes(bytes, random);
  const out = bytes.slice();
  const [from, to] = random.of(random.below(2) ? leaves.slice(0, 40) : leaves);
  const length = Math.min(to - from, 1 + random.below(8));
  const at = from + random.below(to - from - length + 1);
  for (let i = at; i < at + length; i += 1) out[i] = random.of([0, 1, 0x7f, 0x80, 0xff, random.below(256)]);
  return out;
}

/** A stream of frames: bytes changed behind its first ones, sizes of FLAC's metadata as they are. */
export function changeStream(bytes, random) {
  const out = bytes.slice();
  const head = Math.min(bytes.length, random.below(2) ? 200 : bytes.length);
  for (let n = 0; n <= random.below(6); n += 1)
    out[4 + random.below(Math.max(1, head - 4))] = random.below(256);
  return out;
}

/** Changes a file `times` over. */
export function grow(bytes, change, random) {
  let out = bytes;
  for (let n = 0; n <= random.below(3); n += 1) out = change(out, random);
  return random.below(40) === 0 ? out.slice(0, random.below(out.length + 1)) : out;
}

export { inText as changeTextBytes };
