import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arbitraryLesson } from '../../../../internal/testing/arbitrary-lesson.ts';
import { BROKEN_LESSONS } from '../../../../internal/testing/broken-lessons.data.ts';
import { keptSample } from '../../../../internal/testing/kept-samples.ts';
import { FILE, problemsOf, read } from '../../test/reading.ts';
import { perform } from '../groove/perform.ts';
import { VOICES } from '../kit/voice.ts';
import type { Lesson } from '../lesson/lesson.ts';
import { formatPattern } from '../rhythm/pattern.ts';
import { editLesson, setExercises } from './edit.ts';
import { migrate } from './migrate.ts';
import { nearest } from './nearest.ts';
import { parseLesson } from './parse.ts';
import { printLesson } from './print.ts';
import { MOST_PROBLEMS } from './problem.ts';
import { formatFeel, readFeel } from './read-feel.ts';
import { LESSON_VERSION } from './schema.ts';

const MINIMAL = `title: First swing
tempo: 80
vocabulary: [..., ..x, x.., x.x]
exercises:
  - x.. ..x x.x ...
`;

const COMMENTED = `# Kept at the top
title: First swing   # and here

# above the exercises
exercises:
  # easy ones
  - ..x ... ..x ...
  - x.. ..x ... x.x   # Bram likes it
  - {pattern: "x.. ..x x.x ...", sticking: L L L R}

# a last word
tempo: 80
`;

describe('reading', () => {
  it('[LE1] reads five lines and fills in the rest', () => {
    const lesson = read(MINIMAL);
    expect(lesson.meter.text).toBe('4/4');
    expect(lesson.groove.map((part) => [part.voice, formatPattern(part.pattern)])).toEqual([
      // common practice: the swing ride with its skip notes after 2 and 4, hi-hat foot on 2 and 4
      ['ride', 'x x.x x x.x'],
      ['hihat-foot', '. x . x'],
      ['bass', 'x x x x'],
    ]);
    expect(lesson.tempo).toEqual({ startBpm: 80, goalBpm: 120, stepBpm: 8 });
    expect(lesson.layers.map((layer) => layer.joins)).toEqual([
      ['ride'],
      ['hihat-foot'],
      ['bass'],
      ['pattern'],
    ]);
    expect(lesson.forms.map((form) => form.name)).toEqual(['loop', 'four and two', 'time']);
    expect(lesson.lead).toBe('ride');
    expect(lesson.comping).toBe('snare');
  });

  it('[LE12] keeps the groove in the order of the file; its first voice leads', () => {
    const lesson = read('title: T\ngroove: {hihat: x x x x, bass: x . x ., ride: x x x x}\n');
    expect(lesson.groove.map((part) => part.voice)).toEqual(['hihat', 'bass', 'ride']);
    expect(lesson.lead).toBe('hihat');
    expect(read('title: T\ngroove: {bass: x . x ., hihat: x x x x}\n').lead).toBe('bass');
  });

  it('[LE2] reads back every lesson that it prints', () => {
    fc.assert(
      fc.property(arbitraryLesson, (lesson) => {
        expect(read(printLesson(lesson))).toEqual(lesson);
      }),
      { numRuns: 60 },
    );
    expect(read(printLesson(read(COMMENTED)))).toEqual(read(COMMENTED));
  });

  it('[LE2] reads back every feel that it prints', () => {
    for (const text of ['even', 'by tempo', 'triplet', '1.8:1', '1.5:1 sixteenths']) {
      expect(formatFeel(readFeel(text) ?? { kind: 'even' })).toBe(text);
    }
    expect(readFeel('3:2')).toEqual({ kind: 'ratio', ratio: 1.5, of: 'eighths' });
  });

  it.each(BROKEN_LESSONS)('[LE3][LE4] says what is wrong with $name', ({ text, problems }) => {
    expect(problemsOf(text)).toEqual(problems);
    expect(parseLesson(text, FILE).lesson).toBeNull();
  });

  it('[LE3] finds each of many problems once, at its own line and column', () => {
    // definition: one fault a line, each in a field of its own; the column is that of the value
    const lines: readonly (readonly [string, number])[] = [
      ['by: []', 5],
      ['meter: five', 8],
      ['tempo: fast', 8],
      ['feel: swingy', 7],
      ['setUp: lefthanded', 8],
      ['lead: kazoo', 7],
      ['comping: 3', 10],
      ['vocabulary: 3', 13],
      ['exercises: 3', 12],
      ['forms: 3', 8],
      ['layers: 3', 9],
      ['sheet: 3', 8],
      ['limbs: 3', 8],
    ];
    fc.assert(
      fc.property(fc.shuffledSubarray([...lines], { minLength: 1 }), (chosen) => {
        const { lesson, problems } = parseLesson(
          `title: T\n${chosen.map(([line]) => `${line}\n`).join('')}`,
          FILE,
        );
        const found = problems.map(({ line, column, path }) => [line, column, path]);
        const expected = chosen.map(([text, column], i) => [i + 2, column, text.split(':')[0]]);
        expect(found.toSorted()).toEqual(expected.toSorted());
        expect(lesson).toBeNull();
      }),
      { numRuns: 200, seed: 3 },
    );
  });

  it('[LE4] knows the nearest word, and when none is near', () => {
    const known = ['exercises', 'tempo', 'tom-high'];
    expect(nearest('excercise', known)).toBe('exercises');
    expect(nearest('tepmo', known)).toBe('tempo');
    expect(nearest('Tom High', known)).toBe('tom-high');
    expect(nearest('balalaika', known)).toBeNull();
    // source: common practice of the trade
    expect(nearest('kick', VOICES)).toBe('bass');
    expect(nearest('Closed Hi-Hat', VOICES)).toBe('hihat');
    expect(nearest('cross-stick', VOICES)).toBe('sidestick');
    expect(nearest('bpm', known)).toBe('tempo');
    // what a lesson does not have is not meant
    expect(nearest('kick', ['ride'])).toBeNull();
    expect(nearest('constructor', VOICES)).toBeNull();
  });

  it('[LE8] warns of what is doubtful', () => {
    expect(problemsOf(`${MINIMAL}  - x.. ..x x.x ...\n`)).toEqual([
      '6:5: warning: exercises[2]: found the same pattern again, expected each pattern once; it is exercise 1 already',
    ]);
    expect(problemsOf(`${MINIMAL}  - x.. xx. x.x xx.\n`)).toEqual([
      '6:9: warning: exercises[2]: found cell "xx.", expected a cell of the vocabulary: ... ..x x.. x.x (add it to the vocabulary if it is meant)',
    ]);
    // definition: a fill on 4 is not made of the vocabulary; the beat before it is
    expect(problemsOf(`${MINIMAL}  - { pattern: x.. ... x.x xxx, fill: 4 }\n`)).toEqual([]);
    expect(problemsOf(`${MINIMAL}  - { pattern: x.. ... xx. xxx, fill: 4 }\n`)).toHaveLength(1);
    expect(problemsOf('title: T\nvocabulary: [x.., ..x, x..]\n')[0]).toContain('warning: vocabulary[3]');
    expect(problemsOf('title: T\nexercises:\n  - {pattern: {snare: x x x x, tom-high: x . . .}}\n')).toEqual([
      '3:5: warning: exercises[1]: found snare and high tom for the other hand at bar 1, beat 1, place 1, expected one stroke at a time for a limb (write a sticking, or name the limb of a voice under "limbs")',
    ]);
    expect(read(`${MINIMAL}  - x.. xx. x.x xx.\n`).exercises).toHaveLength(2);
  });

  it('[LE9] counts levels from the lead voice, in dB or words', () => {
    const lesson = read(`title: T
groove:
  ride: {pattern: x x.x x x.x, level: mf}
  bass: {pattern: x x x x, level: feathered}
  hihat-foot: {pattern: . x . x, level: -10}
balance: {hihat-foot: p}
`);
    // definition: mf is -4, feathered -18, p -13 on the one scale; the lead's own level is 0
    expect(lesson.balance.ride).toBe(0);
    expect(lesson.balance.bass).toBe(-14);
    expect(lesson.balance['hihat-foot']).toBe(-9);
  });

  it('[LE9] gives a voice another level where an exercise plays it', () => {
    const lesson = read(`title: T
groove: {ride: {pattern: x x.x x x.x, level: mf}, bass: {pattern: x x x x, level: feathered}}
exerciseBalance: {bass: mp}
exercises: [{pattern: {snare: x.. ... ... ..., bass: ... x.. ... ...}}]
`);
    const form = lesson.forms.find(({ name }) => name === 'loop');
    if (!form) throw new Error('no loop');
    const bassDb = (exercise: number | null) =>
      perform(lesson, { exercise, form }).strokes.find(({ voice }) => voice === 'bass')?.levelDb;
    // definition: mf is -4 and the lead's 0; feathered is -18, mp -8
    expect(bassDb(null)).toBe(-14);
    expect(lesson.exerciseBalance.bass).toBe(-4);
    const printed = read(printLesson(lesson));
    expect(printed.exerciseBalance).toEqual(lesson.exerciseBalance);
    // definition: the exercise's bass drum is as loud in time alone as the groove's, in the pattern as it says
    expect(bassDb(1)).toBe(-4);
  });

  it('[LE30] keeps what a person marks to stay', () => {
    const lesson = read(
      'title: T\nexercises: [x x x x, {pattern: x . x ., keep: true}, {pattern: x x . ., keep: false}]\n',
    );
    const kept = (of: Lesson) => of.exercises.flatMap(({ keep, number }) => (keep ? [number] : []));
    expect(kept(lesson)).toEqual([2]);
    expect(kept(read(printLesson(lesson)))).toEqual([2]);
    expect(setExercises('title: T\n', lesson.exercises, 'snare')).toContain(
      'pattern: x . x .\n    keep: true',
    );
  });

  it('[LE10] takes an accented cell for the rhythm that the vocabulary has', () => {
    const warned = (text: string) =>
      parseLesson(`title: T\nvocabulary: [x.., ...]\nexercises: ['${text}']\n`, FILE).problems;
    expect(warned('X.. ... x.. ...')).toEqual([]);
    // definition: a ghost note is not the stroke that the vocabulary has
    expect(warned('g.. ... x.. ...')).toHaveLength(1);
  });

  it('[LE10] knows cells by name', () => {
    const lesson = read('title: T\nvocabulary: [last triplet, {cell: x.x, name: the skip}, Rest]\n');
    expect(lesson.vocabulary.map((each) => [each.cell.text, each.name])).toEqual([
      ['..x', 'last triplet'],
      ['x.x', 'the skip'],
      ['.', 'Rest'],
    ]);
  });

  it('[LE11] reads a lesson with 1,000 faulty exercises and 5,000 unknown keys in seconds', () => {
    const many = (line: (index: number) => string, length = 5000) =>
      Array.from({ length }, (_, i) => line(i)).join('');
    const faulty = many(() => '  - 7\n', 1000);
    const text = `title: T\nexercises:\n${faulty}${many((index) => `key ${index}: 1\n`)}`;
    const start = process.cpuUsage();
    // definition: as many exercises as a lesson has room for, and every unknown key; as many are told as anybody mends
    expect(parseLesson(text, FILE).problems).toHaveLength(MOST_PROBLEMS);
    expect(parseLesson(`${many((index) => `key ${index}: 1\n`)}key 1: 2`, FILE).problems).toHaveLength(1);
    const { user, system } = process.cpuUsage(start);
    // measured: 1 s of one core; four minutes when each fault made a copy of the lesson without itself
    expect((user + system) / 1e6).toBeLessThan(8);
  });

  it('[LE11] never throws, whatever the text', () => {
    const fragments = fc.constantFrom(
      'title',
      ': ',
      '\n',
      '- ',
      '  ',
      '[',
      ']',
      '{',
      '}',
      '"',
      'x.x',
      '|',
      '&a',
      '*a',
      '#',
      'exercises',
      'forms',
      'tempo',
      '80',
      '\t',
      '?',
      '!!',
      '---',
      '<<',
    );
    fc.assert(
      fc.property(fc.array(fragments, { maxLength: 25 }), (parts) => {
        const { lesson, problems } = parseLesson(parts.join(''), FILE);
        expect(lesson !== null || problems.length > 0).toBe(true);
        for (const problem of problems) expect(problem.line * problem.column).toBeGreaterThan(0);
      }),
      { numRuns: 500 },
    );
    fc.assert(
      fc.property(fc.json(), (json) => {
        expect(parseLesson(json, FILE).problems.length).toBeGreaterThan(0);
      }),
    );
  });
});

describe('versions', () => {
  const steps = [
    { from: 1, up: (data: Readonly<Record<string, unknown>>) => ({ ...data, title: data.name }) },
    { from: 2, up: (data: Readonly<Record<string, unknown>>) => ({ ...data, tempo: { start: data.tempo } }) },
  ];

  it('[LE7] migrates step by step and leaves what it is given alone', () => {
    const old = { version: 1, name: 'First swing', tempo: 80 };
    expect(migrate(old, 3, steps)).toMatchObject({ version: 3, title: 'First swing', tempo: { start: 80 } });
    expect(migrate({ ...old, version: 2 }, 3, steps)).not.toHaveProperty('title');
    expect(old).toEqual({ version: 1, name: 'First swing', tempo: 80 });
    expect(() => migrate({ version: 0 }, 3, steps)).toThrow(RangeError);
  });

  it.each(Array.from({ length: LESSON_VERSION }, (_, index) => index + 1))(
    '[LE7] reads a lesson of version %i',
    (version) => {
      const { lesson, problems } = parseLesson(keptSample(`lesson-${version}.lesson.yaml`), FILE);
      expect(problems).toEqual([]);
      // definition: what stands in the file, internal/fixtures/versions/SOURCE.md
      expect(lesson).toMatchObject({
        title: `Everything that version ${version} has`,
        tempo: { startBpm: 72, goalBpm: 120, stepBpm: 8 },
        exercises: [{ number: 1 }, { number: 2, name: 'Answer', notes: 'soft at first' }, { number: 3 }],
      });
      expect(parseLesson(printLesson(lesson as Lesson), FILE).lesson).toEqual(lesson);
    },
  );

  it('[LE7] refuses a later version, and one before the first', () => {
    expect(problemsOf('version: 3\ntitle: T\n')[0]).toContain('found version 3, expected version 2');
    for (const version of ['0', '-3']) {
      expect(problemsOf(`version: ${version}\ntitle: T\n`)[0]).toContain(
        `found version ${version}, expected version 2`,
      );
    }
    for (const version of ['0.5', '"0"', 'first', '[]']) {
      expect(problemsOf(`version: ${version}\ntitle: T\n`)[0]).toContain('expected a version number');
    }
  });
});

describe('editing', () => {
  it('[LE5] changes one key and nothing else', () => {
    const edited = editLesson(COMMENTED, ['tempo'], 96);
    expect(edited).toBe(COMMENTED.replace('tempo: 80', 'tempo: 96'));
    expect(editLesson(COMMENTED, ['by'], 'Oda Lindqvist-Reyes')).toBe(
      `${COMMENTED}by: Oda Lindqvist-Reyes\n`,
    );
    expect(editLesson(COMMENTED, ['tempo'], undefined)).toBe(COMMENTED.replace('tempo: 80\n', ''));
    expect(editLesson(COMMENTED, ['title'], 'Second')).toContain('title: Second # and here\n');
    expect(() => editLesson('title: "x', ['tempo'], 80)).toThrow(SyntaxError);
  });

  it('[LE5] edits inside a key and keeps the comments there', () => {
    const edited = editLesson(COMMENTED, ['exercises', 0], '... ..x ... ..x');
    expect(edited).toContain('# easy ones\n  - ... ..x ... ..x\n');
    expect(edited).toContain('# Bram likes it');
    expect(edited.startsWith('# Kept at the top\ntitle: First swing   # and here\n\n# above')).toBe(true);
    expect(edited.endsWith('\n\n# a last word\ntempo: 80\n')).toBe(true);
  });

  it('[LE6] keeps the comments of exercises that stay', () => {
    const { exercises } = read(COMMENTED);
    const reversed = setExercises(COMMENTED, exercises.toReversed(), 'snare');
    expect(reversed).toContain('- x.. ..x ... x.x # Bram likes it');
    const patterns = (lesson: Lesson) =>
      lesson.exercises.map((each) => formatPattern(each.parts[0]?.pattern ?? { bars: [] }));
    expect(patterns(read(reversed))).toEqual(patterns(read(COMMENTED)).toReversed());
    expect(read(reversed).exercises[0]?.sticking).toEqual(['L', 'L', 'L', 'R']);
  });

  it('[LE2][LE5] writes exercises that read back the same', () => {
    fc.assert(
      fc.property(arbitraryLesson, (lesson) => {
        const text = setExercises(
          COMMENTED.replace('title', `meter: ${lesson.meter.text}\ntitle`),
          lesson.exercises,
          'snare',
        );
        expect(read(text).exercises).toEqual(lesson.exercises);
        expect(text).toContain('# a last word');
      }),
      { numRuns: 40 },
    );
  });
});
