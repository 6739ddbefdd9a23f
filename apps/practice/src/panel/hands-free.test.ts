import { ladderOf } from '@shedbook/coach';
import { Bpm } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { arriveAt, type Course, type Going, goOn, type Standing } from './hands-free.ts';

const course: Course = { numbers: [1, 2, 3], comfortableLoops: 4 };
const standing: Standing = {
  rule: ladderOf({ startBpm: Bpm(80), goalBpm: Bpm(120), stepBpm: Bpm(8) }),
  bpm: 80,
};

type Event = Parameters<typeof goOn>[2];

function run(from: number, events: readonly Event[]): readonly Going[] {
  let state = arriveAt(course, from, standing);
  return events.map((event) => {
    const going = goOn(course, state, event, standing);
    state = going.state;
    return going;
  });
}

describe('going on by itself', () => {
  it('[ST75] counts clean loops down, then goes to the next exercise and says so', () => {
    const said = run(1, ['clean', 'loose', 'clean', 'clean', 'clean']).map((each) => each.said);
    // definition: four clean loops, the loose one not counted
    expect(said).toEqual([
      { kind: 'more', loops: 3 },
      { kind: 'more', loops: 3 },
      { kind: 'more', loops: 2 },
      { kind: 'more', loops: 1 },
      { kind: 'next', number: 2 },
    ]);
    expect(run(1, Array(4).fill('clean')).at(-1)?.next).toBe(2);
  });

  it('[ST75] stays when told, says that it does, and goes on when told', () => {
    const stayed = run(2, ['stay', 'clean', 'clean', 'clean', 'clean', 'go on', 'clean']);
    expect(stayed.map((each) => each.said?.kind)).toEqual([
      'staying',
      'more',
      'more',
      'more',
      'held',
      'going on',
      'next',
    ]);
    expect(stayed.map((each) => each.next)).toEqual([null, null, null, null, null, null, 3]);
  });

  it('[ST75] comes to an exercise a second time where the list has it twice', () => {
    const list: Course = { numbers: [2, 1, 2, 3], comfortableLoops: 1 };
    const first = goOn(list, arriveAt(list, 2, standing), 'clean', standing);
    expect([first.next, first.state.item]).toEqual([1, 1]);
    const second = goOn(list, arriveAt(list, 1, standing, first.state.item), 'clean', standing);
    expect([second.next, second.state.item]).toEqual([2, 2]);
    const third = goOn(list, arriveAt(list, 2, standing, second.state.item), 'clean', standing);
    expect(third.next).toBe(3);
    // definition: somebody who goes elsewhere by hand stands where that exercise comes first
    expect(arriveAt(list, 2, standing, 1).item).toBe(0);
  });

  it('[ST75] says when the last exercise is over, and goes nowhere', () => {
    const last = run(3, ['clean', 'clean', 'clean', 'clean']).at(-1);
    expect(last).toMatchObject({ said: { kind: 'all done' }, next: null });
  });
});
