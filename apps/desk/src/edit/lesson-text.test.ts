import { formatPattern, type Lesson, parseLesson, parsePattern } from '@shedbook/core';
import { type CountWords, countOf, loadDesk, sayPattern } from '@shedbook/words';
import { describe, expect, it } from 'vitest';
import { setCount, setMost, toggleCell } from './compose-settings.ts';
import {
  duplicateExercise,
  insertExercise,
  moveExercise,
  removeExercise,
  withExercises,
  withLine,
  withoutVoice,
  withVoice,
} from './exercises.ts';
import { ownForms } from './forms.ts';
import { addVoice, changeVoice, removeVoice, setLevel } from './groove.ts';
import { setBy, setSetUp, setSheet, titleOf } from './heading.ts';
import { setPlayed } from './played.ts';

/** Nothing refers to any exercise. */
const NONE_IN_USE = { exercises: [] };

const TEXT = `# for Bram, Tuesdays
title: Bars for Bram # working title
groove:
  ride: x x.x x x.x
  bass: { pattern: x x x x, level: -12 } # lighter
exercises:
  - x.. ... ..x ... # the first
  - ..x ..x ... ...
  - ... x.x ... x.. # the last
`;

function read(text: string): Lesson {
  const { lesson, problems } = parseLesson(text, 'lesson');
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

function patterns(text: string): readonly string[] {
  return read(text).exercises.map((each) => formatPattern((each.parts[0] as (typeof each.parts)[0]).pattern));
}

const [FIRST, SECOND, LAST] = patterns(TEXT) as [string, string, string];

describe('the text of a lesson', () => {
  it('[ST5] keeps every comment when exercises move', () => {
    const lesson = read(TEXT);
    const moved = withExercises(TEXT, lesson, moveExercise(lesson.exercises, 2, 0));
    expect(patterns(moved)).toEqual([LAST, FIRST, SECOND]);
    for (const comment of ['# for Bram', '# working title', '# lighter', '# the first', '# the last']) {
      expect(moved).toContain(comment);
    }
  });

  it('[ST7] numbers follow the order', () => {
    const lesson = read(TEXT);
    const after = read(withExercises(TEXT, lesson, moveExercise(lesson.exercises, 0, 2)));
    expect(after.exercises.map((each) => each.number)).toEqual([1, 2, 3]);
    expect(patterns(withExercises(TEXT, lesson, moveExercise(lesson.exercises, 0, 2)))).toEqual([
      SECOND,
      LAST,
      FIRST,
    ]);
    expect(patterns(withExercises(TEXT, lesson, removeExercise(lesson.exercises, 1)))).toEqual([FIRST, LAST]);
    expect(patterns(withExercises(TEXT, lesson, duplicateExercise(lesson.exercises, 0)))).toEqual([
      FIRST,
      FIRST,
      SECOND,
      LAST,
    ]);
    expect(patterns(withExercises(TEXT, lesson, insertExercise(lesson, 1)))).toEqual([
      FIRST,
      '... ... ... ...',
      SECOND,
      LAST,
    ]);
    expect(read(withExercises(TEXT, lesson, [])).exercises).toEqual([]);
  });

  it('[ST9] changes a voice where it is written and leaves its level', () => {
    const lesson = read(TEXT);
    const pattern = read('title: a\ngroove: { bass: x . x . }\n').groove[0]?.pattern;
    if (!pattern) throw new Error('no pattern');
    const changed = changeVoice(TEXT, { lesson, section: null }, 'bass', pattern);
    expect(read(changed).balance.bass).toBe(-12);
    expect(formatPattern(read(changed).groove[1]?.pattern ?? pattern)).toBe('x . x .');
    expect(read(setLevel(changed, { lesson, section: null }, 'bass', -18)).balance.bass).toBe(-18);
    expect(
      read(removeVoice(TEXT, { lesson, section: null }, 'bass')).groove.map((part) => part.voice),
    ).toEqual(['ride']);
    expect(
      read(addVoice(TEXT, { lesson, section: null }, 'hihat-foot')).groove.map((part) => part.voice),
    ).toEqual(['ride', 'bass', 'hihat-foot']);
  });

  it('[ST9] writes the default groove out before changing it', () => {
    const bare = 'title: a\n';
    const lesson = read(bare);
    const ride = lesson.groove[0]?.pattern;
    if (!ride) throw new Error('no ride');
    const changed = read(
      changeVoice(bare, { lesson, section: null }, 'bass', {
        bars: [lesson.meter.beats.map(() => ({ text: '.', marks: ['.' as const] }))],
      }),
    );
    expect(changed.groove.map((part) => part.voice)).toEqual(lesson.groove.map((part) => part.voice));
    expect(formatPattern(changed.groove[0]?.pattern ?? ride)).toBe(formatPattern(ride));
  });

  it('[ST103] mirrors written hands with the set-up, and back', () => {
    const text = `${TEXT}  - { pattern: "x.x x.x ... ...", sticking: R L R L } # by hand\n`;
    const left = setSetUp(text, read(text), 'left-handed', NONE_IN_USE);
    // definition: in a left-handed set-up the other hand does what was written for a hand
    expect(read(left).exercises[3]?.sticking).toEqual(['L', 'R', 'L', 'R']);
    expect([read(left).setUp, read(left).exercises[0]?.sticking]).toEqual(['left-handed', null]);
    expect(left).toContain('# lighter');
    const back = read(setSetUp(left, read(left), 'right-handed', NONE_IN_USE));
    expect(back.exercises).toEqual(read(text).exercises);
    expect(setSetUp(left, read(left), 'left-handed', NONE_IN_USE)).toBe(left);
  });

  it('[ST104] gives an exercise another voice, writes in it, and takes one away', () => {
    const lesson = read(TEXT);
    const [first] = lesson.exercises;
    if (!first) throw new Error('no exercise');
    const text = (exercise: Parameters<typeof withExercises>[2][number]) =>
      read(withExercises(TEXT, lesson, [exercise])).exercises[0];
    const two = text(withVoice(first, 'bass'));
    expect(two?.parts.map((part) => [part.voice, formatPattern(part.pattern)])).toEqual([
      ['snare', FIRST],
      ['bass', '... ... ... ...'],
    ]);
    if (!two) throw new Error('no exercise');
    const pattern = parsePattern('... ..x ... ...');
    const written = text(withLine(two, 1, { pattern, sticking: null }));
    expect(written?.parts.map((part) => formatPattern(part.pattern))).toEqual([FIRST, '... ..x ... ...']);
    if (!written) throw new Error('no exercise');
    expect(text(withoutVoice(written, 0))?.parts.map((part) => part.voice)).toEqual(['bass']);
    expect(withoutVoice(first, 0)).toBe(first);
  });

  it('[ST106] knows the forms that a lesson brings itself', () => {
    const own = `${TEXT}forms:\n  loop: { sections: [{ pattern: 2 }] }\n  "trade fours": { sections: [{ pattern: 4 }, { time: 4 }] }\n`;
    expect([ownForms(TEXT), ownForms(own), ownForms('forms: [')]).toEqual([[], ['loop', 'trade fours'], []]);
    expect(read(own).forms.map((form) => form.name)).toEqual(expect.arrayContaining([...ownForms(own)]));
  });

  it('[ST10] reads the title from a text that has problems', () => {
    expect(titleOf('title: Half written\nmeter: five\n')).toBe('Half written');
    expect(titleOf('meter: 4/4\n')).toBeNull();
    expect(titleOf('title: [')).toBeNull();
  });

  it('[ST23] keeps heading and sheet in the lesson', () => {
    const changed = read(
      setSheet(
        setPlayed(setBy(TEXT, 'Oda Lindqvist-Reyes'), null, 'tempo', { start: 66, goal: 104, step: 4 }),
        'paper',
        'Letter',
      ),
    );
    expect(changed).toMatchObject({
      by: 'Oda Lindqvist-Reyes',
      tempo: { startBpm: 66, goalBpm: 104, stepBpm: 4 },
      sheet: { paper: 'Letter' },
    });
    expect(read(setBy(setBy(TEXT, 'x'), '')).by).toBeNull();
  });

  it('[ST24] keeps what the composer goes by in the lesson', () => {
    const lesson = read(TEXT);
    const one = toggleCell(TEXT, lesson, '..x');
    expect(read(one).vocabulary.map((each) => each.cell.text)).toEqual(['..x']);
    expect(read(toggleCell(one, read(one), '..x')).vocabulary).toEqual([]);
    const limited = read(setMost(setCount(TEXT, 12), 'strokes', 5)).compose;
    expect([limited.count, limited.limits.strokes.most]).toEqual([12, 5]);
    expect(read(setMost(setMost(TEXT, 'rests', 2), 'rests', null)).compose.limits.rests.most).toBeNull();
  });

  it('[ST15] says a pattern as its counts, in the language of the reader', async () => {
    const pattern = read('title: a\nexercises: ["x.. ..X x.x ... | . . . ."]\n').exercises[0]?.parts[0]
      ?.pattern;
    if (!pattern) throw new Error('no pattern');
    // common practice: triplets are counted "1 trip let"
    const [{ words: english }, { words: german }] = [await loadDesk('en'), await loadDesk('de')];
    expect(sayPattern(english.counts, pattern, (mark) => (mark === 'X' ? 'accent' : ''))).toEqual([
      '1, 2 let accent, 3, 3 let',
      '',
    ]);
    const counted = (words: CountWords) => [
      countOf(words, 0, 1, 2),
      countOf(words, 1, 3, 4),
      countOf(words, 3, 0, 1),
      countOf(words, 1, 2, 3),
    ];
    expect(counted(english.counts)).toEqual(['1 &', '2 a', '4', '2 let']);
    // common practice: „1 +“, „1 tri ole“; from memory: „1 e + de“
    expect(counted(german.counts)).toEqual(['1 +', '2 de', '4', '2 ole']);
  });
});
