/** Sending a picture, a sound or a video to the server, a photograph made as small as a page needs it. */
import { MEDIUM_BYTES, type Medium, mediumType } from '@shedbook/core';
import { ask } from './client.ts';

/** Pixels of the longer side of a picture that was too large, or of a kind that not every browser shows. */
const LONGER_PX = 2400;

/** Whether a picture has to be drawn anew before anybody else can show it. */
function isToBeDrawn({ name, type, size }: File): boolean {
  const kind = mediumType(name)?.kind ?? null;
  if (kind === 'picture') return size > MEDIUM_BYTES.picture;
  return kind === null && type.startsWith('image/');
}

/** The same picture as a JPEG of a moderate size; the file itself where this browser cannot read it. */
async function drawn(file: File): Promise<File> {
  const picture = await createImageBitmap(file).catch(() => null);
  if (!picture) return file;
  const scale = Math.min(1, LONGER_PX / Math.max(picture.width, picture.height));
  const [width, height] = [Math.round(scale * picture.width), Math.round(scale * picture.height)];
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d');
  if (!context) return file;
  context.fillStyle = '#fff';
  context.fillRect(0, 0, width, height);
  context.drawImage(picture, 0, 0, width, height);
  picture.close();
  const content = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 });
  return new File([content], file.name.replace(/\.[^.]*$|$/, '.jpg'));
}

/** What a file is called, without its ending. */
function saysOf(name: string): string {
  return name
    .replace(/\.[^.]*$/, '')
    .replaceAll(/[_-]+/g, ' ')
    .trim();
}

/** Keeps a file. @returns what a lesson says of it @throws RefusedError where it cannot be shown */
export async function keepMedium(file: File): Promise<Medium> {
  const fit = isToBeDrawn(file) ? await drawn(file) : file;
  const { path } = await ask('keepMedium', { query: { name: fit.name }, body: fit });
  return { path, says: saysOf(file.name) || null };
}
