/**
 * Changing a pattern slot by slot, with the hands that are written for it.
 *
 * Conventions: bars, beats and slots count from 0.
 */
import {
  type Cell,
  cell,
  formatFraction,
  fraction,
  type Hand,
  handSlots,
  isStruck,
  type Mark,
  nextHand,
  type Pattern,
  released,
  type Subdivision,
  withoutSlots,
} from '@shedbook/core';

/** A slot of a pattern. */
export interface SlotPlace {
  readonly bar: number;
  readonly beat: number;
  readonly slot: number;
}

/** A pattern and a hand for each of its strokes, or no hands. */
export interface Line {
  readonly pattern: Pattern;
  readonly sticking: readonly Hand[] | null;
}

function cellAt(pattern: Pattern, place: Omit<SlotPlace, 'slot'>): Cell {
  const found = pattern.bars[place.bar]?.[place.beat];
  if (!found) throw new RangeError(`Internal error: no beat ${place.beat + 1} in bar ${place.bar + 1}`);
  return found;
}

/** The mark in a slot. */
export function markAt(pattern: Pattern, place: SlotPlace): Mark {
  return cellAt(pattern, place).marks[place.slot] ?? '.';
}

function replaceCell(pattern: Pattern, place: Omit<SlotPlace, 'slot'>, by: Cell): Pattern {
  const bars = pattern.bars.map((bar, index) =>
    index === place.bar ? bar.map((each, beat) => (beat === place.beat ? by : each)) : bar,
  );
  return { bars: released(bars) };
}

/** How many strokes lie before a slot. */
export function strokesBefore(pattern: Pattern, place: SlotPlace): number {
  let count = 0;
  pattern.bars.forEach((bar, barIndex) => {
    bar.forEach((each, beat) => {
      each.marks.forEach((mark, slot) => {
        const earlier =
          barIndex < place.bar ||
          (barIndex === place.bar && (beat < place.beat || (beat === place.beat && slot < place.slot)));
        if (earlier && isStruck(mark)) count += 1;
      });
    });
  });
  return count;
}

/** The line with a mark in a slot; hands of other strokes stay with their strokes. */
export function setMark(line: Line, place: SlotPlace, mark: Mark): Line {
  const before = cellAt(line.pattern, place);
  const was = markAt(line.pattern, place);
  if (was === mark) return line;
  const text = before.marks.map((each, slot) => (slot === place.slot ? mark : each)).join('');
  const pattern = replaceCell(line.pattern, place, cell(text));
  if (!line.sticking || isStruck(was) === isStruck(mark)) return { pattern, sticking: line.sticking };
  const index = strokesBefore(line.pattern, place);
  const sticking = isStruck(mark)
    ? line.sticking.toSpliced(index, 0, nextHand(line.sticking[index - 1]))
    : line.sticking.toSpliced(index, 1);
  return { pattern, sticking: sticking.length > 0 ? sticking : null };
}

/** The line with what goes on before a slot held in it, or null where nothing does. */
export function held(line: Line, place: SlotPlace): Line | null {
  const next = setMark(line, place, '~');
  return markAt(next.pattern, place) === '~' ? next : null;
}

/** The line with a hand written for the stroke in a slot; hands of all others are filled in by turns. */
export function setHand(line: Line, place: SlotPlace, hand: Hand): Line {
  if (!isStruck(markAt(line.pattern, place))) return line;
  const index = strokesBefore(line.pattern, place);
  const last = line.pattern.bars.at(-1);
  const end = {
    bar: line.pattern.bars.length - 1,
    beat: (last?.length ?? 1) - 1,
    slot: Number.POSITIVE_INFINITY,
  };
  const total = strokesBefore(line.pattern, end);
  const other = hand === 'R' ? 'L' : 'R';
  const turns = Array.from({ length: total }, (_, i) => ((i - index) % 2 === 0 ? hand : other));
  const hands: readonly Hand[] = line.sticking ?? turns;
  return { pattern: line.pattern, sticking: hands.with(index, hand) };
}

/** Where a slot lies, as a text to compare: its beat, and its place in it whatever the division. */
function momentOf({ bar, beat, slot }: SlotPlace, slots: number): string {
  return `${bar} ${beat} ${formatFraction(fraction(slot, slots))}`;
}

/** The line with another pattern: strokes that are where one was keep its hand, others take turns. */
export function withPattern({ pattern: before, sticking }: Line, pattern: Pattern): Line {
  if (!sticking) return { pattern, sticking };
  const known = new Map<string, Hand>();
  handSlots(before, sticking).forEach((beats, bar) => {
    beats.forEach((slots, beat) => {
      slots.forEach(({ hand }, slot) => {
        if (hand) known.set(momentOf({ bar, beat, slot }, slots.length), hand);
      });
    });
  });
  const bars = handSlots(pattern, null).map((beats, bar) =>
    beats.map((slots, beat) =>
      slots.map(({ mark }, slot) => {
        const hand = known.get(momentOf({ bar, beat, slot }, slots.length)) ?? null;
        return { mark, hand: isStruck(mark) ? hand : null };
      }),
    ),
  );
  return { pattern, sticking: withoutSlots([{ voice: 'snare', bars }]).sticking };
}

/** The line without hands. */
export function clearHands(line: Line): Line {
  return { pattern: line.pattern, sticking: null };
}

/**
 * The line with a beat divided into another number of slots. Strokes stay where they sound when the new slots
 * have that place; others move to the nearest free slot before it, or are dropped where none is left.
 */
export function divideBeat(line: Line, place: Omit<SlotPlace, 'slot'>, slots: Subdivision): Line {
  const before = cellAt(line.pattern, place);
  const marks: Mark[] = Array.from({ length: slots }, () => '.');
  const dropped: number[] = [];
  before.marks.forEach((mark, slot) => {
    if (!isStruck(mark)) return;
    const target = Math.floor((slot * slots) / before.marks.length);
    if (isStruck(marks[target] ?? '.')) dropped.push(slot);
    else marks[target] = mark;
  });
  const next = line.pattern.bars.slice(place.bar).flat()[place.beat + 1]?.marks[0];
  // A slot is held that lies in one that was, or before it: what goes on there goes on in it too, or nothing does.
  const filled = marks.map((mark, slot): Mark => {
    const at = (slot * before.marks.length) / slots;
    const was = [at, Math.ceil(at)].map((each) => before.marks[Math.floor(each)] ?? next);
    return mark === '.' && was.includes('~') ? '~' : mark;
  });
  const sticking = dropped.reduceRight<readonly Hand[] | null>(
    (hands, slot) => hands?.toSpliced(strokesBefore(line.pattern, { ...place, slot }), 1) ?? null,
    line.sticking,
  );
  return { pattern: replaceCell(line.pattern, place, cell(filled.join(''))), sticking };
}

/** A mark with its accent put on or taken off; a rest becomes an accent, a ghost note too. */
export function toggleAccent(mark: Mark): Mark {
  if (mark === '.' || mark === 'g') return 'X';
  return (mark === mark.toUpperCase() ? mark.toLowerCase() : mark.toUpperCase()) as Mark;
}

/** A slot tapped: a rest becomes a stroke, anything else a rest. */
export function toggleStroke(mark: Mark): Mark {
  return isStruck(mark) ? '.' : 'x';
}
