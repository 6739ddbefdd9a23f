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
  const bytes = new Uint8Array((text.length / 4) * 3);
  let to = 0;
  for (let i = 0; i < text.length; i += 4) {
    const high = (codes[text.charCodeAt(i)]! << 6) | codes[text.charCodeAt(i + 1)]!;
    const low = (codes[text.charCodeAt(i + 2)]! << 6) | codes[text.charCodeAt(i + 3)]!;
    bytes[to] = high >> 4;
    bytes[to + 1] = (high << 4) | (low >> 8);
    bytes[to + 2] = low;
    to += 3;
  }
  return bytes.subarray(0, bytes.length - padding);
}

/** The layers packed in `text`. @throws RangeError when its length is not that of the layers. */
export function unpackWeights(text: string): readonly LayerWeights[] {
  const bytes = decodeBase64(text);
  const view = new DataView(bytes.buffer);
  let at = 0;
  const floats = (count: number) => {
    const values = new Float64Array(count);
    for (let i = 0; i < count; i += 1) values[i] = view.getFloat32(at + 4 * i, true);
    at += 4 * count;
    return values;
  };
  const layers = LAYERS.map(({ rows, inputs, kernel }) => {
    const scales = floats(rows);
    const bias = floats(rows);
    const width = inputs * kernel;
    const weights = new Float64Array(rows * width);
    const packed = new Int8Array(bytes.buffer, at, weights.length);
    for (let row = 0; row < rows; row += 1) {
      const scale = scales[row]!;
      for (let i = row * width; i < (row + 1) * width; i += 1) weights[i] = packed[i]! * scale;
    }
    at += weights.length;
    return { weights, bias };
  });
  if (at !== bytes.length) throw new RangeError('Internal error: the weights do not fit the layers');
  return layers;
}
