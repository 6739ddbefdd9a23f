import { expect, it } from 'vitest';
import { nextWay, WAYS, type Way } from './start-ways.ts';

/** Every way that is tried where the same is lacking each time. */
function tried(lack: Parameters<typeof nextWay>[1]): readonly Way[] {
  const ways: Way[] = [];
  for (let way: Way | null = 'whole'; way; way = nextWay(way, lack)) ways.push(way);
  return ways;
}

it('[ST2702] goes on by the way that does without what was lacking, and never back', () => {
  // definition: SPEC.md, the order of the ways
  expect(tried('stroke')).toEqual(WAYS);
  expect(tried('kit')).toEqual(['whole', 'small kit', 'no thread']);
  expect(tried('thread')).toEqual(['whole', 'no thread']);
  expect(tried('output')).toEqual(['whole']);
  expect(nextWay('no room', 'kit')).toBe('small kit');
});
