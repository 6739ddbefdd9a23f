/** What a lesson is taken away as: the ending of the file's name and its media type. */

import { STANDARD_FORMATS } from '@shedbook/core';

/**
 * Every format: the standard ones are core's.
 * Source: IANA media types registry; RFC 9512 (YAML); RFC 8118 (PDF).
 */
export const FILE_FORMATS = {
  lesson: { ending: '.lesson.yaml', type: 'application/yaml' },
  sheet: { ending: '.pdf', type: 'application/pdf' },
  ...STANDARD_FORMATS,
  pack: { ending: '.zip', type: 'application/zip' },
} as const;

/** The name of a format. */
export type FileFormat = keyof typeof FILE_FORMATS;
