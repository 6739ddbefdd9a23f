import { hearingEnglish, hearingGerman } from '@shedbook/words';
import { describe, expect, it } from 'vitest';

const REASON = { kind: 'late', amount: 34, who: 'Left hand', where: 'x', lead: 'ride' };

/** Every text of a catalogue by its path; a function is asked for a sample. */
function textsOf(value: unknown, path = ''): readonly (readonly [string, string])[] {
  if (typeof value === 'string') return [[path, value]];
  if (typeof value === 'function') {
    const say = value as (...args: unknown[]) => string;
    return [[path, path === '.reason' ? say(REASON) : String(say(2, 3, 4, 5))]];
  }
  return Object.entries(value as object).flatMap(([key, each]) => textsOf(each, `${path}.${key}`));
}

/** Words that are the same in both languages: names of voices, signs, and what the coach says itself. */
const SAME = /^\.(voices|who|plan\.(reason|note)|place)|bpm|dBA| min$|^[^a-zA-Z]*$/;

describe('words of hearing', () => {
  it('[ST92] has the same words in German as in English', () => {
    expect(textsOf(hearingGerman).map(([path]) => path)).toEqual(
      textsOf(hearingEnglish).map(([path]) => path),
    );
  });

  it('[ST92] leaves nothing in English by mistake', () => {
    const english = new Map(textsOf(hearingEnglish));
    const left = textsOf(hearingGerman).filter(
      ([path, text]) => english.get(path) === text && !SAME.test(path) && !SAME.test(text),
    );
    expect(left).toEqual([]);
  });

  it('[ST92] says a reason with limb, place and amount in both', () => {
    const where = { en: hearingEnglish.place('let', 2, null), de: hearingGerman.place('let', 2, null) };
    const fact = { kind: 'late', amount: 33.6 } as const;
    expect(hearingEnglish.reason({ ...fact, who: 'Left hand (snare)', where: where.en, lead: 'ride' })).toBe(
      'Left hand (snare): late by about 34 ms on the let of 2.',
    );
    expect(hearingGerman.reason({ ...fact, who: 'Linke Hand (Snare)', where: where.de, lead: 'Ride' })).toBe(
      'Linke Hand (Snare): etwa 34 ms zu spät auf dem „let“ der 2.',
    );
  });
});
