/**
 * Grooves to start a lesson from: our own, each with what its comping voice may play and a first bar to go on from.
 *
 * Conventions: the text of a lesson without its title; tempi in quarter notes a minute, so that a dotted beat is two
 * thirds of them; levels in dB relative to the lead voice. Balance by common practice, from memory: where the ride leads, the
 * foot stays under it and the bass drum is sensed more than heard; where the hi-hat leads, back beat and bass drum carry.
 */
import type { StarterName } from './starter-names.data.ts';

const TEXTS: Readonly<Record<StarterName, string>> = {
  swing: `meter: 4/4
tempo: {start: 80, goal: 132, step: 8}
feel: triplet

groove:
  ride: x x.x x x.x
  hihat-foot: {pattern: . x . x, level: -8}
  bass: {pattern: x x x x, level: feathered, how: heel down}

vocabulary: [..., ..x, x.., x.x]

compose: {count: 24}
exercises:
  - ..x ... ..x ...
`,
  'jazz-waltz': `meter: 3/4
tempo: {start: 96, goal: 144, step: 8}
feel: triplet

groove:
  ride: x x.x x
  hihat-foot: {pattern: . x ., level: -8}
  bass: {pattern: x . ., level: -16}

vocabulary: [..., ..x, x.., x.x]

compose: {count: 16}
exercises:
  - ... ..x ...
`,
  shuffle: `meter: 4/4
tempo: {start: 84, goal: 124, step: 8}
feel: triplet

groove:
  hihat: x.x x.x x.x x.x
  snare: {pattern: . X . X, level: 0}
  bass: {pattern: x . x ., level: -3}
comping: bass

vocabulary: [..., x.., ..x, x.x]

compose: {count: 16}
exercises:
  - x.. ..x x.. ...
`,
  'rock-eighths': `meter: 4/4
tempo: {start: 72, goal: 112, step: 8}
feel: even

groove:
  hihat: Xx Xx Xx Xx
  snare: {pattern: . X . X, level: 2}
  bass: {pattern: x. .. x. .., level: 2}
comping: bass

vocabulary: [.., x., .x, xx]

compose: {count: 16}
exercises:
  - x. .. xx ..
`,
  'sixteenth-funk': `meter: 4/4
tempo: {start: 68, goal: 100, step: 8}
feel: even

groove:
  hihat: xx xx xx xx
  snare: {pattern: .... X..g .g.. X..., level: 0}
  bass: {pattern: x... .... ..x. ...., level: 0}
comping: bass

vocabulary: [...., x..., ..x., ...x, x.x., x..x]

compose: {count: 16}
exercises:
  - x... ...x ..x. ....
`,
  bossa: `meter: 4/4
tempo: {start: 100, goal: 140, step: 8}
feel: even

groove:
  ride: xx xx xx xx
  hihat-foot: {pattern: . x . x, level: -8}
  bass: {pattern: x. .x x. .x, level: -8}
comping: sidestick
balance: {sidestick: -2}

vocabulary: [.., x., .x, xx]

compose: {count: 12, bars: 2}
exercises:
  - x. .x .. x. | .. x. .x ..
`,
  samba: `meter: 2/4
tempo: {start: 72, goal: 108, step: 6}
feel: even

groove:
  ride: X.xx X.xx
  hihat-foot: {pattern: ..x. ..x., level: -6}
  bass: {pattern: x..x x..x, level: -8}
comping: sidestick
balance: {sidestick: -2}

vocabulary: [...., x..., ..x., ...x, x..x, .x.x]

compose: {count: 16, bars: 2}
exercises:
  - x..x ..x. | .x.x ..x.
`,
  'six-eight': `meter: 6/8
tempo: {start: 84, goal: 132, step: 12}
feel: even

groove:
  hihat: Xxx Xxx
  snare: {pattern: . X, level: 0}
  bass: {pattern: x ., level: 0}
comping: bass

vocabulary: [..., x.., ..x, x.x]

compose: {count: 12}
exercises:
  - x.. ..x
`,
  'twelve-eight': `meter: 12/8
tempo: {start: 84, goal: 120, step: 6}
feel: even

groove:
  hihat: Xxx Xxx Xxx Xxx
  snare: {pattern: . X . X, level: 0}
  bass: {pattern: x . x ., level: -2}
comping: bass

vocabulary: [..., x.., ..x, x.x]

compose: {count: 16}
exercises:
  - x.. ..x x.. ...
`,
  brushes: `meter: 4/4
tempo: {start: 56, goal: 84, step: 4}
feel: triplet
playedWith: brushes

groove:
  hihat-foot: . x . x
  bass: {pattern: x x x x, level: -16, how: heel down}
lead: hihat-foot
balance: {snare: -2}

vocabulary: [w.., w.x, ..x, x.x]

compose: {count: 12}
exercises:
  - w.. w.x w.. w.x
`,
};

/** The text of a lesson that starts from a groove, under a title. */
export function starterText(name: StarterName, title: string): string {
  return `title: ${JSON.stringify(title)}\n${TEXTS[name]}`;
}
