/** Rows of a table that has none. */
export const ROWS: readonly number[] = [];
