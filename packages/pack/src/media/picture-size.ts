/**
 * How large pictures are, by their heads alone.
 *
 * Conventions: a photograph that its camera held upright is told as it is shown.
 * Sources: PNG 11.2.2; ITU-T T.81, B.2.2; GIF89a, 18.
 */
import { createView } from '@noble/hashes/utils.js';
import type { MediumEnding } from '@shedbook/core';
import { orientationIn } from './orientation.ts';
import type { PixelSize } from './pixel-size.ts';
import { svgSize } from './svg.ts';

type View = DataView<ArrayBufferLike>;

function sized(widthPx: number, heightPx: number): PixelSize | null {
  return widthPx > 0 && heightPx > 0 ? { widthPx, heightPx } : null;
}

function pngSize(view: View): PixelSize | null {
  return sized(view.getUint32(16), view.getUint32(20));
}

function gifSize(view: View): PixelSize | null {
  return sized(view.getUint16(6, true), view.getUint16(8, true));
}

/** Whether a marker begins a frame: all of C0 to CF but tables of Huffman and arithmetic coding. */
function isFrame(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
}

function jpegSize(view: View): PixelSize | null {
  let orientation = 1;
  for (let at = 2; at + 4 <= view.byteLength; ) {
    if (view.getUint8(at) !== 0xff) return null;
    const marker = view.getUint8(at + 1);
    const length = view.getUint16(at + 2);
    if (marker === 0xe1 && orientation === 1 && length > 16)
      orientation = orientationIn(view, at + 4, at + 2 + length);
    if (isFrame(marker)) {
      const [height, width] = [view.getUint16(at + 5), view.getUint16(at + 7)];
      return orientation > 4 ? sized(height, width) : sized(width, height);
    }
    at += 2 + length;
  }
  return null;
}

const SIZES: Readonly<Partial<Record<MediumEnding, (view: View) => PixelSize | null>>> = {
  png: pngSize,
  gif: gifSize,
  jpg: jpegSize,
  jpeg: jpegSize,
};

/** Size of a picture; null where its head does not tell it. */
export function pictureSize(ending: MediumEnding, content: Uint8Array): PixelSize | null {
  if (ending === 'svg') return svgSize(content);
  try {
    const view = createView(content);
    return SIZES[ending]?.(view) ?? null;
  } catch (error) {
    // a file that ends within its head
    if (error instanceof RangeError) return null;
    throw error;
  }
}
