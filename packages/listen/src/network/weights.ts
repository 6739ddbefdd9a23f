/**
 * Unpacking the weights that training left: one signed byte a weight, one scale and one bias a row.
 *
 * Conventions: base64 text (RFC 4648); for each layer the scales (float32), the biases (float32), then the
 * bytes, row by row; little-endian.
 */
import { LAYERS, type LayerWeights } from './network.ts';

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** The bytes of a base64 text without line breaks. */
export function decodeBase64(text: string): Uint8Array {
  const codes = new Uint8Array(128);
  for (let i = 0; i < 64; i += 1) codes[ALPHABET.charCodeAt(i)] = i;
  const padding = text.endsWith('==') ? 2 : text.endsWith('=') ? 1 : 0;
  const bytes = new Uint8Array((text.length / 4) * 3 - padding);
  let to = 0;
  for (let i = 0; i < text.length; i += 4) {
    const code = (offset: number) => codes[text.charCodeAt(i + offset)]!;
    const word = (code(0) << 18) | (code(1) << 12) | (code(2) << 6) | code(3);
    bytes[to] = word >> 16;
    if (to + 1 < bytes.length) bytes[to + 1] = (word >> 8) & 255;
    if (to + 2 < bytes.length) bytes[to + 2] = word & 255;
    to += 3;
  }
  return bytes;
}

/** The layers packed in `text`. @throws RangeError when its length is not that of the layers. */
export function unpackWeights(text: string): readonly LayerWeights[] {
  const bytes = decodeBase64(text);
  const view = new DataView(bytes.buffer);
  let at = 0;
  const floats = (count: number) =>
    Float64Array.from({ length: count }, () => {
      at += 4;
      return view.getFloat32(at - 4, true);
    });
  const layers = LAYERS.map(({ rows, inputs, kernel }) => {
    const scales = floats(rows);
    const bias = floats(rows);
    const width = inputs * kernel;
    const weights = new Float64Array(rows * width);
    for (let i = 0; i < weights.length; i += 1) {
      weights[i] = view.getInt8(at) * scales[Math.floor(i / width)]!;
      at += 1;
    }
    return { weights, bias };
  });
  if (at !== bytes.length) throw new RangeError('Internal error: the weights do not fit the layers');
  return layers;
}
