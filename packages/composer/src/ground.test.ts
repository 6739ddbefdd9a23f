import { describe, expect, it } from 'vitest';
import { lessonFrom, lessonOf } from '../test/lessons.ts';
import { groundOf, readGround } from './ground.ts';

describe('the ground under a bar', () => {
  it('[CO1] a last triplet on 2 or 4 falls with the ride, on 1 or 3 alone', () => {
    const ground = readGround(lessonOf('swing'), 1);
    // common practice: the ride's skip note is the last triplet of 2 and 4
    const company = [0, 1, 2, 3].map((beat) => ground.company(beat, 2, 3));
    expect(company.map((each) => each.lead)).toEqual([0, 1, 0, 1]);
    expect(company.map((each) => each.alone)).toEqual([1, 0, 1, 0]);
    expect(company[1]?.voices).toEqual(['ride']);
  });

  it('[CO1] knows a foot from the lead hand', () => {
    const ground = readGround(lessonOf('sixteenths', ''), 1);
    // definition: hi-hat eighths by the lead hand; nothing else strikes an e or an a
    expect(ground.company(0, 1, 4)).toEqual({ lead: 0, foot: 0, alone: 1, voices: [] });
    const bare = readGround(lessonFrom('groove: { hihat-foot: . x . x }\nvocabulary: [x..]'), 1);
    expect(bare.company(1, 0, 3)).toEqual({ lead: 0, foot: 1, alone: 0, voices: ['hihat-foot'] });
  });

  it('[CO2] compares places as they are performed: a swung eighth is a last triplet', () => {
    const ground = readGround(lessonOf('swing'), 1);
    // definition: triplet feel is 2:1, so the second eighth sounds at 2/3
    expect(ground.company(1, 1, 2).lead).toBe(1);
    const even = readGround(lessonFrom('feel: even\ngroove: { ride: x x.x x x.x }\nvocabulary: [x..]'), 1);
    expect(even.company(1, 1, 2).lead).toBe(0);
  });

  it('[CO3] shares out the ways in which a longer groove meets a shorter exercise', () => {
    const lesson = lessonFrom('feel: even\ngroove: { ride: x. x. x. x. | xx xx xx xx }\nvocabulary: [x.]');
    // definition: the & is struck in one of the two bars
    expect(readGround(lesson, 1).company(0, 1, 2)).toMatchObject({ lead: 0.5, alone: 0.5 });
    expect(readGround(lesson, 2).company(0, 1, 2).lead).toBe(0);
    expect(readGround(lesson, 2).company(4, 1, 2).lead).toBe(1);
  });

  it('[CO4] leaves out what the exercise plays itself, and knows when the limb is busy', () => {
    const lesson = lessonFrom(
      'groove: { ride: x x x x, snare: . x . x, sidestick: . . x . }\nvocabulary: [x..]',
    );
    const ground = readGround(lesson, 1);
    // definition: the snare comps; the same hand plays the side stick on 3
    expect(ground.isBusy(1, 0, 3)).toBe(false);
    expect(ground.isBusy(2, 0, 3)).toBe(true);
    const parts = (['snare', 'bass'] as const).map((voice) => ({ voice, pattern: { bars: [[]] } }));
    const shared = groundOf(lessonOf('swing'), { number: 1, name: null, parts, sticking: null, notes: null });
    // definition: the bass drum of the groove is replaced, so the ride alone strikes with 3
    expect(shared.company(2, 0, 3).voices).toEqual(['ride']);
  });
});
