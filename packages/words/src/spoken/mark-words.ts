/** Words for marks, as they sound on a voice. */
import { isAccent, type Mark, strikeOf, type TurnedVoice, type Voice } from '@shedbook/core';
import type { DeskWords } from '../screens/desk.ts';

/** What a mark is called that makes another voice of the one it stands on. */
const TURNED = {
  sidestick: 'sidestick',
  rimshot: 'rimshot',
  'hihat-open': 'open',
} as const satisfies Readonly<Record<TurnedVoice, keyof DeskWords['marks']>>;

function plainMark(words: DeskWords['marks'], voice: Voice, mark: Mark): string {
  const strike = strikeOf(voice, mark);
  if (!strike) return mark === '~' ? words.held : words.rest;
  if (strike.ghost) return words.ghost;
  if (strike.voice !== voice) return words[TURNED[strike.voice as TurnedVoice]];
  return strike.articulation === 'normal' ? words.stroke : words[strike.articulation];
}

/** What a mark is called on a voice. */
export function markWords(words: DeskWords['marks'], voice: Voice, mark: Mark): string {
  const plain = plainMark(words, voice, mark);
  if (!isAccent(mark)) return plain;
  return plain === words.stroke ? words.accent : words.accented({ mark: plain });
}

/** What is said of a mark when a pattern is read out: nothing for a plain stroke. */
export function spokenMark(words: DeskWords['marks'], voice: Voice, mark: Mark): string {
  const said = markWords(words, voice, mark);
  return said === words.stroke ? '' : said;
}
