/** How a camera was held. Source: Exif 2.32, 4.6.4 (tag 274). */

/** The orientation that an Exif segment tells, from 1 to 8; 1 where it tells none. @throws RangeError past its end */
export function orientationIn(view: DataView<ArrayBufferLike>, start: number, end: number): number {
  const isExif = view.getUint32(start) === 0x45786966 && view.getUint16(start + 4) === 0;
  if (!isExif) return 1;
  const tiff = start + 6;
  const isLittle = view.getUint16(tiff) === 0x4949;
  const first = tiff + view.getUint32(tiff + 4, isLittle);
  if (first + 2 > end) return 1;
  const count = view.getUint16(first, isLittle);
  for (let entry = 0; entry < count; entry += 1) {
    const at = first + 2 + 12 * entry;
    if (at + 12 > end) return 1;
    if (view.getUint16(at, isLittle) === 0x0112) return view.getUint16(at + 8, isLittle);
  }
  return 1;
}
