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
const OTHER: ReadonlySet<What> = new Set([
  'other-exercise',
  'straight-feel',
  'swung-feel',
  'wrong-voice',
  'shifted',
]);
/** What says that nothing can be said. */
const UNJUDGED: ReadonlySet<What> = new Set(['nobody-played', 'only-loudspeaker', 'too-little-heard']);

/** The order of what weighs the same, and of what is never weighed against figures. */
const RANK: Readonly<Record<What, number>> = {
  'nobody-played': 6,
  'too-little-heard': 6,
  shifted: 5,
  'other-exercise': 5,
  'straight-feel': 5,
  'swung-feel': 5,
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

/** Whether it says that nothing can be said, of one voice or of the whole. */
function isUnjudged({ what }: Finding): boolean {
  return UNJUDGED.has(what);
}

/** Whether it leaves open what the playing came to: a limb beside the exercise of which nothing was heard does not. */
function unsettles(finding: Finding): boolean {
  return isUnjudged(finding) && (finding.what !== 'too-little-heard' || finding.strength >= 1);
}

/** Where it stands before any weight: what was played first, then figures, then what could not be told. */
function rankOf(finding: Finding): number {
  const rank = RANK[finding.what];
  // bars that were not gone through, before what was played instead
  if (finding.what === 'missing' && finding.voice === undefined) return RANK['other-exercise'] + 0.5;
  if (isUnjudged(finding) && finding.voice !== undefined) return 0;
  return rank >= RANK['other-exercise'] || rank <= 0 ? rank : 1;
}

/** The weightiest first. */
export function inOrder(findings: readonly Finding[]): readonly Finding[] {
  return findings.toSorted(
    (a, b) => rankOf(b) - rankOf(a) || b.strength - a.strength || RANK[b.what] - RANK[a.what],
  );
}

/** What the findings come to. An offset of the whole performance leaves it clean. */
export function verdictOf(findings: readonly Finding[]): VerdictName {
  if (findings.some((finding) => isUnjudged(finding) && finding.voice === undefined)) return 'not judged';
  const faults = findings.filter((finding) => finding.what !== 'offset' && !isUnjudged(finding));
  if (faults.some(({ what, strength }) => OTHER.has(what) || strength >= NOT_YET)) return 'not yet';
  if (faults.length > 0) return 'nearly';
  return findings.some(unsettles) ? 'not judged' : 'clean';
}
