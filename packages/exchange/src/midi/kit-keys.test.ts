import { describe, expect, it } from 'vitest';
import { played } from '../../test/played.ts';
import { keysStruck, printKitKeys, readKitKeys } from './kit-keys.ts';
import { readMidi } from './read.ts';

describe('keys of a kit', () => {
  it('[EX70] reads keys with their voices, and says of every other line what is wrong', () => {
    const { keys, problems } = readKitKeys('# rehearsal room\n31: snare\r\n\n32:  sidestick # rim\n');
    expect(keys).toEqual({ 31: 'snare', 32: 'sidestick' });
    expect(problems).toEqual([]);
    expect(readKitKeys('snare\n128: snare\n38.5: snare\n38: snar\n40: snare\n')).toEqual({
      keys: { 40: 'snare' },
      problems: [
        { line: 1, fault: 'line', found: 'snare', near: null },
        { line: 2, fault: 'key', found: '128', near: null },
        { line: 3, fault: 'key', found: '38.5', near: null },
        { line: 4, fault: 'voice', found: 'snar', near: 'snare' },
      ],
    });
  });

  it('[EX70] reads what it prints', () => {
    const keys = { 38: 'snare', 40: 'snare', 21: 'hihat-foot' } as const;
    expect(readKitKeys(printKitKeys(keys))).toEqual({ keys, problems: [] });
  });

  it('[EX71] tells the keys in the order in which each was first struck, whatever they stand for', () => {
    // definition: two strokes on a key that no layout knows, a snare, and that key again
    const take = readMidi(
      played([
        [0, 100],
        [48, 100],
        [96, 38],
        [144, 100],
        [192, 36],
      ]),
    );
    expect(keysStruck(take)).toEqual([100, 38, 36]);
    expect(readMidi(played([[0, 100]]), { keys: { 100: 'ride' } }).notes).toMatchObject([{ voice: 'ride' }]);
  });
});
