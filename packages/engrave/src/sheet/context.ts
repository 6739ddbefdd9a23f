/** What every part of a sheet is laid out with. */
import type { Form, Lesson, SheetSettings } from '@shedbook/core';
import type { Fonts } from '../text/fonts.ts';
import type { Engraver } from '../tile/engraver.ts';
import type { Item } from './item.ts';
import type { PlacedLine } from './places.ts';
import type { PrintedMedia } from './printed-media.ts';
import type { SheetWords } from './sheet-words.ts';

/** A section of a lesson, what it is printed with, and the room on a page. */
export interface SheetContext {
  readonly lesson: Lesson;
  /** Before the ids of what every section has, so that no two on a page are the same. */
  readonly prefix: string;
  /** Numbers of all exercises on the sheet: all have room for the widest. */
  readonly numbers: readonly number[];
  readonly engraver: Engraver;
  readonly fonts: Fonts;
  readonly words: SheetWords;
  readonly settings: SheetSettings;
  /** What is printed for files of the teacher's own. */
  readonly media: PrintedMedia;
  /** Forms to explain. */
  readonly forms: readonly Form[];
  /** Distance between staff lines in exercises. */
  readonly staffSpaceMm: number;
  /** Whether an exercise whose name heads those after it begins a row. */
  readonly blocksApart: boolean;
  /** Between the margins. */
  readonly contentWidthMm: number;
  readonly contentHeightMm: number;
}

/** A block of the page's flow, with the space above it. */
export interface FlowBlock {
  readonly gapMm: number;
  readonly heightMm: number;
  readonly items: readonly Item[];
  /** Whether its exercises go on under the heading of a row before it. */
  readonly goesOn?: boolean;
  /** Whether it says more of the block before it, so that the two should stand on one page. */
  readonly belongs?: boolean;
  /** Whether it stands on the page of the block after it. */
  readonly keepsNext?: boolean;
  readonly places?: readonly PlacedLine[];
  /** What a table of contents calls it; nothing where it is not in one. */
  readonly mark?: string;
}
