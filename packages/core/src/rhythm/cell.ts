/**
 * Cells: which slots of one beat are struck, and how.
 *
 * Conventions: a cell is written with one character a slot, so its length is the subdivision: 1 to 8 slots a beat.
 * Slots count from 0 inside the program and from 1 for people.
 * Source: common practice of text drum tablature for the marks (x, X, g, f, d, b, o); `s`, `r`, `w` and `~` are ours.
 */
import { reduceGrid } from './grid.ts';

/** How many slots a beat may have. */
export const SUBDIVISIONS = [1, 2, 3, 4, 5, 6, 7, 8] as const;
/** Number of slots in a beat. */
export type Subdivision = (typeof SUBDIVISIONS)[number];

/** How many slots a beat is taken to have where nobody wrote it down: fives, sevens and eights explain any error. */
export const PLAYED_SUBDIVISIONS = [1, 2, 3, 4, 6] as const satisfies readonly Subdivision[];

/**
 * What happens in a slot. Upper case is the same with an accent.
 * `.` nothing · `~` not struck: what sounded before goes on · `x` stroke · `g` ghost note · `f` flam · `d` drag · `b` buzz (on the ride: bell)
 * · `o` open hi-hat (by the foot: splash) · `s` side stick · `r` rim shot · `w` sweep of a brush
 */
export const MARKS = [
  '.',
  '~',
  'x',
  'X',
  'g',
  'f',
  'F',
  'd',
  'D',
  'b',
  'B',
  'o',
  'O',
  's',
  'S',
  'r',
  'R',
  'w',
  'W',
] as const;
/** What is played in a slot. */
export type Mark = (typeof MARKS)[number];
/** A mark that strikes, whether accented or not: its small letter. */
export type Letter = Exclude<Lowercase<Mark>, '.' | '~'>;

/** Which slots of a beat are struck, and how. */
export interface Cell {
  /** The canonical text, e.g. `x.x`; two cells are the same when their texts are. */
  readonly text: string;
  readonly marks: readonly Mark[];
}

const markSet: ReadonlySet<string> = new Set(MARKS);

/** The marks of a cell that stands by itself, as in a vocabulary. */
export const LONE_MARKS: ReadonlySet<string> = new Set(MARKS.filter((mark) => mark !== '~'));

/** Whether a character is a mark. */
export function isMark(character: string): character is Mark {
  return markSet.has(character);
}

/** Whether a number of slots is one that a beat may have. */
export function isSubdivision(slots: number): slots is Subdivision {
  return (SUBDIVISIONS as readonly number[]).includes(slots);
}

/** What is wrong with a cell text: the offset of the first bad character (or 0) and what it is. */
export interface CellFault {
  readonly kind: 'mark' | 'subdivision';
  /** Index of the first bad character, or 0. */
  readonly offset: number;
  readonly found: string;
}

/** The first fault of the text of a cell in a pattern, or null when it is one. */
export function findCellFault(text: string, marks: ReadonlySet<string> = markSet): CellFault | null {
  for (let offset = 0; offset < text.length; offset += 1) {
    const found = text.charAt(offset);
    if (!marks.has(found)) return { kind: 'mark', offset, found };
  }
  if (!isSubdivision(text.length)) return { kind: 'subdivision', offset: 0, found: text };
  return null;
}

/** The first fault of a cell that stands by itself: nothing comes before it that could go on. */
export function findLoneCellFault(text: string): CellFault | null {
  return findCellFault(text, LONE_MARKS);
}

/**
 * The cell written as `text`.
 * @example cell('x.x').marks // ['x', '.', 'x']
 * @throws RangeError when the text is not a cell: use {@link findCellFault} for a person's input.
 */
export function cell(text: string): Cell {
  const fault = findCellFault(text);
  if (fault) throw new RangeError(`Internal error: "${text}" is not a cell (${fault.kind} "${fault.found}")`);
  return { text, marks: [...text] as Mark[] };
}

/** Whether a mark is struck at all. */
export function isStruck(mark: Mark): boolean {
  return mark !== '.' && mark !== '~';
}

/** The small letter of a mark, or null for a slot in which nothing is struck. */
export function letterOf(mark: Mark): Letter | null {
  return isStruck(mark) ? (mark.toLowerCase() as Letter) : null;
}

/** Whether a mark carries an accent (upper case). */
export function isAccent(mark: Mark): boolean {
  return isStruck(mark) && mark === mark.toUpperCase();
}

/** The struck slots, from 0. */
export function struckSlots(of: Cell): readonly number[] {
  const struck: number[] = [];
  // Asked for at every step of composing, reading and printing: flatMap would make a list for each slot.
  for (let slot = 0; slot < of.marks.length; slot += 1)
    if (isStruck(of.marks[slot] as Mark)) struck.push(slot);
  return struck;
}

/** Whether something is held in a cell. */
export function isHeld({ text }: Cell): boolean {
  return text.includes('~');
}

/** The slots, from 0, at which something begins, goes on from the beat before, or has been held and ends. */
export function turningSlots(of: Cell): readonly number[] {
  if (!isHeld(of)) return struckSlots(of);
  return of.marks.flatMap((mark, slot) => {
    const turns = mark === '~' ? slot === 0 : mark !== '.' || of.marks[slot - 1] === '~';
    return turns ? [slot] : [];
  });
}

/** Whether nothing is struck. */
export function isRest(of: Cell): boolean {
  return !of.marks.some(isStruck);
}

/** What rhythm a cell is: `x..` and `x` are the same, with an accent or without. */
export function rhythmKey(of: Cell): string {
  const own = turningSlots(of);
  const { slots, struck } = reduceGrid(of.marks.length, own);
  const sign = (mark: Mark) => letterOf(mark) ?? mark;
  return `${slots}:${struck.map((slot, index) => `${slot}${sign(of.marks[own[index] ?? 0] ?? '.')}`).join(',')}`;
}

/** A silent cell as finely divided as another; of one slot where there is none. */
export function silentLike(of: Pick<Cell, 'marks'> | undefined): Cell {
  return cell('.'.repeat(of?.marks.length ?? 1));
}
