/**
 * Figures of the trade: one-bar rhythms that teachers begin with and music is full of.
 *
 * Conventions: pattern texts as in a lesson; `name` is what `packages/words` says it by; figures stand in the order in
 * which they are taught, the commonest first. Whether a figure may stand on a page is up to the lesson's vocabulary.
 * Above each stands where it is common. Source: common practice throughout, where nothing else is named; which ones are listed is our choice.
 */

/** What a figure is called; its sentence is in `packages/words`. */
export type FigureName =
  | 'every-beat'
  | 'on-one'
  | 'on-last'
  | 'back-beat'
  | 'one-and-three'
  | 'after-one'
  | 'dotted-quarter'
  | 'dotted-quarter-later'
  | 'lets-two-four'
  | 'lets-one-two'
  | 'lets-three-four'
  | 'let-last'
  | 'three-side'
  | 'ghosts-after'
  | 'ghosts-before'
  | 'ghosts-between';

/** A figure of the trade. */
export interface Figure {
  readonly name: FigureName;
  /** Pattern text of one bar. */
  readonly text: string;
}

/** Every figure, by meter and subdivision. */
export const FIGURES: readonly Figure[] = [
  // swing comping, shuffle
  { name: 'on-last', text: '... ... ... x..' },
  // swing, shuffle
  { name: 'every-beat', text: 'x.. x.. x.. x..' },
  // swing comping; known from a dance of the 1920s, the Charleston
  { name: 'dotted-quarter', text: 'x.. ..x ... ...' },
  // swing comping, with the skip notes
  { name: 'lets-two-four', text: '... ..x ... ..x' },
  // swing comping
  { name: 'dotted-quarter-later', text: '... x.. ..x ...' },
  // swing comping
  { name: 'lets-one-two', text: '..x ..x ... ...' },
  // swing comping, into the next bar
  { name: 'lets-three-four', text: '... ... ..x ..x' },
  // bass drum of a shuffle
  { name: 'one-and-three', text: 'x.. ... x.. ...' },
  // even eighths
  { name: 'on-last', text: '.. .. .. x.' },
  // even eighths
  { name: 'every-beat', text: 'x. x. x. x.' },
  // bossa, samba, rock
  { name: 'dotted-quarter', text: 'x. .x .. ..' },
  // bossa
  { name: 'dotted-quarter-later', text: '.. x. .x ..' },
  // the three-side of the son clave; bossa (Toussaint 2013, The Geometry of Musical Rhythm, on the clave son and the tresillo)
  { name: 'three-side', text: 'x. .x .. x.' },
  // even eighths
  { name: 'lets-two-four', text: '.. .x .. .x' },
  // even eighths
  { name: 'lets-one-two', text: '.x .x .. ..' },
  // even eighths
  { name: 'lets-three-four', text: '.. .. .x .x' },
  // jazz waltz
  { name: 'on-one', text: 'x.. ... ...' },
  // jazz waltz
  { name: 'on-last', text: '... ... x..' },
  // jazz waltz
  { name: 'every-beat', text: 'x.. x.. x..' },
  // jazz waltz, waltz
  { name: 'after-one', text: '... x.. x..' },
  // jazz waltz: two in a bar
  { name: 'dotted-quarter', text: 'x.. ..x ...' },
  // jazz waltz
  { name: 'lets-one-two', text: '..x ..x ...' },
  // even sixteenths
  { name: 'on-last', text: '.... .... .... x...' },
  // even sixteenths
  { name: 'every-beat', text: 'x... x... x... x...' },
  // even sixteenths
  { name: 'dotted-quarter', text: 'x... ..x. .... ....' },
  // even sixteenths, half a bar
  { name: 'three-side', text: 'x..x ..x. .... ....' },
  // even sixteenths: into the next bar
  { name: 'let-last', text: '.... .... .... ...x' },
  // funk, rock
  { name: 'back-beat', text: '.... X... .... X...' },
  // funk
  { name: 'ghosts-after', text: '.... X..g .... X..g' },
  // funk
  { name: 'ghosts-before', text: '.g.. X... .g.. X...' },
  // funk
  { name: 'ghosts-between', text: '..g. X... ..g. X...' },
];
