import { practiceEnglish, practiceGerman } from '@shedbook/words';
import { describe, expect, it } from 'vitest';

/** Every text of a catalogue by its path; a function is asked for a sample. */
function textsOf(value: unknown, path = ''): readonly (readonly [string, string])[] {
  if (typeof value === 'string') return [[path, value]];
  if (typeof value === 'function')
    return [[path, String((value as (...args: unknown[]) => string)(2, 3, 4))]];
  return Object.entries(value as object).flatMap(([key, each]) => textsOf(each, `${path}.${key}`));
}

/** Words that are the same in both languages: trade words, names and signs. */
const SAME =
  /ride|snare|crash|flam|drag|buzz|splash|tempo|time|form|midi|musicxml|bpm|hi-hat|sidestick|rimshot|swing|\.midi|^[^a-zA-Z]*$|^[TCS]$|^Esc$|^\d+ kB$/i;

describe('words of the practice room', () => {
  it('[ST54] has the same words in German as in English', () => {
    expect(textsOf(practiceGerman).map(([path]) => path)).toEqual(
      textsOf(practiceEnglish).map(([path]) => path),
    );
  });

  it('[ST54] leaves nothing in English by mistake', () => {
    const english = new Map(textsOf(practiceEnglish));
    const left = textsOf(practiceGerman).filter(
      ([path, text]) => english.get(path) === text && !SAME.test(text),
    );
    expect(left).toEqual([]);
  });
});
