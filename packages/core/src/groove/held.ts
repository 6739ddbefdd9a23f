/**
 * How far a stroke of a form is held: over beats and bar lines, as long as `~` stands there.
 *
 * Conventions: bars and beats count from 0. A voice that the form, a fill or an ending takes away ends there.
 */
import type { SlotPlace } from '../feel/timeline.ts';
import type { PlacedCell } from './place.ts';

/** The cells of every bar of a form. */
export type FormCells = readonly (readonly PlacedCell[])[];

/** The beat after another, over the bar line where the bar is over. */
function beatAfter(form: FormCells, bar: number, { voice, beat }: PlacedCell) {
  const find = (inBar: number, on: number) =>
    form[inBar]?.find((each) => each.voice === voice && each.beat === on);
  const next = find(bar, beat + 1);
  return next ? { bar, next } : { bar: bar + 1, next: find(bar + 1, 0) };
}

/** Where what is struck in a slot ends, or null where it is not held. */
export function endOfHeld(form: FormCells, bar: number, from: PlacedCell, slot: number): SlotPlace | null {
  let [at, inBar, end] = [from, bar, slot + 1];
  for (;;) {
    const { marks } = at.cell;
    while (marks[end] === '~') end += 1;
    const after = end < marks.length ? null : beatAfter(form, inBar, at);
    if (after?.next?.cell.marks[0] !== '~') {
      const isHeld = inBar > bar || at !== from || end > slot + 1;
      return isHeld ? { bar: inBar, beat: at.beat, slot: end, slots: marks.length } : null;
    }
    [at, inBar, end] = [after.next, after.bar, 0];
  }
}
