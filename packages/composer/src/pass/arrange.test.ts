import {
  commonGrid,
  type Exercise,
  formatPattern,
  handsOf,
  type Lesson,
  type Limb,
  parseLesson,
  parsePattern,
  printLesson,
  type Voice,
} from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exerciseOf, lessonFrom, lessonOf } from '../../test/lessons.ts';
import { arrange, arrangeAll, type Pass } from './arrange.ts';
import { ACCENT_RULES, HANDS_RULES, KIT_RULES, SHARING_RULES, type SharingRule } from './rules.data.ts';
import { lengthSeconds, timedStrokes } from './timing.ts';

const swing = lessonOf('swing');
/** A lesson whose hands are both free: nothing but the feet keep the time. */
const drum = lessonFrom(
  'tempo: { start: 60, goal: 112 }\ngroove: { hihat-foot: . x . x, bass: x . x . }\nvocabulary: [x..., xxxx, x.x., ..xx]',
);
const lessons = {
  swing,
  drum,
  bossa: lessonOf('bossa'),
  sixteenths: lessonOf('sixteenths'),
  waltz: lessonOf('waltz'),
};

const passes: readonly Pass[] = [
  ...SHARING_RULES.map((rule): Pass => ({ pass: 'share', rule, lower: 'bass' })),
  ...KIT_RULES.map((rule): Pass => ({ pass: 'kit', rule })),
  ...ACCENT_RULES.map((rule): Pass => ({ pass: 'accents', rule })),
  ...HANDS_RULES.map((rule): Pass => ({ pass: 'hands', rule })),
  ...([1, 2] as const).map((beats): Pass => ({ pass: 'fill', beats, bars: 4 })),
];

function textsOf(exercise: Exercise | null) {
  return exercise?.parts.map((part) => `${part.voice}: ${formatPattern(part.pattern)}`);
}

/** Where an exercise strikes, whatever the voice. */
function placesOf(lesson: Lesson, exercise: Exercise): readonly string[] {
  return exercise.parts
    .flatMap((part) => timedStrokes(lesson, part.voice, part.pattern))
    .map(({ bar, beat, slot, slots }) => `${bar} ${beat} ${slot / slots}`)
    .toSorted();
}

const R = 'R';

/** Seconds at which each limb strikes in a looped exercise over its groove, with written hands. */
function limbTimes(
  lesson: Lesson,
  exercise: Exercise,
): ReadonlyMap<Limb, readonly { seconds: number; voice: Voice }[]> {
  const own = exercise.parts[0]?.pattern.bars.length ?? 1;
  const played = exercise.parts.map((part) => part.voice);
  const groove = lesson.groove.filter((part) => !played.includes(part.voice));
  const bars = commonGrid([own, ...groove.map((part) => part.pattern.bars.length)]);
  const times = new Map<Limb, { seconds: number; voice: Voice }[]>();
  for (const part of [...exercise.parts, ...groove]) {
    const looped = Array.from(
      { length: bars },
      (_, bar) => part.pattern.bars[bar % part.pattern.bars.length] ?? [],
    );
    const once = timedStrokes(lesson, part.voice, part.pattern).length;
    timedStrokes(lesson, part.voice, { bars: looped }).forEach((stroke, i) => {
      const hand = part === exercise.parts[0] ? exercise.sticking?.[i % once] : undefined;
      const limb = hand === undefined ? lesson.limbs[part.voice] : hand === R ? 'lead hand' : 'other hand';
      times.set(limb, [...(times.get(limb) ?? []), { seconds: stroke.seconds, voice: part.voice }]);
    });
  }
  return times;
}

/** The least time between two strokes of each limb, round the loop. */
function leastGaps(lesson: Lesson, exercise: Exercise): ReadonlyMap<Limb, number> {
  const own = exercise.parts[0]?.pattern.bars.length ?? 1;
  const bars = commonGrid([own, ...lesson.groove.map((part) => part.pattern.bars.length)]);
  const length = lengthSeconds(lesson, bars);
  return new Map(
    [...limbTimes(lesson, exercise)].map(([limb, strokes]) => {
      const sorted = strokes.map((stroke) => stroke.seconds).toSorted((a, b) => a - b);
      const gaps = sorted.map((each, i) => (sorted[i + 1] ?? (sorted[0] ?? 0) + length) - each);
      return [limb, Math.min(...gaps)];
    }),
  );
}

const anyCase = fc
  .constantFrom(...(Object.keys(lessons) as (keyof typeof lessons)[]))
  .chain((name) => {
    const cells = lessons[name].vocabulary.map(({ cell }) => cell.text);
    const beats = lessons[name].meter.beats.length;
    return fc.record({
      lesson: fc.constant(lessons[name]),
      cells: fc.array(fc.constantFrom(...cells), { minLength: beats, maxLength: beats }),
      accented: fc.nat(7),
      seed: fc.nat(99),
      pass: fc.constantFrom(...passes),
    });
  })
  .map(({ lesson, cells, accented, seed, pass }) => {
    let stroke = 0;
    const text = cells.join(' ').replace(/x/g, () => {
      stroke += 1;
      return stroke === accented ? 'X' : 'x';
    });
    return { lesson, exercise: exerciseOf(lesson, text), seed, pass };
  });

/** Published rate of one hand, in strokes a second. */
const PUBLISHED = 7;
const ROUNDING_SECONDS = 1e-6;

describe('passes over any exercise', () => {
  it('[CO34] keep every stroke, each on one voice', () => {
    fc.assert(
      fc.property(anyCase, ({ lesson, exercise, seed, pass }) => {
        const { exercise: made } = arrange(lesson, exercise, pass, seed);
        if (!made || pass.pass === 'fill') return;
        // definition: the same places, none twice
        expect(placesOf(lesson, made)).toEqual(placesOf(lesson, exercise));
        if (pass.pass === 'accents' || pass.pass === 'hands') {
          expect(made.parts.map((part) => part.voice)).toEqual(exercise.parts.map((part) => part.voice));
        }
      }),
      { numRuns: 400 },
    );
  });

  it('[CO40] ask no limb for two surfaces at once, nor for more than it is published to keep up', () => {
    fc.assert(
      fc.property(anyCase, ({ lesson, exercise, seed, pass }) => {
        const { exercise: made } = arrange(lesson, exercise, pass, seed);
        if (!made) return;
        const before = leastGaps(lesson, exercise);
        for (const [limb, seconds] of leastGaps(lesson, made)) {
          const rate = limb.endsWith('foot') ? PUBLISHED * 0.75 : PUBLISHED;
          // published: Fujii, Kudo, Ohtsuki & Oda 2009, Neuroscience Letters 459(2): one hand 5 to 7 strokes a second
          const least = Math.min(1 / rate, before.get(limb) ?? 1 / rate);
          expect(seconds, `${limb} in ${JSON.stringify(textsOf(made))}`).toBeGreaterThan(
            least - ROUNDING_SECONDS,
          );
        }
      }),
      { numRuns: 400 },
    );
  });

  it('[CO43] give the same for the same seed, and say so where they change nothing', () => {
    fc.assert(
      fc.property(anyCase, ({ lesson, exercise, seed, pass }) => {
        const made = arrange(lesson, exercise, pass, seed);
        expect(arrange(lesson, exercise, pass, seed)).toEqual(made);
        // definition: an exercise and what was done, or neither and a note why
        expect(made.said === null).toBe(made.exercise === null);
        if (made.exercise === null) expect(made.notes.length).toBeGreaterThan(0);
      }),
      { numRuns: 200 },
    );
    const fill = (seed: number) =>
      JSON.stringify(
        textsOf(
          arrange(swing, exerciseOf(swing, 'x.. ..x ... ...'), { pass: 'fill', beats: 2, bars: 4 }, seed)
            .exercise,
        ),
      );
    // definition: twenty seeds do not all give one fill
    expect(new Set(Array.from({ length: 20 }, (_, seed) => fill(seed))).size).toBeGreaterThan(5);
  });
});

describe('sharing', () => {
  const share = (rule: SharingRule, text: string) =>
    textsOf(arrange(swing, exerciseOf(swing, text), { pass: 'share', rule, lower: 'bass' }, 1).exercise);

  it('[CO34] goes by simple rules', () => {
    // definition: by hand
    expect(share('beats-below', 'x.. ..x x.x ...')).toEqual([
      'snare: ... ..x ..x ...',
      'bass: x.. ... x.. ...',
    ]);
    expect(share('long-below', 'x.. ..x x.x ...')).toEqual([
      'snare: ... ..x x.. ...',
      'bass: x.. ... ..x ...',
    ]);
    expect(share('by-turns', 'x.. ..x x.x ...')).toEqual(['snare: x.. ... x.. ...', 'bass: ... ..x ..x ...']);
    expect(share('accents-below', 'x.. ..X x.X ...')).toEqual([
      'snare: x.. ... x.. ...',
      'bass: ... ..X ..X ...',
    ]);
  });

  it('[CO43] says why it leaves an exercise alone', () => {
    const notes = (text: string) =>
      arrange(swing, exerciseOf(swing, text), { pass: 'share', rule: 'beats-below', lower: 'bass' }, 1).notes;
    expect(notes('... ..x ... ...')).toEqual([{ fact: 'pass-no-stroke' }]);
    expect(notes('x.. ... x.. ...')).toEqual([{ fact: 'pass-every-stroke' }]);
  });
});

describe('over the kit', () => {
  it('[CO34] goes from drum to drum by its rule, with hands that are free', () => {
    const go = (lesson: Lesson, text: string) =>
      textsOf(arrange(lesson, exerciseOf(lesson, text), { pass: 'kit', rule: 'by-beat' }, 1).exercise);
    // definition: one drum a beat, from high to low
    expect(go(drum, 'x... x... x... x...')).toEqual([
      'snare: x... .... .... ....',
      'tom-high: .... x... .... ....',
      'tom-mid: .... .... x... ....',
      'tom-low: .... .... .... x...',
    ]);
    // definition: the low tom is the lead hand's, and that one plays the ride on 4: the snare takes it
    expect(go(swing, 'x.. x.. x.. x..')).toEqual([
      'snare: x.. ... ... x..',
      'tom-high: ... x.. ... ...',
      'tom-mid: ... ... x.. ...',
    ]);
  });
});

describe('accents', () => {
  it('[CO34] fall where the rule says', () => {
    const accented = (rule: (typeof ACCENT_RULES)[number], text: string) =>
      textsOf(arrange(swing, exerciseOf(swing, text), { pass: 'accents', rule }, 3).exercise)?.[0];
    // definition: by hand
    expect(accented('on-the-beat', 'x.x ..X x.. ...')).toBe('snare: X.x ..x X.. ...');
    expect(accented('off-the-beat', 'x.x ..x x.. ...')).toBe('snare: x.X ..X x.. ...');
    expect(accented('first-of-group', 'x.x ... x.. ..x')).toBe('snare: x.x ... X.. ..X');
    expect(accented('last-of-group', 'x.x ... x.. ..x')).toBe('snare: x.X ... X.. ..x');
    expect(accented('every-third', 'x.x x.x x.x ...')).toBe('snare: X.x x.X x.x ...');
  });
});

describe('hands', () => {
  const hands = (lesson: Lesson, text: string, rule: (typeof HANDS_RULES)[number]) =>
    arrange(lesson, exerciseOf(lesson, text), { pass: 'hands', rule }, 1).exercise?.sticking?.join('') ??
    null;

  it('[CO41] go by their rule where both are free', () => {
    // definition: by hand; sixteenths at 112 are 7.5 a second, so no hand can play two in a row, round the loop neither
    expect(hands(drum, 'xxxx x.x. x... ..xx', 'by-turns')).toBe('RLRLRLRRL');
    expect(hands(drum, 'xxxx x.x. x... ..xx', 'by-place')).toBe('RLRLRRRRL');
    expect(hands(drum, 'x.x. x.x. x.x. x.x.', 'doubles')).toBe('RRLLRRLL');
    expect(hands(drum, 'x.x. x.x. x.x. x.x.', 'paradiddle')).toBe('RLRRLRLL');
    expect(hands(drum, 'xxxx xxxx xxxx xxxx', 'doubles')).toBe('RLRLRLRLRLRLRLRL');
    const left: Lesson = { ...drum, setUp: 'left-handed' };
    expect(hands(left, 'x.x. .... .... ....', 'by-turns')).toBe('LR');
  });

  it('[CO41] alternate wherever the rule is by turns and both hands are free', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom('x...', 'x.x.', '....', '..x.'), { minLength: 4, maxLength: 4 }),
        (cells) => {
          fc.pre(cells.some((text) => text.includes('x')));
          const given = hands(drum, cells.join(' '), 'by-turns') ?? '';
          // definition: no letter stands beside itself
          expect(given).not.toMatch(/RR|LL/);
        },
      ),
    );
  });

  it('[CO41] leave what the groove needs to the other hand, and refuse what neither can play', () => {
    // definition: the ride has the lead hand on every beat and on the lets of 2 and 4
    expect(hands(swing, 'x.. x.x x.. x.x', 'by-turns')).toBe('LLLLLL');
    const fast = lessonFrom(
      'tempo: { start: 120, goal: 240 }\ngroove: { hihat-foot: . x . x }\nvocabulary: [xxxx]',
    );
    // definition: sixteenths at 240 are 16 a second, 8 a hand
    expect(hands(fast, 'xxxx xxxx xxxx xxxx', 'by-turns')).toBeNull();
    const foot = { ...swing, comping: 'bass' as const };
    expect(
      arrange(foot, exerciseOf(foot, 'x.. ... ... ...'), { pass: 'hands', rule: 'by-turns' }, 1).notes,
    ).toEqual([{ fact: 'pass-no-hand' }]);
  });
});

describe('fills', () => {
  it('[CO42] end a phrase and leave all before them and the feet as they were', () => {
    fc.assert(
      fc.property(
        fc.nat(200),
        fc.constantFrom<1 | 2>(1, 2),
        fc.constantFrom(...Object.values(lessons)),
        (seed, beats, lesson) => {
          const [first] = lesson.vocabulary.filter(({ cell }) => cell.text.includes('x'));
          const text = lesson.meter.beats.map(() => first?.cell.text).join(' ');
          const { exercise: made, said } = arrange(
            lesson,
            exerciseOf(lesson, text),
            { pass: 'fill', beats, bars: 4 },
            seed,
          );
          if (!made) throw new Error('no fill');
          expect(said).toMatchObject({ fact: 'fill', beats, bars: 4 });
          // definition: the last beats of the fourth bar, in which the groove's hands are silent
          const silences = ['lead hand', 'other hand'];
          expect(made.fill).toEqual({ bar: 3, beat: lesson.meter.beats.length - beats, silences });
          const bars = made.parts.map((part) => part.pattern.bars);
          // definition: four bars, of which the first three are the exercise over its groove
          expect(bars.every((each) => each.length === 4)).toBe(true);
          const feet = made.parts.filter((part) => lesson.limbs[part.voice].endsWith('foot'));
          expect(feet).toEqual([]);
          const drums = made.parts.filter((part) => !lesson.groove.some(({ voice }) => voice === part.voice));
          const fillBeats = drums.flatMap((part) => part.pattern.bars[3]?.slice(-beats) ?? []);
          expect(fillBeats.some((cell) => /[xX]/.test(cell.text))).toBe(true);
          const before = placesOf(lesson, {
            ...made,
            parts: drums.map((part) => ({ ...part, pattern: { bars: part.pattern.bars.slice(0, 3) } })),
          });
          const repeated = exerciseOf(lesson, [text, text, text].join(' | '));
          expect(before).toEqual(placesOf(lesson, repeated));
          // definition: in the fill the hands have left the groove
          const time = made.parts.filter((part) => lesson.groove.some(({ voice }) => voice === part.voice));
          for (const part of time) {
            const cells = part.pattern.bars[3]?.slice(-beats) ?? [];
            expect(cells.every((cell) => /^\.+$/.test(cell.text))).toBe(true);
          }
        },
      ),
      { numRuns: 150 },
    );
  });

  it('[CO2802] are marked, so that a lesson with them is in order', () => {
    const lesson = lessons.swing;
    for (let seed = 0; seed < 12; seed += 1) {
      const from = exerciseOf(lesson, 'x.. ..x ... x..');
      const { exercise: made } = arrange(lesson, from, { pass: 'fill', beats: 2, bars: 2 }, seed);
      if (!made) throw new Error('no fill');
      const { lesson: read, problems } = parseLesson(printLesson({ ...lesson, exercises: [made] }), 'fill');
      // definition: what is written is read again, with nothing to warn of
      expect(problems).toEqual([]);
      expect(read?.exercises[0]?.fill).toEqual(made.fill);
    }
  });

  it('[CO42] have each hand play its own drums, a side stick as a mark of the snare', () => {
    const bossa = lessons.bossa;
    const { exercise } = arrange(
      bossa,
      exerciseOf(bossa, 'x. .x x. .x'),
      { pass: 'fill', beats: 1, bars: 2 },
      4,
    );
    // definition: a side stick is written as s on the snare
    expect(textsOf(exercise)?.[0]).toMatch(/^snare: s\. \.s s\. \.s \| s\. \.s s\. /);
    const strokes = exercise
      ? timedStrokes(bossa, 'snare', exercise.parts[0]?.pattern ?? parsePattern('. . . .'))
      : [];
    expect(exercise?.sticking).toHaveLength(strokes.length);
  });

  it('[CO43] are refused where the hands could not play them', () => {
    const fast = lessonFrom(
      'tempo: { start: 200, goal: 400 }\ngroove: { ride: x x x x }\nvocabulary: [x..., xxxx]',
    );
    const made = arrange(
      fast,
      exerciseOf(fast, 'x... x... x... x...'),
      { pass: 'fill', beats: 1, bars: 4 },
      1,
    );
    // definition: two sixteenths in a row at 400 are 27 a second, 13 a hand
    expect(made).toEqual({ exercise: null, said: null, notes: [{ fact: 'pass-too-fast' }] });
  });
});

describe('what is written beside a rhythm', () => {
  const [written] = lessonFrom(
    'tempo: { start: 60, goal: 112 }\ngroove: { hihat-foot: . x . x }\nvocabulary: [x..., x.x.]\n' +
      "exercises: [{ pattern: { snare: 'x.x. x... x.x. x...', tom-high: '. ..x. . ..x.' }, " +
      'sticking: { snare: RLRLRL, tom-high: LR }, dynamics: p . . <, above: softly }]',
  ).exercises;
  const handsIn = (of: Exercise | null) =>
    Object.fromEntries(
      of?.parts.map(({ voice }, part) => [voice, handsOf(of, part)?.join('') ?? null]) ?? [],
    );
  const made = (pass: Pass) => arrange(drum, written as Exercise, pass, 1).exercise;

  it('[CO2900] goes with the strokes: hands, other voices, dynamics and texts', () => {
    // definition: 1 and 3 of the snare go below, their hands with them; a foot has none
    const below = made({ pass: 'share', rule: 'beats-below', lower: 'bass' });
    expect(handsIn(below)).toEqual({ snare: 'LR', bass: null, 'tom-high': 'LR' });
    expect(textsOf(below)?.[2]).toBe(textsOf(written as Exercise)?.[1]);
    const onTom = made({ pass: 'share', rule: 'beats-below', lower: 'tom-high' });
    // definition: 1, 2 L, 3, 4 R of the tom among the snare's R R R R on the beats
    expect(textsOf(onTom)).toEqual(['snare: ..x. .... ..x. ....', 'tom-high: x... x.x. x... x.x.']);
    expect(handsIn(onTom)).toEqual({ snare: 'LR', 'tom-high': 'RRLLLR' });
    const over = made({ pass: 'kit', rule: 'by-beat' });
    expect(over?.parts.map(({ voice }) => voice)).toContain('tom-high');
    expect(placesOf(drum, over as Exercise)).toEqual(placesOf(drum, written as Exercise));
    expect(Object.values(handsIn(over)).join('').length).toBe(8);
    expect([below?.dynamics, over?.above]).toEqual([written?.dynamics, written?.above]);
  });

  it('[CO2900] is said of every time through a phrase that ends in a fill', () => {
    const phrase = made({ pass: 'fill', beats: 1, bars: 4 });
    expect(phrase?.above).toEqual(['softly', 'softly', 'softly', 'softly']);
    expect(phrase?.dynamics?.map(({ bar }) => bar)).toEqual([0, 0, 1, 1, 2, 2, 3, 3]);
    // definition: the tom strikes twice a bar, in the last one once before the fill
    expect(handsIn(phrase)['tom-high']?.startsWith('LRLRLRL')).toBe(true);
    const repeated = { ...(written as Exercise), repeats: [{ from: 0, to: 1, times: 2, endings: [] }] };
    const out = arrange(drum, repeated, { pass: 'fill', beats: 1, bars: 4 }, 1).exercise;
    expect([out?.repeats, out?.parts[0]?.pattern.bars.length]).toEqual([undefined, 4]);
  });
});

it('[CO5101] what one of several passes could not do is said of that pass', () => {
  const accents = { pass: 'accents', rule: 'off-the-beat' } as const;
  const fill = { pass: 'fill', beats: 1, bars: 4 } as const;
  const quarters = exerciseOf(swing, 'x.. x.. x.. x..');
  // definition: quarters have no stroke off the beat
  const none = { fact: 'pass-no-stroke' };
  expect(arrangeAll(swing, quarters, [accents, fill], 1).notes).toEqual([
    { fact: 'pass-of', pass: { fact: 'of-accents' }, note: none },
  ]);
  expect(arrangeAll(swing, quarters, [accents], 1).notes).toEqual([none]);
});
