/**
 * What happens again and again at one written place of the pattern, in most of the times it comes round.
 *
 * Conventions: bars in which a voice has the same strokes are one bar that comes round, whatever their number in the
 * form. Offsets against the voice's own median, so that a voice that is late everywhere is said once, for the voice.
 * Source of the threshold: A. Friberg and J. Sundberg, JASA 98(5), 1995: 2.5 % of the interval, 6 ms at least.
 */
import type { PlaceFinding, Voice } from '@shedbook/core';
import { median } from '@shedbook/signal';
import type { ExpectedStroke, FormGrid } from '../align/form-grid.ts';
import type { Place } from '../decide/places.ts';

/** A place that was due: how late it came, or null when it was missed. */
export interface DuePlace {
  readonly place: Place;
  readonly offsetMs: number | null;
}

const FEWEST_LOOPS = 3;
const MOST_OF = 0.6;

/** The strokes of one voice in a bar, as a name for all bars that have the same. */
function shapeOf(strokes: readonly ExpectedStroke[], voice: Voice): string {
  const own = strokes.filter((one) => one.voice === voice);
  return own
    .map(({ stroke }) => `${stroke.written.beat}.${stroke.written.slot}/${stroke.slots}${stroke.mark}`)
    .join(' ');
}

/** For each written stroke, the place that comes round; for each voice, in how many shapes of bar it plays. */
function placesThatComeRound(grid: FormGrid) {
  const keys = new Map<ExpectedStroke, string>();
  const shapes = new Map<Voice, Set<string>>();
  for (const { strokes } of grid.bars) {
    for (const one of strokes) {
      const shape = shapeOf(strokes, one.voice);
      const { beat, slot } = one.stroke.written;
      keys.set(one, `${one.voice} ${beat}.${slot}/${one.stroke.slots} in ${shape}`);
      shapes.set(one.voice, (shapes.get(one.voice) ?? new Set()).add(shape));
    }
  }
  return { keys, shapes };
}

function findingOf(
  due: readonly DuePlace[],
  thresholdMs: number,
  centreMs: number,
): Omit<PlaceFinding, 'everyBar'> | null {
  const { voice, stroke } = due[0]!.place.expected;
  const { beat, slot } = stroke.written;
  const bar = Math.min(...due.map((one) => one.place.expected.stroke.written.bar));
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
  grid: FormGrid,
  due: readonly DuePlace[],
  centresMs: ReadonlyMap<string, number>,
  thresholdMs: number,
): readonly PlaceFinding[] {
  const { keys, shapes } = placesThatComeRound(grid);
  const groups = new Map<string, DuePlace[]>();
  for (const one of due) {
    const key = keys.get(one.place.expected) ?? '';
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  const weight = (finding: PlaceFinding) =>
    (finding.kind === 'missed' ? 60 : Math.abs(finding.offsetMs)) * (finding.times / finding.of);
  return [...groups.values()]
    .flatMap((group): PlaceFinding[] => {
      const { voice } = group[0]!.place.expected;
      const finding = findingOf(group, thresholdMs, centresMs.get(voice) ?? 0);
      return finding ? [{ ...finding, everyBar: shapes.get(voice)?.size === 1 }] : [];
    })
    .toSorted((a, b) => weight(b) - weight(a));
}
