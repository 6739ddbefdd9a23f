import { expect, it } from 'vitest';
import { markDifferences, shortened } from './differences.ts';

it('[ST3] shows the lines that differ with a little around them, and says how many are left out', () => {
  const text = (eighth: string) =>
    Array.from({ length: 12 }, (_, i) => (i === 7 ? eighth : `line ${i}`)).join('\n');
  const { mine, theirs } = markDifferences(text('ours'), text('another'));
  expect(mine.filter((line) => line.differs).map((line) => line.text)).toEqual(['ours']);
  expect(theirs.filter((line) => line.differs).map((line) => line.text)).toEqual(['another']);
  const told = shortened(mine, 2).map((each) =>
    each.kind === 'shown' ? each.lines.map((line) => line.text) : each.count,
  );
  expect(told).toEqual([5, ['line 5', 'line 6', 'ours', 'line 8', 'line 9'], 2]);
  expect(shortened(markDifferences('a', 'a').mine, 2)).toEqual([{ kind: 'left out', count: 1 }]);
});
