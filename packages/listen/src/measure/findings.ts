/**
 * What happens again and again at one written place of the pattern, in most of its loops.
 *
 * Conventions: places are those of the pattern's bar, beat and slot; offsets against the voice's own median, so
 * that a voice that is late everywhere is said once, for the voice.
 * Source of the threshold: A. Friberg and J. Sundberg, JASA 98(5), 1995: 2.5 % of the interval, 6 ms at least.
 */
import type { Place } from '../decide/places.ts';
import type { PlaceFinding } from '../report/take-report.ts';
import { median } from './statistics.ts';

/** A place that was due: how late it came, or null when it was missed. */
export interface DuePlace {
  readonly place: Place;
  readonly offsetMs: number | null;
}

const FEWEST_LOOPS = 3;
const MOST_OF = 0.6;

function keyOf({ expected: { voice, stroke } }: Place): string {
  const { bar, beat, slot } = stroke.written;
  return `${voice} ${bar} ${beat} ${slot} ${stroke.slots}`;
}

function findingOf(due: readonly DuePlace[], thresholdMs: number, centreMs: number): PlaceFinding | null {
  const { voice, stroke } = due[0]!.place.expected;
  const { bar, beat, slot } = stroke.written;
  const at = { voice, bar, beat, slot, slots: stroke.slots };
  const missed = due.filter((one) => one.offsetMs === null).length;
  if (due.length >= FEWEST_LOOPS && missed / due.length >= MOST_OF) {
    return { ...at, kind: 'missed', offsetMs: 0, times: missed, of: due.length };
  }
  const offsets = due.flatMap((one) => (one.offsetMs === null ? [] : [one.offsetMs - centreMs]));
  const middle = median(offsets);
  const same = offsets.filter((offset) => offset * Math.sign(middle) > thresholdMs).length;
  if (offsets.length < FEWEST_LOOPS || same / offsets.length < MOST_OF) return null;
  return { ...at, kind: middle < 0 ? 'early' : 'late', offsetMs: middle, times: same, of: offsets.length };
}

/** The findings of a take, the most telling first. */
export function findPlaces(
  due: readonly DuePlace[],
  centresMs: ReadonlyMap<string, number>,
  thresholdMs: number,
): readonly PlaceFinding[] {
  const groups = new Map<string, DuePlace[]>();
  for (const one of due) {
    const key = keyOf(one.place);
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  const weight = (finding: PlaceFinding) =>
    (finding.kind === 'missed' ? 60 : Math.abs(finding.offsetMs)) * (finding.times / finding.of);
  return [...groups.values()]
    .map((group) => findingOf(group, thresholdMs, centresMs.get(group[0]!.place.expected.voice) ?? 0))
    .filter((finding) => finding !== null)
    .toSorted((a, b) => weight(b) - weight(a));
}
