/** Sizes of files, in German. */
import type * as english from '../english/sizes.ts';
import { translation } from '../message/translated.ts';

/** Sizes of files. */
export const sizes = translation<typeof english.sizes>()({
  kilobytes: '{$size :integer} kB',
  megabytes: '{$size :number minimumFractionDigits=1 maximumFractionDigits=1} MB',
  gigabytes: '{$size :number minimumFractionDigits=1 maximumFractionDigits=1} GB',
});
