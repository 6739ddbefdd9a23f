/**
 * Figures of the trade: one-bar rhythms that teachers begin with and music is full of.
 *
 * Conventions: pattern texts as in a lesson; `name` is what `packages/words` says it by; figures stand in the order in
 * which they are taught, the commonest first. Whether a figure may stand on a page is up to the lesson's vocabulary.
 * Source: common practice throughout, where nothing else is named; which ones are listed is our choice.
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
  /** Where it is common. */
  readonly where: string;
  /** Where that is said. */
  readonly source: string;
}

const PRACTICE = 'common practice';

/** Every figure, by meter and subdivision. */
export const FIGURES: readonly Figure[] = [
  { name: 'on-last', text: '... ... ... x..', where: 'swing comping, shuffle', source: PRACTICE },
  { name: 'every-beat', text: 'x.. x.. x.. x..', where: 'swing, shuffle', source: PRACTICE },
  {
    name: 'dotted-quarter',
    text: 'x.. ..x ... ...',
    where: 'swing comping; known from a dance of the 1920s, the Charleston',
    source: PRACTICE,
  },
  {
    name: 'lets-two-four',
    text: '... ..x ... ..x',
    where: 'swing comping, with the skip notes',
    source: PRACTICE,
  },
  { name: 'dotted-quarter-later', text: '... x.. ..x ...', where: 'swing comping', source: PRACTICE },
  { name: 'lets-one-two', text: '..x ..x ... ...', where: 'swing comping', source: PRACTICE },
  {
    name: 'lets-three-four',
    text: '... ... ..x ..x',
    where: 'swing comping, into the next bar',
    source: PRACTICE,
  },
  { name: 'one-and-three', text: 'x.. ... x.. ...', where: 'bass drum of a shuffle', source: PRACTICE },
  { name: 'on-last', text: '.. .. .. x.', where: 'even eighths', source: PRACTICE },
  { name: 'every-beat', text: 'x. x. x. x.', where: 'even eighths', source: PRACTICE },
  { name: 'dotted-quarter', text: 'x. .x .. ..', where: 'bossa, samba, rock', source: PRACTICE },
  { name: 'dotted-quarter-later', text: '.. x. .x ..', where: 'bossa', source: PRACTICE },
  {
    name: 'three-side',
    text: 'x. .x .. x.',
    where: 'the three-side of the son clave; bossa',
    source: 'Toussaint 2013, The Geometry of Musical Rhythm, on the clave son and the tresillo',
  },
  { name: 'lets-two-four', text: '.. .x .. .x', where: 'even eighths', source: PRACTICE },
  { name: 'lets-one-two', text: '.x .x .. ..', where: 'even eighths', source: PRACTICE },
  { name: 'lets-three-four', text: '.. .. .x .x', where: 'even eighths', source: PRACTICE },
  { name: 'on-one', text: 'x.. ... ...', where: 'jazz waltz', source: PRACTICE },
  { name: 'on-last', text: '... ... x..', where: 'jazz waltz', source: PRACTICE },
  { name: 'every-beat', text: 'x.. x.. x..', where: 'jazz waltz', source: PRACTICE },
  { name: 'after-one', text: '... x.. x..', where: 'jazz waltz, waltz', source: PRACTICE },
  { name: 'dotted-quarter', text: 'x.. ..x ...', where: 'jazz waltz: two in a bar', source: PRACTICE },
  { name: 'lets-one-two', text: '..x ..x ...', where: 'jazz waltz', source: PRACTICE },
  { name: 'on-last', text: '.... .... .... x...', where: 'even sixteenths', source: PRACTICE },
  { name: 'every-beat', text: 'x... x... x... x...', where: 'even sixteenths', source: PRACTICE },
  { name: 'dotted-quarter', text: 'x... ..x. .... ....', where: 'even sixteenths', source: PRACTICE },
  { name: 'three-side', text: 'x..x ..x. .... ....', where: 'even sixteenths, half a bar', source: PRACTICE },
  {
    name: 'let-last',
    text: '.... .... .... ...x',
    where: 'even sixteenths: into the next bar',
    source: PRACTICE,
  },
  { name: 'back-beat', text: '.... X... .... X...', where: 'funk, rock', source: PRACTICE },
  { name: 'ghosts-after', text: '.... X..g .... X..g', where: 'funk', source: PRACTICE },
  { name: 'ghosts-before', text: '.g.. X... .g.. X...', where: 'funk', source: PRACTICE },
  { name: 'ghosts-between', text: '..g. X... ..g. X...', where: 'funk', source: PRACTICE },
];
