/** Lessons at random, for property tests: any meter, mixed subdivisions, every mark that a voice can play. */

import {
  type Cell,
  cell,
  formatPattern,
  type Lesson,
  MARKS,
  type Meter,
  marksFor,
  meter,
  type Pattern,
  PLAYED_SUBDIVISIONS,
  parseLesson,
  released,
  SUBDIVISIONS,
  type Subdivision,
  VOICES,
  type Voice,
} from '@shedbook/core';
import fc from 'fast-check';

const METERS = ['4/4', '3/4', '5/4', '2/4', '2/2', '6/8', '9/8', '12/8', '7/8', '2+2+3/8', '3/8'] as const;

/** A meter of common practice. */
export const arbitraryMeter: fc.Arbitrary<Meter> = fc.constantFrom(...METERS).map(meter);

/** A cell that a voice can play, of one of some numbers of slots. */
export function arbitraryCell(
  voice: Voice,
  subdivisions: readonly Subdivision[] = SUBDIVISIONS,
): fc.Arbitrary<Cell> {
  const mark = fc.oneof(fc.constant('.' as const), fc.constantFrom(...marksFor(voice, MARKS)));
  return fc
    .constantFrom(...subdivisions)
    .chain((slots) => fc.array(mark, { minLength: slots, maxLength: slots }))
    .map((marks) => cell(marks.join('')));
}

/** A pattern for a voice. */
export function arbitraryPattern(
  voice: Voice,
  of: Meter,
  bars = 1,
  subdivisions: readonly Subdivision[] = SUBDIVISIONS,
): fc.Arbitrary<Pattern> {
  const beats = of.beats.length;
  const bar = fc.array(arbitraryCell(voice, subdivisions), { minLength: beats, maxLength: beats });
  return fc.array(bar, { minLength: bars, maxLength: bars }).map((all) => ({ bars: all }));
}

/** Silent slots, some of them held where something goes on before them: a roll, a sweep, over beats and bar lines. */
function holdSome(pattern: Pattern, holds: readonly boolean[]): Pattern {
  let slot = 0;
  const hold = ({ marks }: Cell) => {
    const wanted = marks.map((mark) => (mark === '.' && holds[slot++ % holds.length] ? '~' : mark));
    return cell(wanted.join(''));
  };
  return { bars: released(pattern.bars.map((bar) => bar.map(hold))) };
}

/** A pattern for a voice in which rolls and sweeps are held. */
export function arbitraryHeldPattern(voice: Voice, of: Meter, bars = 1): fc.Arbitrary<Pattern> {
  const holds = fc.array(fc.boolean(), { minLength: 1, maxLength: 9 });
  return fc.tuple(arbitraryPattern(voice, of, bars), holds).map(([pattern, some]) => holdSome(pattern, some));
}

/** Grooves that one pair of hands plays: fives and sevens of the lead hand beside its threes would ask it to be in two places. */
function arbitraryGroove(of: Meter): fc.Arbitrary<Readonly<Record<string, string>>> {
  return fc
    .subarray(['ride', 'hihat', 'hihat-foot', 'bass', 'tom-low'] as Voice[], { minLength: 1 })
    .chain((voices) =>
      fc
        .tuple(...voices.map((voice) => arbitraryPattern(voice, of, 1, PLAYED_SUBDIVISIONS)))
        .map((patterns) =>
          Object.fromEntries(voices.map((voice, i) => [voice, formatPattern(patterns[i] as Pattern)])),
        ),
    );
}

/** Dynamics of some bars: a sign or none for each beat. */
function arbitraryDynamics(beats: number, bars: number): fc.Arbitrary<string> {
  const sign = fc.constantFrom('.', '.', '.', 'p', 'mf', 'ff', '<', '>', '!', 'pp<', 'f>');
  const bar = fc.array(sign, { minLength: 1, maxLength: beats }).map((signs) => signs.join(' '));
  return fc.array(bar, { minLength: 1, maxLength: bars }).map((all) => all.join(' | '));
}

/** How a limb plays while an exercise does: nothing said, or one of these. */
const HOWS: readonly unknown[] = [
  undefined,
  'tip, centre',
  'full stroke, from the wrist',
  { ride: 'bell', snare: 'edge' },
  { bass: 'heel up', 'tom-low': 'low stroke' },
];

/** How an exercise is shown before it is played: not at all, or one of these. */
const EXAMPLES: readonly unknown[] = [undefined, undefined, true, 3, { times: 2, form: 'Four and two' }];

/** Files of the teacher's own beside something: none, or one of these. */
const MEDIA: readonly unknown[] = [
  undefined,
  undefined,
  'pictures/grip.png',
  ['slow.mp3', { file: 'how it looks.mp4', says: 'The stroke, from the side' }],
];

/** How the limbs of a lesson or a section play: nothing said, or one of these. */
const HOWS_BY_VOICE: readonly unknown[] = [
  undefined,
  { bass: 'heel down', 'hihat-foot': 'heel up' },
  { ride: 'tip, bow, half stroke', bass: 'the knee leads' },
];

/** One of some things, by what is there already: nothing else is drawn at random for it. */
function byText<T>(all: readonly T[], text: string): T {
  return all[text.length % all.length] as T;
}

/** What may be said of an exercise beside its notes. */
function arbitraryExpression(of: Meter, bars: number) {
  const beats = of.beats.length;
  const texts = fc.array(fc.constantFrom('', 'softly', 'let it ring'), { minLength: 1, maxLength: bars });
  const silent = fc.constantFrom('other foot', 'lead hand + bass', 'hihat');
  const joined = texts.map((all) => all.join(' | ')).filter((text) => /[a-z]/.test(text));
  const place = { beat: fc.integer({ min: 1, max: beats }), bar: fc.integer({ min: 1, max: bars }) };
  return fc.record(
    {
      dynamics: arbitraryDynamics(beats, bars),
      above: joined,
      below: joined,
      fill: fc.oneof(place.beat, fc.record({ ...place, silences: silent }, { requiredKeys: ['bar'] })),
      rests: silent,
    },
    { requiredKeys: [] },
  );
}

/** Exercises of four bars that are repeated in every way there is. */
function arbitraryRepeated(of: Meter): fc.Arbitrary<unknown> {
  const bar = arbitraryPattern('snare', of).map(formatPattern);
  return fc
    .tuple(bar, bar, bar, bar, fc.integer({ min: 2, max: 4 }))
    .chain(([a, b, c, d, times]) =>
      fc.constantFrom<unknown>(
        { pattern: `${a} | ${b}`, repeats: '1-2' },
        { pattern: [a, b, c, d].join(' | '), repeats: { bars: '1-2', times, endings: [3, 4] } },
        { pattern: [a, b, c, d].join(' | '), repeats: [1, { bars: '2-4', times }] },
        { pattern: [a, a, b, b].join(' | '), barRepeats: [2, 4], repeats: '1-2' },
        { pattern: [a, b, a, b].join(' | '), barRepeats: '3-4' },
      ),
    );
}

function arbitraryExercise(of: Meter): fc.Arbitrary<unknown> {
  return fc.oneof(
    { weight: 5, arbitrary: arbitraryPlain(of) },
    { weight: 1, arbitrary: arbitraryRepeated(of) },
  );
}

/** A pattern of the snare, or the same strokes of one hand on a tom: its hands are those of a voice that is not the first. */
function playedBy(text: string): object {
  const strokes = text.replaceAll(/[^a-z]/gi, '').length;
  if (strokes === 0 || text.length % 3 > 0) return { pattern: text };
  const hands = Array.from({ length: strokes }, () => 'L').join(' ');
  const snare = text.replaceAll(/[a-z]/gi, '.');
  return {
    pattern: { snare, 'tom-high': text.replaceAll(/[a-z]/gi, 'x') },
    sticking: { 'tom-high': hands },
  };
}

function arbitraryPlain(of: Meter): fc.Arbitrary<unknown> {
  return fc.integer({ min: 1, max: 2 }).chain((bars) => {
    const pattern = arbitraryPattern('snare', of, bars).map(formatPattern);
    const said = arbitraryExpression(of, bars);
    return fc.oneof(
      pattern,
      fc.tuple(pattern, said).map(([text, rest]) => ({
        ...playedBy(text),
        ...rest,
        how: byText(HOWS, text),
        example: byText(EXAMPLES, text),
        media: byText(MEDIA, text),
      })),
    );
  });
}

function arbitraryExercises(of: Meter): fc.Arbitrary<readonly unknown[]> {
  return fc.array(arbitraryExercise(of), { minLength: 1, maxLength: 3 });
}

const FEELS = ['even', 'triplet', '1.5:1', '3:1', 'by tempo', '1.6:1 sixteenths'] as const;

const arbitraryForms = fc.constantFrom(
  {},
  { forms: { 'once and rest': { sections: [{ pattern: 1 }, { rest: 1 }], countIn: 0 } } },
  {
    forms: {
      thinning: {
        sections: [
          { pattern: 1, click: 'all' },
          { rest: 1, click: [1] },
          { time: 1, click: 'none' },
        ],
      },
    },
  },
  { forms: { phrase: { sections: [{ pattern: 3, ending: 'rimshot + crash' }, { time: 1 }], repeat: 2 } } },
);

/** The text of a lesson file (as JSON, which is YAML too). */
export const arbitraryLessonText: fc.Arbitrary<string> = arbitraryMeter.chain((of) =>
  fc
    .record({
      groove: arbitraryGroove(of),
      exercises: arbitraryExercises(of),
      feel: fc.constantFrom(...FEELS),
      tempo: fc.integer({ min: 40, max: 280 }),
      setUp: fc.constantFrom('right-handed', 'left-handed'),
      forms: arbitraryForms,
    })
    .map(({ forms, ...rest }) => {
      const how = byText(HOWS_BY_VOICE, JSON.stringify(rest.exercises));
      return JSON.stringify({ title: 'At random', meter: of.text, ...rest, ...forms, how });
    }),
);

function readRandom(text: string): Lesson {
  const { lesson, problems } = parseLesson(text, 'random.lesson.yaml');
  if (!lesson) throw new Error(`a random lesson does not read: ${JSON.stringify(problems)}\n${text}`);
  return lesson;
}

/** A lesson that reads without an error. */
export const arbitraryLesson: fc.Arbitrary<Lesson> = arbitraryLessonText.map(readRandom);

const arbitrarySection = arbitraryMeter.chain((of) =>
  fc
    .record(
      {
        heading: fc.constantFrom('The ride', 'Feathering', 'Both feet'),
        text: fc.constant('So *softly* that only you know.\n\n![The grip](pictures/grip.png)\n'),
        media: fc.constantFrom(...MEDIA.slice(2)),
        meter: fc.constant(of.text),
        groove: arbitraryGroove(of),
        exercises: arbitraryExercises(of),
        feel: fc.constantFrom(...FEELS),
        tempo: fc.integer({ min: 40, max: 280 }),
        balance: fc.constant({ snare: -7 }),
        forms: fc.constant({ answer: { sections: [{ rest: 1 }, { pattern: 1 }] } }),
      },
      { requiredKeys: ['meter', 'groove', 'exercises'] },
    )
    .map((section) => ({ ...section, how: byText(HOWS_BY_VOICE, JSON.stringify(section.groove)) })),
);

/** A lesson of several sections, some in meters and grooves of their own, some with exercises before the first. */
export const arbitraryDividedLesson: fc.Arbitrary<Lesson> = fc
  .tuple(arbitraryLessonText, fc.array(arbitrarySection, { minLength: 1, maxLength: 3 }), fc.boolean())
  .map(([text, sections, isOpen]) => {
    const { exercises, ...rest } = JSON.parse(text) as Record<string, unknown>;
    const before = sections.find(({ heading }) => heading !== undefined)?.heading;
    const inside = [...sections, { heading: 'As in the lesson', before, exercises }];
    return JSON.stringify({ ...rest, ...(isOpen ? { exercises } : {}), sections: inside });
  })
  .map(readRandom);

/** Any voice of the drum set. */
export const arbitraryVoice: fc.Arbitrary<Voice> = fc.constantFrom(...VOICES);
