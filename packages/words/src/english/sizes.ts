/** Sizes of files, in English. */

/** Sizes of files. */
export const sizes = {
  kilobytes: '{$size :integer} kB',
  megabytes: '{$size :number minimumFractionDigits=1 maximumFractionDigits=1} MB',
  gigabytes: '{$size :number minimumFractionDigits=1 maximumFractionDigits=1} GB',
} as const;
