import { strToU8, zipSync } from 'fflate';
import { expect, it } from 'vitest';
import { keptMedia, takeApart } from './lesson-zip.ts';

const TEXT = 'title: Alone\nexercises: [x x x x]\n';

/** A file of that name. */
const zipped = (bytes: Uint8Array) => new File([bytes as Uint8Array<ArrayBuffer>], 'lesson.zip');

it('[ST6206] a lesson comes out of a ZIP file as it was written, wherever in it it lies', async () => {
  const folder = zipSync({ 'notes.txt': strToU8('no'), 'first/alone.lesson.yaml': strToU8(TEXT) });
  expect(await takeApart(zipped(folder))).toBe(TEXT);
  expect(await keptMedia(TEXT)).toEqual([]);
});

it('[ST6206] a ZIP file that is damaged or has no lesson gives none', async () => {
  expect(await takeApart(zipped(zipSync({ 'notes.txt': strToU8('no') })))).toBeNull();
  expect(await takeApart(zipped(strToU8('PK, and then nothing')))).toBeNull();
});
