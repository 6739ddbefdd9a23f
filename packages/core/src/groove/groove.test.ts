import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arbitraryLesson } from '../../../../internal/testing/arbitrary-lesson.ts';
import { parseLesson } from '../document/parse.ts';
import {
  DYNAMIC_LEVEL_DB,
  DYNAMIC_MARKS,
  levelDbToDynamic,
  levelDbToVelocity,
  velocityToLevelDb,
} from '../kit/dynamics.ts';
import { marksFor, strikeOf } from '../kit/strike.ts';
import { handLetter, VOICE_FACTS, VOICES } from '../kit/voice.ts';
import type { Form, Lesson } from '../lesson/lesson.ts';
import { MARKS } from '../rhythm/cell.ts';
import { compare } from '../rhythm/fraction.ts';
import { LeadDb } from '../units.ts';
import { perform } from './perform.ts';
import type { Stroke } from './stroke.ts';

function lessonOf(more = ''): Lesson {
  const text = `title: Swing\ntempo: 60\nexercises:\n  - x.. ..x x.x ..x\n  - X g . ...\n${more}`;
  const { lesson, problems } = parseLesson(text, 'x.lesson.yaml');
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

function formOf(lesson: Lesson, name: string): Form {
  const form = lesson.forms.find((each) => each.name === name);
  if (!form) throw new Error(`no form ${name}`);
  return form;
}

const LOOP: Form = {
  name: 'l',
  sections: [{ play: 'pattern', bars: 1, ending: null }],
  repeat: 1,
  countInBars: 0,
};

function places(strokes: readonly Stroke[], voice: string, bar?: number): readonly string[] {
  return strokes
    .filter((stroke) => stroke.voice === voice && (bar === undefined || stroke.written.bar === bar))
    .map(({ written: { beat, slot } }) => `${beat}.${slot}`);
}

describe('voices and dynamics', () => {
  it('[GR13] has the General MIDI keys', () => {
    // standard: General MIDI percussion key map, channel 10 (35–81)
    const keys = {
      ride: 51,
      hihat: 42,
      'hihat-open': 46,
      'hihat-foot': 44,
      bass: 36,
      snare: 38,
      sidestick: 37,
      rimshot: 40,
      crash: 49,
      'tom-high': 48,
      'tom-mid': 47,
      'tom-low': 43,
      'tom-floor': 41,
      splash: 55,
      china: 52,
      cowbell: 56,
      clap: 39,
    };
    expect(Object.fromEntries(VOICES.map((voice) => [voice, VOICE_FACTS[voice].gmKey]))).toEqual(keys);
  });

  it('[GR1] is one monotone scale with forte at velocity 90', () => {
    // standard: MusicXML 4.0, dynamics attribute: forte is MIDI velocity 90
    expect(levelDbToVelocity(LeadDb(DYNAMIC_LEVEL_DB.f))).toBe(90);
    const velocities = DYNAMIC_MARKS.map((mark) => levelDbToVelocity(LeadDb(DYNAMIC_LEVEL_DB[mark])));
    expect(velocities).toEqual([...new Set(velocities)].toSorted((a, b) => a - b));
    for (const mark of DYNAMIC_MARKS) expect(levelDbToDynamic(LeadDb(DYNAMIC_LEVEL_DB[mark]))).toBe(mark);
    // standard: DLS and SoundFont 2: gain is 40·log10(v/127) dB, so half the velocity is 12.04 dB less
    expect(velocityToLevelDb(90) - velocityToLevelDb(45)).toBeCloseTo(12.0412, 4);
  });

  it('[GR1] gives velocities that read back within half a step', () => {
    for (let velocity = 1; velocity <= 127; velocity += 1) {
      expect(levelDbToVelocity(velocityToLevelDb(velocity))).toBe(velocity);
    }
    expect(levelDbToVelocity(LeadDb(60))).toBe(127);
    expect(levelDbToVelocity(LeadDb(-200))).toBe(1);
  });

  it('[GR11] reads marks by what the voice can play', () => {
    expect(strikeOf('hihat', 'o')).toMatchObject({ voice: 'hihat-open' });
    expect(strikeOf('hihat-foot', 'O')).toMatchObject({
      voice: 'hihat-foot',
      articulation: 'splash',
      accent: true,
    });
    expect(strikeOf('ride', 'b')).toMatchObject({ voice: 'ride', articulation: 'bell' });
    expect(strikeOf('snare', 'b')).toMatchObject({ articulation: 'buzz' });
    expect(strikeOf('snare', 's')).toMatchObject({ voice: 'sidestick' });
    expect(strikeOf('snare', 'R')).toMatchObject({ voice: 'rimshot', accent: true });
    expect(strikeOf('ride', 's')).toBeNull();
    expect(strikeOf('bass', 'f')).toBeNull();
    expect(marksFor('bass', MARKS)).toEqual(['.', 'x', 'X', 'g']);
  });
});

describe('performing', () => {
  it('[GR2] keeps every stroke inside the form and in order, for any lesson', () => {
    fc.assert(
      fc.property(arbitraryLesson, (lesson) => {
        for (const form of lesson.forms) {
          const { strokes, bars, durationSeconds, countInSeconds } = perform(lesson, { exercise: 1, form });
          strokes.forEach((stroke, i) => {
            expect(stroke.timeSeconds).toBeGreaterThanOrEqual(0);
            expect(stroke.timeSeconds).toBeLessThan(durationSeconds);
            if (i > 0)
              expect(stroke.timeSeconds).toBeGreaterThanOrEqual((strokes[i - 1] as Stroke).timeSeconds);
            const bar = bars.find((each) => each.bar === stroke.written.bar);
            expect(stroke.timeSeconds).toBeGreaterThanOrEqual((bar?.startSeconds ?? Number.NaN) - 1e-9);
            if (stroke.role !== 'count-in')
              expect(stroke.timeSeconds).toBeGreaterThanOrEqual(countInSeconds - 1e-9);
          });
          const last = bars.at(-1);
          expect((last?.startSeconds ?? 0) + (last?.durationSeconds ?? 0)).toBeCloseTo(durationSeconds, 9);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('[GR3] joins layers one by one and leaves muted voices out', () => {
    const lesson = lessonOf();
    const voices = (options: object) => [
      ...new Set(
        perform(lesson, { exercise: 1, form: LOOP, ...options }).strokes.map((stroke) => stroke.voice),
      ),
    ];
    expect(voices({ layers: 1 })).toEqual(['ride']);
    expect(voices({ layers: 2 })).toEqual(['ride', 'hihat-foot']);
    expect(voices({ layers: 3 }).toSorted()).toEqual(['bass', 'hihat-foot', 'ride']);
    expect(voices({}).toSorted()).toEqual(['bass', 'hihat-foot', 'ride', 'snare']);
    expect(voices({ mute: ['ride', 'snare'] }).toSorted()).toEqual(['bass', 'hihat-foot']);
  });

  it('[GR3] mutes what a muted voice plays in another way', () => {
    const lesson = lessonOf('  - s r x x\n');
    const muted = perform(lesson, { exercise: 3, form: LOOP, mute: ['snare'] });
    expect(new Set(muted.strokes.map((stroke) => stroke.voice))).toEqual(
      new Set(['ride', 'hihat-foot', 'bass']),
    );
  });

  it('[GR4][GR5] plays four bars ending on the accent, then two of time, and around again', () => {
    const lesson = lessonOf();
    const { strokes, bars } = perform(lesson, { exercise: 1, form: formOf(lesson, 'four and two') });
    expect(bars.map((bar) => bar.play)).toEqual([
      'count-in',
      ...['pattern', 'pattern', 'pattern', 'pattern', 'time', 'time'],
      ...['pattern', 'pattern', 'pattern', 'pattern', 'time', 'time'],
    ]);
    expect(places(strokes, 'snare', 3)).toEqual(['1.1', '2.3', '3.1', '3.3', '4.3']);
    for (const bar of [4, 10]) {
      expect(places(strokes, 'snare', bar)).toEqual(['1.1', '2.3', '3.1', '3.3']);
      expect(places(strokes, 'rimshot', bar)).toEqual(['4.3']);
      expect(places(strokes, 'crash', bar)).toEqual(['4.3']);
    }
    expect(places(strokes, 'snare', 5)).toEqual([]);
    expect(places(strokes, 'rimshot').length).toBe(2);
  });

  it('[GR4] starts the pattern anew with each section while the groove goes on', () => {
    const text = `title: T
groove: {ride: "x x x x | x.x x x x"}
exercises: ["x . . . | . x . . | . . x ."]
forms: {odd: {sections: [{pattern: 2}, {time: 1}], repeat: 2, countIn: 0}}
`;
    const lesson = parseLesson(text, 'x').lesson as Lesson;
    const { strokes } = perform(lesson, { exercise: 1, form: formOf(lesson, 'odd') });
    // definition: the three bars of the pattern are the whole repetition that is nearest to two
    expect([1, 2, 3, 4, 5].map((bar) => places(strokes, 'snare', bar))).toEqual([
      ['1.1'],
      ['2.1'],
      ['3.1'],
      [],
      ['1.1'],
    ]);
    expect([1, 2, 3, 4].map((bar) => places(strokes, 'ride', bar).length)).toEqual([4, 5, 4, 5]);
  });

  it('[GR14] a pattern goes round whole: three bars in a loop of four are three, two are four, eight are eight', () => {
    const bars = (count: number) => {
      const pattern = Array.from({ length: count }, () => 'x . . .').join(' | ');
      const lesson = parseLesson(`title: T\nexercises: ["${pattern}"]\n`, 'x').lesson as Lesson;
      return perform(lesson, { exercise: 1, form: formOf(lesson, 'loop') }).bars.flatMap(
        ({ patternBar }) => patternBar ?? [],
      );
    };
    expect(bars(3)).toEqual([0, 1, 2]);
    expect(bars(2)).toEqual([0, 1, 0, 1]);
    expect(bars(5)).toEqual([0, 1, 2, 3, 4]);
    expect(bars(8)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
  });

  it('[GR5] leaves the groove alone where the pattern layer does not play', () => {
    const lesson = lessonOf();
    const { strokes } = perform(lesson, { exercise: 1, form: formOf(lesson, 'four and two'), layers: 3 });
    expect(places(strokes, 'crash')).toEqual([]);
    expect(places(strokes, 'ride', 4)).toEqual(['1.1', '2.1', '2.3', '3.1', '4.1', '4.3']);
  });

  it('[GR6] takes the hand that the ending needs', () => {
    const lesson = lessonOf();
    const { strokes } = perform(lesson, { exercise: 1, form: formOf(lesson, 'four and two') });
    // common practice: the crash is played by the hand that plays the ride
    expect(places(strokes, 'ride', 4)).toEqual(['1.1', '2.1', '2.3', '3.1', '4.1']);
    expect(places(strokes, 'hihat-foot', 4)).toEqual(['2.1', '4.1']);
    const taken = strokes.filter((stroke) => stroke.role === 'ending' && stroke.written.bar === 4);
    expect(taken.map((stroke) => stroke.limb)).toEqual(['other hand', 'lead hand']);
  });

  it('[GR7] counts in', () => {
    const lesson = lessonOf();
    const form = { ...LOOP, countInBars: 2 };
    const { strokes, countInSeconds } = perform(lesson, { exercise: 1, form });
    const clicks = strokes.filter((stroke) => stroke.role === 'count-in');
    // definition: two bars of four quarters at 60 last eight seconds
    expect(countInSeconds).toBe(8);
    expect(clicks.map((click) => click.timeSeconds)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
    expect(clicks.map((click) => click.written.bar)).toEqual([-1, -1, -1, -1, 0, 0, 0, 0]);
    expect(clicks.map((click) => click.mark).join('')).toBe('XxxxXxxx');
    expect(compare((clicks[0] as Stroke).at, { num: 0, den: 1 })).toBeLessThan(0);
  });

  it('[GR8] mirrors hands in a left-handed set-up, and follows stickings', () => {
    expect(handLetter('lead hand', 'right-handed')).toBe('R');
    expect(handLetter('lead hand', 'left-handed')).toBe('L');
    const hands = (setUp: string) => {
      const lesson = lessonOf(`  - {pattern: x x x x, sticking: R L L R}\nsetUp: ${setUp}\n`);
      const { strokes } = perform(lesson, { exercise: 3, form: LOOP });
      return strokes.filter((stroke) => stroke.voice === 'snare').map((stroke) => stroke.limb);
    };
    expect(hands('right-handed')).toEqual(['lead hand', 'other hand', 'other hand', 'lead hand']);
    expect(hands('left-handed')).toEqual(['other hand', 'lead hand', 'lead hand', 'other hand']);
  });

  it('[GR9] balances swing: ride, comping, hi-hat foot, feathered bass drum', () => {
    const { balance } = lessonOf();
    // common practice: the order of the swing balance
    expect(balance.ride).toBe(0);
    expect(balance.snare).toBeLessThan(balance.ride);
    expect(balance['hihat-foot']).toBeLessThan(balance.snare);
    expect(balance.bass).toBeLessThan(balance['hihat-foot']);
  });

  it('[GR10] puts accents over and ghost notes under the level of their voice', () => {
    const lesson = lessonOf();
    const snare = perform(lesson, { exercise: 2, form: LOOP }).strokes.filter(
      (stroke) => stroke.voice === 'snare',
    );
    expect(snare.map((stroke) => stroke.levelDb - lesson.balance.snare)).toEqual([6, -12]);
  });

  it('[GR12] replaces the groove only for the voices and bars of the pattern', () => {
    const text = `title: T
groove: {hihat: xx xx xx xx, snare: . x . x, bass: x . x .}
exercises: [{pattern: {snare: "x . . x", bass: ". . . x"}}]
forms: {f: {sections: [{pattern: 1}, {time: 1}, {rest: 1}], countIn: 0}}
`;
    const lesson = parseLesson(text, 'x').lesson as Lesson;
    const { strokes } = perform(lesson, { exercise: 1, form: formOf(lesson, 'f') });
    expect([1, 2, 3].map((bar) => places(strokes, 'bass', bar))).toEqual([['4.1'], ['1.1', '3.1'], []]);
    expect([1, 2, 3].map((bar) => places(strokes, 'snare', bar))).toEqual([
      ['1.1', '4.1'],
      ['2.1', '4.1'],
      [],
    ]);
    expect(places(strokes, 'hihat', 1)).toHaveLength(8);
    expect(places(strokes, 'hihat', 3)).toHaveLength(0);
  });
});
