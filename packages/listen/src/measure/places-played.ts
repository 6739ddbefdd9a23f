/**
 * What was played at each written place of the pattern, each time that it came round.
 *
 * Conventions: bars in which a voice has the same strokes are one bar that comes round, whatever their number in the
 * form. Offsets beside the voice's own median, so that a voice that is late everywhere is told once, by the voice.
 */
import { Milliseconds, type PlacePlayed, type Voice } from '@shedbook/core';
import type { ExpectedStroke, FormGrid } from '../align/form-grid.ts';
import type { Place } from '../decide/places.ts';

/** A place that was due: how late it came, or null when it was missed. */
export interface DuePlace {
  readonly place: Place;
  readonly offsetMs: number | null;
}

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

function placeOf(due: readonly DuePlace[], centreMs: number): Omit<PlacePlayed, 'everyBar'> {
  const { voice, stroke } = due[0]!.place.expected;
  const { beat, slot } = stroke.written;
  return {
    voice,
    bar: Math.min(...due.map((one) => one.place.expected.stroke.written.bar)),
    beat,
    slot,
    slots: stroke.slots,
    missed: due.filter((one) => one.offsetMs === null).length,
    offsetsMs: due.flatMap((one) => (one.offsetMs === null ? [] : [Milliseconds(one.offsetMs - centreMs)])),
  };
}

/** The places of a take that were due, each once. */
export function tellPlaces(
  grid: FormGrid,
  due: readonly DuePlace[],
  centresMs: ReadonlyMap<string, number>,
): readonly PlacePlayed[] {
  const { keys, shapes } = placesThatComeRound(grid);
  const groups = new Map<string, DuePlace[]>();
  for (const one of due) {
    const key = keys.get(one.place.expected) ?? '';
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return [...groups.values()].map((group): PlacePlayed => {
    const { voice } = group[0]!.place.expected;
    return { ...placeOf(group, centresMs.get(voice) ?? 0), everyBar: shapes.get(voice)?.size === 1 };
  });
}
