/** Width and height of a picture. */
export interface PixelSize {
  readonly widthPx: number;
  readonly heightPx: number;
}
