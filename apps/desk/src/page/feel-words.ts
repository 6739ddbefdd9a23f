/** A feel in words. */
import { feelSaid, formatFeel, isFeelName, type Lesson } from '@shedbook/core';
import type { DeskWords } from '@shedbook/words';

/** Words for the feel of a lesson or a section, where it is worth a word; a ratio stands for itself. */
export function feelWords(of: Lesson, words: DeskWords): string | null {
  const said = feelSaid(of);
  if (said === null) return null;
  const feel = formatFeel(said);
  return isFeelName(feel) ? words.heading.feels[feel] : feel;
}
