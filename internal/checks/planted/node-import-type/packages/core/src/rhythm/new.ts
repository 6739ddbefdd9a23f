/** A folder. */
export type Folder = import('node:fs').Dir;
