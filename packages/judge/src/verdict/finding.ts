/**
 * Something that was found in the playing, with its weight.
 *
 * Conventions: a strength of 1 is just worth a word at the student's level; twice what is allowed is 2. What is told
 * before any figure (another exercise, a limb that stayed out) weighs more than any lateness can.
 */
import type { About, VerdictName, What } from './verdict.ts';

/** One finding. */
export interface Finding extends About {
  /** How many times over what the level lets pass; no unit. */
  readonly strength: number;
}

/** What makes it another piece of music, before any figure. */
const OTHER: ReadonlySet<What> = new Set(['other-exercise', 'straight-feel', 'wrong-voice', 'shifted']);
/** What says that nothing can be said. */
const UNJUDGED: ReadonlySet<What> = new Set(['nobody-played', 'only-loudspeaker', 'too-little-heard']);

/** The order of what weighs the same, and of what is never weighed against figures. */
const RANK: Readonly<Record<What, number>> = {
  'nobody-played': 6,
  'too-little-heard': 6,
  shifted: 5,
  'other-exercise': 5,
  'straight-feel': 5,
  'wrong-voice': 5,
  missing: 3,
  extra: 2,
  rushing: 1,
  dragging: 1,
  slow: 1,
  fast: 1,
  early: 1,
  late: 1,
  uneven: 1,
  loud: 1,
  soft: 1,
  'only-loudspeaker': 0,
  offset: -1,
};

/** From this strength on, a fault is more than nearly right. */
export const NOT_YET = 2.5;

/** The weightiest first. */
export function inOrder(findings: readonly Finding[]): readonly Finding[] {
  const first = (what: What) => (RANK[what] >= 5 || RANK[what] <= 0 ? RANK[what] : 1);
  return findings.toSorted(
    (a, b) => first(b.what) - first(a.what) || b.strength - a.strength || RANK[b.what] - RANK[a.what],
  );
}

/** What the findings come to. An offset of the whole performance leaves it clean. */
export function verdictOf(findings: readonly Finding[]): VerdictName {
  const faults = findings.filter(({ what }) => what !== 'offset' && !UNJUDGED.has(what));
  if (findings.some(({ what }) => what === 'nobody-played' || what === 'too-little-heard'))
    return 'not judged';
  if (faults.some(({ what, strength }) => OTHER.has(what) || strength >= NOT_YET)) return 'not yet';
  if (faults.length > 0) return 'nearly';
  return findings.some(({ what }) => UNJUDGED.has(what)) ? 'not judged' : 'clean';
}
