/** Pictures of kinds that no PDF holds, as PNG. */
import { dataUri, type MediumFile } from '@shedbook/pack/media';

/** Pixels of the longer side at most: twelve centimetres at 300 to the inch. */
const MOST_PX = 1400;

/** Kinds that are printed as they are. */
const AS_THEY_ARE: ReadonlySet<string> = new Set(['image/png', 'image/jpeg']);

/** Whether a PNG comes in passes, which writers of PDF do not read. Source: PNG 11.2.2, byte 28. */
function isInterlaced({ type, content }: MediumFile): boolean {
  return type === 'image/png' && content[28] === 1;
}

/** A picture as a PNG file; null where it is printed as it is, or is no picture. */
export async function forPrinters(medium: MediumFile): Promise<Uint8Array | null> {
  const { size, type, content } = medium;
  if (!size || (AS_THEY_ARE.has(type) && !isInterlaced(medium))) return null;
  const { loadRasteriser } = await import('../film/rasterise.ts');
  const { toPng } = await loadRasteriser();
  const longer = Math.max(size.widthPx, size.heightPx);
  const scale = type === 'image/svg+xml' ? MOST_PX / longer : Math.min(1, MOST_PX / longer);
  const [width, height] = [size.widthPx, size.heightPx].map((px) => Math.max(1, Math.round(scale * px)));
  const image = `<image width="${width}" height="${height}" preserveAspectRatio="none" href="${dataUri(type, content)}"/>`;
  return toPng(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"><rect width="100%" height="100%" fill="#fff"/>${image}</svg>`,
  );
}
