/** Which cells a lesson's vocabulary is chosen from. */
import {
  type Cell,
  cell,
  isEvenMeter,
  type Lesson,
  type Meter,
  type Subdivision,
  unitsIn,
} from '@shedbook/core';

/** Slots that are offered whole: of sixths there are too many cells to look through. */
const WHOLE_AT_MOST = 4;

/** Units of beats that are not of one length. */
const UNEVEN: readonly Subdivision[] = [1, 2, 3, 4];

/** The first beat of so many units of the meter. */
function beatOf(meter: Meter, units: number): Meter['beats'][number] | undefined {
  return meter.beats.find((each) => unitsIn(meter, each) === units);
}

/** How the beats of a lesson can be divided, by its meter and feel. */
export function divisionsOf({ meter, feel }: Lesson): readonly Subdivision[] {
  if (meter.compound) return [3];
  if (!isEvenMeter(meter)) return UNEVEN.filter((slots) => beatOf(meter, slots));
  if (meter.lower > 4) return [1, 2];
  if (feel.kind === 'even' || (feel.kind === 'ratio' && feel.of === 'sixteenths')) return [2, 4];
  return [3, 2];
}

/** Every cell of plain strokes in so many slots, the emptiest first. */
function everyCell(slots: number): readonly string[] {
  const texts = Array.from({ length: 2 ** slots }, (_, bits) =>
    Array.from({ length: slots }, (_slot, slot) => ((bits >> slot) & 1 ? 'x' : '.')).join(''),
  );
  const strokes = (text: string) => text.replaceAll('.', '').length;
  return texts.sort((a, b) => strokes(a) - strokes(b) || (a < b ? 1 : -1));
}

/** Cells on offer by their slots: all of the lesson's feel and meter, and its own. */
export function cellsOnOffer(lesson: Lesson): ReadonlyMap<number, readonly Cell[]> {
  const own = lesson.vocabulary.map((each) => each.cell);
  const sizes = [...new Set<number>([...divisionsOf(lesson), ...own.map((each) => each.marks.length)])];
  return new Map(
    sizes.map((slots) => {
      const plain = slots <= WHOLE_AT_MOST ? everyCell(slots) : [];
      const mine = own.filter((each) => each.marks.length === slots).map((each) => each.text);
      return [slots, [...new Set([...plain, ...mine])].map(cell)];
    }),
  );
}

/** One beat of the lesson's meter, for drawing a cell of so many slots alone. */
export function beatFor({ meter }: Lesson, slots: number): Meter {
  const beat = beatOf(meter, slots) ?? meter.beats[0];
  return beat ? { ...meter, text: '', beats: [beat], bar: beat } : meter;
}
