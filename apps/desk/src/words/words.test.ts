import { english, german, LANGUAGES, loadCatalogue, pickLanguage } from '@shedbook/words';
import { describe, expect, it } from 'vitest';
import { balanceWord } from '../groove/balance-words.ts';
import { pathOf, readRoute, VIEWS } from '../shared/route.ts';

/** Every text of a catalogue by its path; a function is asked for a sample. */
function textsOf(value: unknown, path = ''): readonly (readonly [string, string])[] {
  if (typeof value === 'string') return [[path, value]];
  if (typeof value === 'function') return [[path, String((value as (...args: unknown[]) => string)(2, 3))]];
  return Object.entries(value as object).flatMap(([key, each]) => textsOf(each, `${path}.${key}`));
}

/** Words that are the same in both languages: trade words, names and signs. */
const SAME =
  /ride|Ride|snare|Snare|crash|Crash|flam|drag|buzz|splash|Splash|Text|Name|Tempo|Feel|Groove|Form|Pattern|Balance|MusicXML|bpm|dB|Hi-Hat|Sidestick|Rimshot|Time|A4|Page|loop|^[^a-zA-Z]*$|^[XAGFDBSIORLPCV←→↑↓ .\d]+$|Alt|2 ·/i;

describe('words', () => {
  it('[ST28] has the same words in German as in English', () => {
    expect(textsOf(german).map(([path]) => path)).toEqual(textsOf(english).map(([path]) => path));
  });

  it('[ST28] leaves nothing in English by mistake', () => {
    const left = textsOf(german).filter(([path, text], index) => {
      const there = textsOf(english)[index]?.[1];
      return there === text && !SAME.test(text) && path !== '.language';
    });
    expect(left).toEqual([]);
  });

  it('[ST28] speaks the first language of the reader that there is a catalogue for', async () => {
    // standard: BCP 47: de-AT is German as in Austria
    expect(pickLanguage(['', 'fr', 'de-AT', 'en'])).toBe('de');
    expect([pickLanguage([]), pickLanguage(['ja'])]).toEqual(['en', 'en']);
    const loaded = await Promise.all(Object.keys(LANGUAGES).map(loadCatalogue));
    expect(loaded.map(({ words }) => words.language)).toEqual(Object.values(LANGUAGES));
    expect(loaded.map(({ said }) => said('a bar without beats'))).toEqual([
      'a bar without beats',
      'ein Takt ohne Schläge',
    ]);
  });

  it('[ST29] has an address for every view', () => {
    for (const view of VIEWS) {
      const route = { at: 'lesson', id: 'a-1', view } as const;
      expect(readRoute(pathOf(route))).toEqual(route);
    }
    expect(readRoute('/')).toEqual({ at: 'desk' });
    expect(readRoute(pathOf({ at: 'students' }))).toEqual({ at: 'students' });
    expect(readRoute('/somewhere/else')).toEqual({ at: 'desk' });
    expect(readRoute('/lesson/a-1/attic')).toEqual({ at: 'lesson', id: 'a-1', view: 'page' });
  });

  it('[ST30] has words that go up with levels', () => {
    const order = ['gone', 'feathered', 'soft', 'wellUnder', 'under', 'level', 'above'];
    const levels = Array.from({ length: 49 }, (_, index) => index - 36);
    const ranks = levels.map((level) => order.indexOf(balanceWord(level)));
    expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
    expect(new Set(ranks).size).toBe(order.length);
    // definition: the lesson's own level of a feathered bass drum is −18 dB, of the lead voice 0 dB
    expect([balanceWord(-18), balanceWord(0)]).toEqual(['feathered', 'level']);
  });
});
