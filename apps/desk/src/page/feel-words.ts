/** A feel in words. */
import { isFeelName } from '@shedbook/core';
import type { DeskWords } from '@shedbook/words';

/** Words for the text of a feel; a ratio stands for itself. */
export function feelWords(feel: string, words: DeskWords): string {
  return isFeelName(feel) ? words.heading.feels[feel] : feel;
}
