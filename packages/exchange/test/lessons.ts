/** Lessons made up for the tests: by hand, and at random with every meter, subdivision and mark. */
import {
  Bpm,
  barsOf,
  type Cell,
  cell,
  type Exercise,
  type ExercisePart,
  type Feel,
  type Form,
  type Lesson,
  MARKS,
  type Mark,
  type Meter,
  marksFor,
  meter,
  type Pattern,
  parsePattern,
  SUBDIVISIONS,
  struckSlots,
  VOICE_FACTS,
  VOICES,
  type Voice,
} from '@shedbook/core';
import fc from 'fast-check';

const BALANCE: Readonly<Partial<Record<Voice, number>>> = {
  snare: -4,
  sidestick: -4,
  hihat: -2,
  'hihat-foot': -8,
  bass: -14,
};

const ALL_VOICES: Lesson['layers'] = [{ joins: [...VOICES, 'pattern'] }];

/** `bars` bars of the pattern, once, after `countInBars` bars of click. */
export function patternForm(bars: number, countInBars = 0): Form {
  return { name: 'test', sections: [{ play: 'pattern', bars, ending: null }], repeat: 1, countInBars };
}

/** A lesson with the given parts of it, everything else plain. */
export function lessonOf(parts: Partial<Lesson>): Lesson {
  return {
    version: 1,
    id: null,
    from: null,
    title: 'First swing',
    practicePage: null,
    heading: null,
    text: null,
    sections: [],
    by: 'Oda Lindqvist-Reyes',
    meter: meter('4/4'),
    tempo: { startBpm: Bpm(120), goalBpm: Bpm(160), stepBpm: Bpm(10) },
    feel: { kind: 'even' },
    setUp: 'right-handed',
    playedWith: 'sticks',
    groove: [],
    lead: 'ride',
    comping: 'snare',
    balance: Object.fromEntries(VOICES.map((v) => [v, BALANCE[v] ?? 0])) as Lesson['balance'],
    exerciseBalance: Object.fromEntries(VOICES.map((v) => [v, BALANCE[v] ?? 0])) as Lesson['balance'],
    limbs: Object.fromEntries(VOICES.map((v) => [v, VOICE_FACTS[v].limb])) as Lesson['limbs'],
    how: {},
    vocabulary: [],
    exercises: [],
    forms: [patternForm(1)],
    layers: ALL_VOICES,
    sheet: {
      paper: 'A4',
      counts: false,
      stickings: true,
      legend: true,
      tickBoxes: true,
      staff: 'full',
      numbering: 'through',
      perPage: null,
      scale: 1,
    },
    compose: { limits: {}, weights: {} } as Lesson['compose'],
    ...parts,
  };
}

/** An exercise with a snare part. */
export function exerciseOn(voice: Voice, text: string, number = 1): Exercise {
  return { number, name: null, parts: [{ voice, pattern: parsePattern(text) }], sticking: null, notes: null };
}

/** Ride, hi-hat foot and feathered bass drum under comping on the snare. */
export function swingLesson(): Lesson {
  return lessonOf({
    feel: { kind: 'ratio', ratio: 2, of: 'eighths' },
    groove: [
      { voice: 'ride', pattern: parsePattern('x.. x.x x.. x.x') },
      { voice: 'hihat-foot', pattern: parsePattern('. x . x') },
      { voice: 'bass', pattern: parsePattern('g g g g') },
    ],
    exercises: [exerciseOn('snare', '..x ... X.. ...', 1), exerciseOn('snare', 'f.. ..g ... d.x', 2)],
  });
}

const METERS = ['4/4', '3/4', '5/4', '2/4', '2/2', '6/8', '9/8', '12/8', '7/8', '2+2+3/8', '3+2/4', '6/16'];
const FEELS: readonly Feel[] = [
  { kind: 'even' },
  { kind: 'ratio', ratio: 2, of: 'eighths' },
  { kind: 'ratio', ratio: 1.8, of: 'eighths' },
  { kind: 'ratio', ratio: 1.5, of: 'sixteenths' },
  { kind: 'by tempo' },
];

function cells(voice: Voice) {
  const marks = marksFor(voice, MARKS);
  const mark = fc.oneof({ weight: 2, arbitrary: fc.constant<Mark>('.') }, fc.constantFrom(...marks));
  return fc
    .constantFrom(...SUBDIVISIONS)
    .chain((slots) => fc.array(mark, { minLength: slots, maxLength: slots }))
    .map((each) => cell(each.join('')));
}

function patterns(voice: Voice, of: Meter, bars: number): fc.Arbitrary<Pattern> {
  const beats = of.beats.length;
  const bar = fc.array(cells(voice), { minLength: beats, maxLength: beats });
  return fc.array(bar, { minLength: bars, maxLength: bars }).map((rows) => ({ bars: rows }));
}

function stickings(pattern: Pattern) {
  const count = pattern.bars.flat().reduce((sum, each) => sum + struckSlots(each).length, 0);
  return fc.option(
    fc.array(fc.constantFrom('R' as const, 'L' as const, 'B' as const), {
      minLength: count,
      maxLength: count,
    }),
  );
}

function exercises(of: Meter, number: number): fc.Arbitrary<Exercise> {
  return fc
    .record({ bars: fc.integer({ min: 1, max: 2 }), withBass: fc.boolean(), name: fc.option(fc.string()) })
    .chain(({ bars, withBass, name }) =>
      fc.tuple(patterns('snare', of, bars), patterns('bass', of, bars)).chain(([snare, bass]) =>
        stickings(snare).map((sticking) => ({
          number,
          name,
          parts: [
            { voice: 'snare' as const, pattern: snare },
            ...(withBass ? [{ voice: 'bass' as const, pattern: bass }] : []),
          ],
          sticking,
          notes: null,
        })),
      ),
    );
}

/** Any lesson: meter, feel, groove and one to three exercises. */
export const anyLesson: fc.Arbitrary<Lesson> = fc
  .record({
    of: fc.constantFrom(...METERS).map(meter),
    feel: fc.constantFrom(...FEELS),
    startBpm: fc.integer({ min: 40, max: 100 }),
    voices: fc.subarray(['ride', 'hihat', 'hihat-foot', 'bass', 'tom-low', 'crash'] as const),
    count: fc.integer({ min: 1, max: 3 }),
    title: fc.string(),
  })
  .chain(({ of, feel, startBpm, voices, count, title }) =>
    fc
      .tuple(
        fc.tuple(...voices.map((voice) => patterns(voice, of, 1).map((pattern) => ({ voice, pattern })))),
        fc.tuple(...Array.from({ length: count }, (_, i) => exercises(of, i + 1))),
      )
      .map(([groove, list]) =>
        lessonOf({
          title,
          meter: of,
          feel,
          tempo: { startBpm: Bpm(startBpm), goalBpm: Bpm(startBpm), stepBpm: Bpm(5) },
          groove,
          exercises: list,
        }),
      ),
  );

/** The form that plays an exercise's pattern once. */
export function onceThrough(exercise: Exercise, countInBars = 0): Form {
  return patternForm(barsOf(exercise), countInBars);
}

function plainCell(of: Cell): Cell {
  return cell(of.text.replaceAll(/[fdb]/g, 'x').replaceAll(/[FDB]/g, 'X'));
}

function plainPart<T extends ExercisePart>(part: T): T {
  return { ...part, pattern: { bars: part.pattern.bars.map((bar) => bar.map(plainCell)) } };
}

/** The lesson with a plain stroke for every flam, drag, buzz and bell. */
export function withoutOrnaments(lesson: Lesson): Lesson {
  return {
    ...lesson,
    groove: lesson.groove.map(plainPart),
    exercises: lesson.exercises.map((each) => ({ ...each, parts: each.parts.map(plainPart) })),
  };
}
