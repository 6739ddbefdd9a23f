/** A feel in words. */
import type { DeskWords } from '@shedbook/words';

/** Words for the text of a feel; a ratio stands for itself. */
export function feelWords(feel: string, words: DeskWords): string {
  if (feel === 'even') return words.heading.feels.even;
  if (feel === 'triplet') return words.heading.feels.triplet;
  if (feel === 'by tempo') return words.heading.feels.byTempo;
  return feel;
}
