import { describe, expect, it } from 'vitest';
import { balanceWord } from '../groove/balance-words.ts';
import { pathOf, readRoute, VIEWS } from '../shared/address.ts';

describe('words', () => {
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
