import { readTitle } from '@shedbook/core';

/** What is heard. */
export const hear = readTitle;
