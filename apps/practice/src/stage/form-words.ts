/** What a form is called. */
import { nameIn, type PracticeWords } from '@shedbook/words';
import { BUILD_UP, TRADE, TRADE_BARS } from '../session/choice.ts';

/** The name of a form in words; a teacher's own name stands for itself. */
export function formWords(name: string, words: PracticeWords): string {
  if (name === BUILD_UP) return words.setting.buildUp;
  if (name === TRADE) return words.setting.trade({ bars: TRADE_BARS });
  return nameIn(words.setting.forms, name);
}
