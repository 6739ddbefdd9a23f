/** The kinds there are. */
export const KINDS = ['a'] as const;
export type Kind = (typeof KINDS)[number];
