/** Patterns read out by their counts, in German. */
import type * as english from '../english/counts.ts';
import { translation } from '../message/translated.ts';

/** What is said besides the counts themselves. */
export const counts = translation<typeof english.counts>()({
  silent: 'still',
  bar: 'Takt {$n :integer}',
});
