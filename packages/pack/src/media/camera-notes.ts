/**
 * Pictures without what a camera notes beside them: where and when they were taken, with what, a preview, remarks.
 *
 * A photograph on a sheet goes to every student; where its teacher lives is nobody's business. How the camera was held
 * stays, since the picture is shown by it, and so do colours.
 * Sources: ITU-T T.81, B.1 and B.2.1; Exif 2.32, 4.5.4 and 4.6.4; CIPA DC-007 (pictures after the first); PNG 4.8 and
 * 11.3.
 */
import { createView } from '@noble/hashes/utils.js';
import { joinBytes, type MediumEnding } from '@shedbook/core';
import { orientationIn } from './orientation.ts';

/** What stays of a file, in order. */
type Parts = readonly Uint8Array[];

/** An Exif segment that says nothing but how the camera was held. */
function heldAs(orientation: number): Uint8Array {
  const head = [0xff, 0xe1, 0, 34, 0x45, 0x78, 0x69, 0x66, 0, 0];
  const tiff = [0x4d, 0x4d, 0, 42, 0, 0, 0, 8];
  const only = [0, 1, 1, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0];
  return Uint8Array.from([...head, ...tiff, ...only]);
}

/** What stays of an Exif segment: nothing where the camera was held as usual, or where it cannot be read. */
function heldIn(segment: Uint8Array): Parts {
  try {
    const orientation = orientationIn(createView(segment), 4, segment.length);
    return orientation > 1 && orientation <= 8 ? [heldAs(orientation)] : [];
  } catch (error) {
    if (error instanceof RangeError) return [];
    throw error;
  }
}

const START_OF_SCAN = 0xda;
const END_OF_IMAGE = 0xd9;
const EXIF = 0xe1;

/** Markers of segments that hold notes: Exif and XMP, further pictures, IPTC, remarks. */
const NOTES: readonly number[] = [EXIF, 0xed, 0xfe];

/** Whether an application segment lists further pictures, which lie after the end of the first. */
function isOfMore(content: Uint8Array, at: number): boolean {
  return content[at + 1] === 0xe2 && String.fromCharCode(...content.subarray(at + 4, at + 7)) === 'MPF';
}

/** Where the next marker stands at or after a place in coded data: no stuffed byte and no restart. */
function nextMarker(content: Uint8Array, from: number): number {
  let at = from;
  while (at + 1 < content.length) {
    const after = content[at + 1] as number;
    if (content[at] === 0xff && after !== 0 && after !== 0xff && !(after >= 0xd0 && after <= 0xd7)) return at;
    at += 1;
  }
  return content.length;
}

function ofJpeg(content: Uint8Array): Parts {
  const view = createView(content);
  const parts: Uint8Array[] = [content.subarray(0, 2)];
  for (let at = 2; at + 4 <= content.length; ) {
    const marker = content[at + 1] as number;
    if (marker === END_OF_IMAGE) return [...parts, content.subarray(at, at + 2)];
    const end = at + 2 + view.getUint16(at + 2);
    const next = marker === START_OF_SCAN ? nextMarker(content, end) : end;
    if (marker === EXIF) parts.push(...heldIn(content.subarray(at, end)));
    if (!NOTES.includes(marker) && !isOfMore(content, at)) parts.push(content.subarray(at, next));
    at = next;
  }
  return [...parts, Uint8Array.from([0xff, END_OF_IMAGE])];
}

/** Chunks that hold notes. */
const NOTE_CHUNKS: readonly string[] = ['eXIf', 'tEXt', 'zTXt', 'iTXt', 'tIME'];

/** Length, type and checksum of a chunk, in bytes. */
const CHUNK_FRAME = 12;

function ofPng(content: Uint8Array): Parts {
  const view = createView(content);
  const parts: Uint8Array[] = [content.subarray(0, 8)];
  let at = 8;
  while (at + CHUNK_FRAME <= content.length) {
    const end = at + CHUNK_FRAME + view.getUint32(at);
    const type = String.fromCharCode(...content.subarray(at + 4, at + 8));
    if (!NOTE_CHUNKS.includes(type)) parts.push(content.subarray(at, end));
    at = end;
  }
  return [...parts, content.subarray(at)];
}

const PARTS: Readonly<Partial<Record<MediumEnding, (content: Uint8Array) => Parts>>> = {
  jpg: ofJpeg,
  jpeg: ofJpeg,
  png: ofPng,
};

/** A file as everybody may have it; what is no photograph stays as it is. */
export function withoutCameraNotes(ending: MediumEnding, content: Uint8Array): Uint8Array {
  const parts = PARTS[ending]?.(content);
  return parts ? joinBytes(parts) : content;
}
