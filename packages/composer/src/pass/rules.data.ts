/**
 * The rules of second passes, by name.
 *
 * Source: common practice of comping, orchestration and sticking; what each means is said in SPEC.md.
 */

/** How a rhythm is shared out between an upper and a lower voice. */
export const SHARING_RULES = ['beats-below', 'long-below', 'by-turns', 'accents-below'] as const;
/** Name of a rule for sharing strokes. */
export type SharingRule = (typeof SHARING_RULES)[number];

/** How a rhythm goes over the kit. */
export const KIT_RULES = ['by-beat', 'by-stroke', 'down-the-bar', 'accents-on-toms'] as const;
/** Name of a rule for going over the kit. */
export type KitRule = (typeof KIT_RULES)[number];

/** Which strokes are accented. */
export const ACCENT_RULES = [
  'on-the-beat',
  'off-the-beat',
  'first-of-group',
  'last-of-group',
  'every-third',
  'free',
] as const;
/** Name of a rule for accents. */
export type AccentRule = (typeof ACCENT_RULES)[number];

/** Which hand plays which stroke. */
export const HANDS_RULES = ['by-turns', 'by-place', 'doubles', 'paradiddle'] as const;
/** Name of a rule of hands. */
export type HandsRule = (typeof HANDS_RULES)[number];

/** Drums that a rhythm goes over beside the voice that it is written for, from high to low. */
export const TOMS = ['tom-high', 'tom-mid', 'tom-low'] as const;

/** What a beat of a fill strikes, by slots a beat, the fullest first. */
export const FILL_CELLS: Readonly<Record<2 | 3 | 4, readonly string[]>> = {
  2: ['xx'],
  3: ['xxx', 'xx.', 'x.x', '.xx'],
  4: ['xxxx', 'x.xx', 'xx.x', 'xxx.', '.xxx'],
};
