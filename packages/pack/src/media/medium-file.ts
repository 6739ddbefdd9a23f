/**
 * Files of the teacher's own: what is in them is compared with what their names say, and they are named by their content.
 *
 * Conventions: pixels as the picture is shown, turned as its camera says.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { base64 } from '@scure/base';
import { MEDIUM_BYTES, MEDIUM_TYPES, type MediumFault, type MediumKind, mediumEnding } from '@shedbook/core';
import { withoutCameraNotes } from './camera-notes.ts';
import { isWhatItSays } from './content.ts';
import { NAME_LENGTH } from './medium-name.ts';
import { pictureSize } from './picture-size.ts';
import type { PixelSize } from './pixel-size.ts';
import { svgFault } from './svg.ts';

/** A file that was looked at and is in order. */
export interface MediumFile {
  readonly kind: MediumKind;
  /** Media type, such as `image/png`. */
  readonly type: string;
  /** By its content, with its ending: `3f2a9c0d1e5b7a883f2a9c0d.png`. */
  readonly name: string;
  readonly content: Uint8Array;
  /** Of a picture; null for any other. */
  readonly size: PixelSize | null;
}

/** What came of looking at a file. */
export type MediumReading =
  | { readonly file: MediumFile; readonly fault: null }
  | { readonly file: null; readonly fault: MediumFault };

/** The name of a file by its content. Names that were written otherwise are the same. */
function nameOf(content: Uint8Array, ending: string): string {
  const short = ending === 'jpeg' ? 'jpg' : ending;
  return `${bytesToHex(sha256(content)).slice(0, NAME_LENGTH)}.${short}`;
}

function refused(fault: MediumFault): MediumReading {
  return { file: null, fault };
}

/** Looks at a file. @param path its name, which says what it should be */
export function readMedium(path: string, content: Uint8Array): MediumReading {
  const ending = mediumEnding(path);
  if (!ending) return refused('other-content');
  const { kind, type } = MEDIUM_TYPES[ending];
  if (content.length > MEDIUM_BYTES[kind]) return refused('too-large');
  if (!isWhatItSays(ending, content)) return refused('other-content');
  const fault = ending === 'svg' ? svgFault(content) : null;
  if (fault) return refused(fault);
  const size = kind === 'picture' ? pictureSize(ending, content) : null;
  if (kind === 'picture' && !size) return refused('other-content');
  const shared = withoutCameraNotes(ending, content);
  return { file: { kind, type, name: nameOf(shared, ending), content: shared, size }, fault: null };
}

/** A file as an address of data. Source: RFC 2397. */
export function dataUri(type: string, content: Uint8Array): string {
  return `data:${type};base64,${base64.encode(content)}`;
}
