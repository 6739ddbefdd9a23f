export { type BookContent, type BookPages, layOutBook } from './book/book.ts';
export {
  type Handout,
  type HandoutLine,
  type HandoutOptions,
  type HandoutPart,
  layOutHandout,
} from './handout/handout.ts';
export { type OutlineEntry, type PdfInfo, POINTS_PER_MM, writePdf } from './pdf/write-pdf.ts';
export { type BarTile, type ExerciseBars, engraveBars } from './sheet/bar-tiles.ts';
export { isFeathered } from './sheet/groove-blocks.ts';
export { HOW_MM, howRows } from './sheet/how-signs.ts';
export { allMoved, type Block, type Item, inSize } from './sheet/item.ts';
export { PAPER_MM, type PageContent } from './sheet/page.ts';
export type { ExercisePlace, PagedPlace, SlotPlace } from './sheet/places.ts';
export type { PrintedCode, PrintedMedia, PrintedPicture } from './sheet/printed-media.ts';
export { RHYTHMS, type Rhythm } from './sheet/rhythm.ts';
export { type Alignment, setColumn, setLine, style } from './sheet/setting.ts';
export { layOutSheet, type Page, type Sheet, type SheetOptions } from './sheet/sheet.ts';
export type { Manner, SheetWords } from './sheet/sheet-words.ts';
export { type Window, writeWindow } from './sheet/write-svg.ts';
export type { Box } from './svg/geometry.ts';
export {
  createFonts,
  type Face,
  FONT_MODULES,
  type FontFiles,
  type Fonts,
  loadFonts,
  type OutlinedText,
  type SetGlyph,
  type TextRun,
  type Weight,
} from './text/fonts.ts';
export { createEngraver, type Engraver } from './tile/engraver.ts';
export { loadEngraver } from './tile/load-engraver.ts';
export type { Staff } from './tile/mei.ts';
export type { SlotText } from './tile/spacing.ts';
export type { Tile, TileHead, TileRequest, TimemapEntry } from './tile/tile.ts';
export type { EngravingToolkit } from './tile/toolkit.ts';
