/** Names of files by their content. */
import { MEDIUM_TYPES } from '@shedbook/core';

/** Characters of a name: 96 bits tell one file from any other. */
export const NAME_LENGTH = 24;

/** Names that files have by their content. */
export const MEDIUM_NAME = new RegExp(
  `^[0-9a-f]{${NAME_LENGTH}}\\.(?:${Object.keys(MEDIUM_TYPES).join('|')})$`,
);
