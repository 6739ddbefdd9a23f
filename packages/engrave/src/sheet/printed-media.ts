/** What stands on paper for a teacher's own pictures, sound and video. */

/** A picture as it is printed. */
export interface PrintedPicture {
  readonly kind: 'picture';
  readonly widthPx: number;
  readonly heightPx: number;
  /** A PNG or JPEG file as an address of data (RFC 2397). */
  readonly dataUri: string;
}

/** Where something that sounds or moves lies on the web: an SVG of paths and basic shapes, to be scanned. */
export interface PrintedCode {
  readonly kind: 'code';
  readonly svg: string;
}

/** What is printed for the files of a lesson, by their paths; the name of the file where there is nothing for it. */
export type PrintedMedia = ReadonlyMap<string, PrintedPicture | PrintedCode>;
