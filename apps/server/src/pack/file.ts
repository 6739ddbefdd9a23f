/** Files of a pack while it is made. */

/** A file: where it goes in the pack's folder, and what is in it. */
export interface PackFile {
  /** Relative, with slashes. */
  readonly path: string;
  readonly content: Uint8Array;
}

const encoder = new TextEncoder();

/** A file of text, in UTF-8. */
export function textFile(path: string, text: string): PackFile {
  return { path, content: encoder.encode(text) };
}

/** A number as file names have it: `03` of 24, `007` of 120. */
export function padded(number: number, of: number): string {
  return String(number).padStart(Math.max(2, String(of).length), '0');
}
