import fc from 'fast-check';
import { expect, it } from 'vitest';
import { mediaPlaces, type ProseRun, plainProse, readProse } from './prose.ts';

/** Runs in short: `*` for emphasis, `**` for strong, `<…>` for the address of a link. */
function short(runs: readonly ProseRun[]): readonly string[] {
  return runs.map(({ text, emphasis, strong, link }) => {
    const marks = `${strong ? '**' : ''}${emphasis ? '*' : ''}`;
    return `${marks}${text}${link === null ? '' : `<${link}>`}`;
  });
}

function blocks(text: string) {
  return readProse(text).map((block) => {
    if (block.kind === 'medium') return block.medium;
    return block.kind === 'list'
      ? [block.isNumbered ? 'numbered' : 'list', ...block.items.map((runs) => short(runs).join('|'))]
      : short(block.runs).join('|');
  });
}

it('[LE23] reads paragraphs and lists', () => {
  expect(blocks('one\ntwo\n\n  three  \n')).toEqual(['one two', 'three']);
  // standard: CommonMark 0.31.2, 5.2: an item goes on in lines that are set in
  expect(blocks('- first\n  goes on\n- second\n\n- third')).toEqual([
    ['list', 'first goes on', 'second', 'third'],
  ]);
  expect(blocks('Three things:\n1. ride\n2. foot\n\nThen all.')).toEqual([
    'Three things:',
    ['numbered', 'ride', 'foot'],
    'Then all.',
  ]);
  expect(blocks('- one\n1. two')).toEqual([
    ['list', 'one'],
    ['numbered', 'two'],
  ]);
  expect(blocks(' \n\n')).toEqual([]);
});

it('[LE23] reads emphasis, strong emphasis and links', () => {
  // standard: CommonMark 0.31.2, 6.2 (rules 1, 2, 5 and 6) and 6.3
  expect(blocks('*foo bar*')).toEqual(['*foo bar']);
  expect(blocks('a * foo bar*')).toEqual(['a * foo bar*']);
  expect(blocks('foo*bar*')).toEqual(['foo|*bar']);
  expect(blocks('foo_bar_')).toEqual(['foo_bar_']);
  expect(blocks('**foo bar**')).toEqual(['**foo bar']);
  expect(blocks('** foo bar**')).toEqual(['** foo bar**']);
  expect(blocks('_foo_')).toEqual(['*foo']);
  expect(blocks('5*6*78')).toEqual(['5|*6|78']);
  expect(blocks('**one *two* three**')).toEqual(['**one |***two|** three']);
  expect(blocks('see [the room](https://example.org/tannery), *now*')).toEqual([
    'see |the room<https://example.org/tannery>|, |*now',
  ]);
});

it('[LE23] leaves everything else as it is', () => {
  expect(blocks('x*y and 3 * 4 _')).toEqual(['x*y and 3 * 4 _']);
  // standard: CommonMark 0.31.2, 2.4: any ASCII punctuation may be escaped, and is then plain
  expect(blocks('\\*not emphasised\\*')).toEqual(['*not emphasised*']);
  for (const text of ['<b>x</b>', '# x', '`x`', '[a](javascript:x)', '> x', 'so ![a](b.png)', '\\x']) {
    expect(blocks(text)).toEqual([text]);
  }
});

it('[LE4200] reads pictures, each in a line of its own', () => {
  // standard: CommonMark 0.31.2, 6.4 (images) and 6.3 (a destination in angle brackets may have spaces)
  const text = 'First\n![The *grip*](pictures/grip.png)\nthen\n\n![](<my take.mp3>)';
  expect(blocks(text)).toEqual([
    'First',
    { path: 'pictures/grip.png', says: 'The grip' },
    'then',
    { path: 'my take.mp3', says: null },
  ]);
  // definition: offsets count from the start of the text
  expect(mediaPlaces(text)).toEqual([
    { path: 'pictures/grip.png', offset: text.indexOf('pictures') },
    { path: 'my take.mp3', offset: text.indexOf('my take') },
  ]);
  expect(plainProse(text)).toBe('First\nThe grip\nthen');
});

it('[LE23] loses no letter, whatever is written', () => {
  const marks = fc.constantFrom(
    '*',
    '**',
    '_',
    '[',
    ']',
    '(',
    ')',
    '- ',
    '1. ',
    '\n',
    '\n\n',
    ' ',
    '\\',
    'a',
    'ß',
  );
  fc.assert(
    fc.property(fc.array(marks, { maxLength: 30 }), (parts) => {
      const text = parts.join('');
      const letters = (of: string) => of.replaceAll(/[^aß]/g, '');
      expect(letters(plainProse(text))).toBe(letters(text));
    }),
    { seed: 7, numRuns: 500 },
  );
});
