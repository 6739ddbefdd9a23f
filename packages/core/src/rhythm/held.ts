/**
 * What is held: `~` stands where nothing is struck and what sounded before goes on.
 *
 * Conventions: bars, beats and slots count from 0. Which strokes of a voice can go on is told by core's `goesOn`; here it
 * is their letters alone, since a pattern that was read has no `~` after any other.
 */
import { type Cell, cell, isHeld, letterOf, type Mark } from './cell.ts';

/** Letters of what can go on: a buzz and a sweep. */
const GOING_ON: ReadonlySet<string | null> = new Set(['b', 'w']);

/** Whether what stands in a slot sounds on into a `~` after it. */
function isOpen(mark: Mark): boolean {
  return mark === '~' || GOING_ON.has(letterOf(mark));
}

/** What goes on into a bar from the ones before it, or null where the bar does not begin with `~` or nothing does. */
export function heldInto(bars: readonly (readonly Cell[])[], bar: number): Mark | null {
  if (bars[bar]?.[0]?.marks[0] !== '~') return null;
  const before = bars.slice(0, bar).flatMap((cells) => cells.flatMap(({ marks }) => marks));
  const mark = before.findLast((each) => each !== '~') ?? '.';
  return isOpen(mark) ? mark : null;
}

/** Whether a bar ends in what can go on into the next. */
export function isOpenAtEnd(bar: readonly Cell[] | undefined): boolean {
  return isOpen(bar?.at(-1)?.marks.at(-1) ?? '.');
}

/**
 * Bars in which nothing is held where nothing goes on: after a change such a `~` is silence.
 * @example released([[cell('x~'), cell('b~')]])[0]?.map(({ text }) => text) // ['x.', 'b~']
 */
export function released(bars: readonly (readonly Cell[])[]): readonly (readonly Cell[])[] {
  let before: Mark = '.';
  const release = (mark: Mark): Mark => {
    before = mark === '~' && !isOpen(before) ? '.' : mark;
    return before;
  };
  return bars.map((cells) =>
    cells.map((each) => {
      if (isHeld(each)) return cell(each.marks.map(release).join(''));
      before = each.marks.at(-1) ?? '.';
      return each;
    }),
  );
}
