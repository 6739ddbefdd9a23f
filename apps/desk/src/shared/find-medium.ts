/** Where the files lie that lessons on the desk show. */
import type { FindMedium } from '@shedbook/stand/prose';

/** The address of a file that the server keeps; null for a path that leads elsewhere. */
export const findMedium: FindMedium = (path) => {
  const [, name] = /^(?:\.\/)?media\/([^/]+)$/.exec(path) ?? [];
  return name === undefined ? null : { href: `/api/media/${encodeURIComponent(name)}`, size: null };
};
