/**
 * A small SoundFont: one drum set with one sound, on the key of the snare.
 * Source: SoundFont Technical Specification 2.04, sections 4 to 7 (chunks and records).
 */

const u16 = (...values) => values.flatMap((value) => [value & 255, (value >> 8) & 255]);
const u32 = (...values) => values.flatMap((value) => u16(value & 0xffff, (value >>> 16) & 0xffff));
const text = (value, size) =>
  Array.from({ length: size }, (_, i) => (i < value.length ? value.charCodeAt(i) : 0));
const chunk = (id, body) => [...text(id, 4), ...u32(body.length), ...body, ...(body.length % 2 ? [0] : [])];
const list = (kind, chunks) => chunk('LIST', [...text(kind, 4), ...chunks.flat()]);

const KEY = 38;
const RATE_HZ = 22_050;
const GENERATORS = { instrument: 41, keyRange: 43, sampleId: 53, rootKey: 58 };

/** The bytes of the file. */
export function smallSoundFont() {
  const samples = Array.from({ length: 2000 }, (_, i) =>
    Math.round(20_000 * Math.sin(i / 7) * Math.exp(-i / 500)),
  );
  const pcm = u16(...samples, ...Array.from({ length: 46 }, () => 0));
  const nothing = u16(0, 0, 0, 0, 0);
  const presets = [
    ...[...text('Set', 20), ...u16(0, 128, 0), ...u32(0, 0, 0)],
    ...[...text('EOP', 20), ...u16(0, 0, 1), ...u32(0, 0, 0)],
  ];
  const headers = [
    ...[...text('drum', 20), ...u32(0, 2000, 0, 2000, RATE_HZ), KEY, 0, ...u16(0, 1)],
    ...[...text('EOS', 20), ...u32(0, 0, 0, 0, 0), 0, 0, ...u16(0, 0)],
  ];
  const generators = [
    ...[...u16(GENERATORS.keyRange), KEY, KEY],
    ...u16(GENERATORS.rootKey, KEY, GENERATORS.sampleId, 0, 0, 0),
  ];
  const parts = [
    list('INFO', [
      chunk('ifil', u16(2, 4)),
      chunk('isng', text('EMU8000', 8)),
      chunk('INAM', text('Small', 6)),
    ]),
    list('sdta', [chunk('smpl', pcm)]),
    list('pdta', [
      chunk('phdr', presets),
      chunk('pbag', u16(0, 0, 1, 0)),
      chunk('pmod', nothing),
      chunk('pgen', u16(GENERATORS.instrument, 0, 0, 0)),
      chunk('inst', [...text('Set', 20), ...u16(0), ...text('EOI', 20), ...u16(1)]),
      chunk('ibag', u16(0, 0, 3, 0)),
      chunk('imod', nothing),
      chunk('igen', generators),
      chunk('shdr', headers),
    ]),
  ];
  return Uint8Array.from(chunk('RIFF', [...text('sfbk', 4), ...parts.flat()]));
}
