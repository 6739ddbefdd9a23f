import fc from 'fast-check';
import { expect, it } from 'vitest';
import { fileNameOf } from './file-name.ts';

it('[LE14] makes a file name of a title', () => {
  expect(fileNameOf('First swing, for Bram', '.lesson.yaml')).toBe('first-swing-for-bram.lesson.yaml');
  // standard: Unicode 15, canonical decomposition: ü is u with U+0308
  expect(fileNameOf('Übung: Première leçon!', '.pdf')).toBe('ubung-premiere-lecon.pdf');
  expect([fileNameOf(null, '.mid'), fileNameOf('…', '.mid'), fileNameOf('スウィング', '.mid')]).toEqual([
    'lesson.mid',
    'lesson.mid',
    'lesson.mid',
  ]);
  const property = fc.property(fc.string({ unit: 'binary' }), (title) => {
    // standard: POSIX.1-2017, 3.282 Portable Filename Character Set, less what is not needed
    expect(fileNameOf(title, '.mid')).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*\.mid$/);
  });
  fc.assert(property, { seed: 3 });
});
