/** The tiles of a pack: every bar as an SVG file, and where each slot stands on it. */
import type { Lesson } from '@shedbook/core';
import { type BarTile, type Engraver, engraveBars, type Fonts } from '@shedbook/engrave';
import { type LanguageTag, SHEET_WORDS } from '@shedbook/words';
import { fileNumber, type PackFile, textFile } from '../files/file.ts';
import type { PackBar, PackExercise } from './pack.ts';

/** Everything that is shown of the notation. */
export interface PackTiles {
  readonly files: readonly PackFile[];
  readonly exercises: readonly PackExercise[];
  readonly groove: readonly PackBar[];
}

function rounded(mm: number): number {
  return Math.round(mm * 100) / 100;
}

function barOf({ bar, tile, slots, ending }: BarTile, path: string): PackBar {
  return {
    ...(ending ? { ending } : {}),
    bar,
    tile: path,
    widthMm: rounded(tile.widthMm),
    heightMm: rounded(tile.heightMm),
    staffTopMm: rounded(tile.staffTopMm),
    staffBottomMm: rounded(tile.staffBottomMm),
    description: tile.description,
    slots: slots.map(({ beat, slot, slots: of, voice, xMm, yMm, id }) => ({
      beat,
      slot,
      slots: of,
      voice,
      xMm: rounded(xMm),
      yMm: rounded(yMm),
      struck: id !== null,
    })),
  };
}

/** Engraves a lesson bar by bar. */
export function makeTiles(
  lesson: Lesson,
  {
    language,
    ...tools
  }: { readonly engraver: Engraver; readonly fonts: Fonts; readonly language: LanguageTag },
): PackTiles {
  const files: PackFile[] = [];
  const keep = (bars: readonly BarTile[], name: string) =>
    bars.map((each) => {
      const path = `tiles/${name}-${each.bar}.svg`;
      files.push(textFile(path, each.tile.svg));
      return barOf(each, path);
    });
  const all = engraveBars(lesson, { ...tools, words: SHEET_WORDS[language] });
  const exercises = all.flatMap(({ exercise, own, full }) => {
    if (exercise === null) return [];
    const name = fileNumber(exercise, lesson.exercises.length);
    return [{ number: exercise, own: keep(own, name), full: keep(full, `${name}-full`) }];
  });
  const groove = all.find((each) => each.exercise === null)?.full ?? [];
  return { exercises, groove: keep(groove, 'groove'), files };
}
