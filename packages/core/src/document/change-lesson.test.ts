import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  arbitraryDividedLesson,
  arbitraryLessonText,
} from '../../../../internal/testing/arbitrary-lesson.ts';
import { cell } from '../rhythm/cell.ts';
import { beatAfter, cellInThree, cellInTwo, changeMeter } from '../rhythm/change-meter.ts';
import { meter } from '../rhythm/meter.ts';
import { formatPattern, parsePattern } from '../rhythm/pattern.ts';
import { changeLesson } from './change-lesson.ts';
import { parseLesson } from './parse.ts';
import { printLesson } from './print.ts';

const METERS = ['4/4', '3/4', '5/4', '2/2', '6/8', '12/8', '9/8', '7/8', '2+2+3/8', '3/8', '4/8'];
const FEELS = ['even', 'triplet', '1.8:1', '1.6:1 sixteenths', 'by tempo'];

const DEMOS = readdirSync('demo').filter((name) => name.endsWith('.lesson.yaml'));

function changed(text: string, from: string, to: string, goesOn: 'silent' | 'repeats' = 'silent') {
  const after = changeMeter(parsePattern(text), { from: meter(from), to: meter(to) }, goesOn);
  return [formatPattern(after.pattern), after.lost, after.moved];
}

/** Codes of the problems of a text that is changed again and again. */
const known = new Map<string, ReadonlySet<string>>();

function codesOf(text: string): ReadonlySet<string> {
  const codes = known.get(text) ?? new Set(parseLesson(text, 'before').problems.map(({ code }) => code));
  known.set(text, codes);
  return codes;
}

/** Problems of a text that are not those of another, by their codes. */
function newProblems(before: string, after: string): readonly string[] {
  const codes = codesOf(before);
  return parseLesson(after, 'after').problems.flatMap(({ code, path }) =>
    codes.has(code) ? [] : [`${code} at ${path}`],
  );
}

describe('a change of meter', () => {
  it('[LE400] keeps what has a place in the new meter and counts what has none', () => {
    // definition: the beats that both meters have are the same beats
    expect(changed('x.. ..x x.x xxx', '4/4', '3/4')).toEqual(['x.. ..x x.x', 3, 0]);
    expect(changed('x x.x x.x', '3/4', '4/4')).toEqual(['x x.x x.x ...', 0, 0]);
    // common practice: a jazz waltz and swing go on as the two beats before
    expect(changed('x x.x x x.x', '4/4', '5/4', 'repeats')).toEqual(['x x.x x x.x x', 0, 0]);
    // common practice: 12/8 has the beats of 4/4 in three, an off-beat eighth on the last of them
    expect(changed('x. .x xx x...', '4/4', '12/8')).toEqual(['x.. ..x x.x x.....', 0, 0]);
    expect(changed('x.x ..x xxx ...', '12/8', '4/4')).toEqual(['x.x ..x xxx ...', 0, 0]);
    // definition: 3/4 and 6/8 are equally long, so every stroke stays where it sounds
    expect(changed('x. xx .x', '3/4', '6/8')).toEqual(['x.x x.x', 0, 0]);
    expect(changed('x. xx x. xx', '4/4', '7/8')).toEqual(['x . x x x . x', 1, 0]);
    expect(changed('x x.x x x.x', '4/4', '2/2')).toEqual(['x..x.x x..x.x', 0, 0]);
    // definition: a half note has eight slots for sixteenths, none for its twelfths: they go to the slot before
    expect(changed('x..x .x.. ...x ....', '4/4', '2/2')).toEqual(['x..x.x.. ...x....', 0, 0]);
    expect(changed('x....x .x.... x .', '4/4', '2/2')[2]).toBeGreaterThan(0);
    expect(beatAfter({ from: meter('4/4'), to: meter('2/2') }, 3)).toBe(1);
    expect(beatAfter({ from: meter('4/4'), to: meter('3/4') }, 3)).toBeNull();
  });

  it('[LE400] writes beats of three in two and of two in three, and says which cannot be', () => {
    expect([cellInThree(cell('xg')).text, cellInThree(cell('x.xX')).text]).toEqual(['x.g', 'x..x.X']);
    expect([cellInTwo(cell('x.X'))?.text, cellInTwo(cell('..x'))?.text]).toEqual(['xX', '.x']);
    expect([cellInTwo(cell('.x.')), cellInTwo(cell('x..x.x'))?.text]).toEqual([null, 'x.xx']);
  });
});

describe('a lesson in another meter or feel', () => {
  it.each(DEMOS)('[LE401] reads without a new problem in every meter and feel: %s', (name) => {
    const text = readFileSync(`demo/${name}`, 'utf8');
    for (const to of METERS)
      expect([to, newProblems(text, changeLesson(text, { section: null, meter: to }).text)]).toEqual([
        to,
        [],
      ]);
    for (const feel of ['even', 'triplet']) {
      const after = changeLesson(text, { section: null, feel, inTwo: true }).text;
      expect([feel, newProblems(text, after)]).toEqual([feel, []]);
    }
  });

  it('[LE401] reads without a new problem whatever the lesson, its sections, the meter and the feel', () => {
    const texts = fc.oneof(arbitraryLessonText, arbitraryDividedLesson.map(printLesson));
    const property = fc.property(
      texts,
      fc.constantFrom(...METERS),
      fc.constantFrom(...FEELS),
      fc.constantFrom(null, 0, 1),
      (text, to, feel, section) => {
        const before = parseLesson(text, 'before').lesson?.exercises.length;
        const metered = changeLesson(text, { section, meter: to });
        expect(newProblems(text, metered.text)).toEqual([]);
        const after = changeLesson(metered.text, { section, feel, inTwo: true });
        expect(newProblems(metered.text, after.text)).toEqual([]);
        const twins = [...metered.tells, ...after.tells].flatMap((tell) =>
          tell.fact === 'exercises-become-twins' ? tell.exercises : [],
        );
        const left = parseLesson(after.text, 'after').lesson?.exercises.length;
        expect(left).toBe((before ?? 0) - twins.length);
      },
    );
    fc.assert(property, { seed: 17, numRuns: 25 });
  });

  // a seed of the property above, cut down: 2 of 2 comes to the place where the triplet of 1 has its last stroke
  it('[LE2900] leaves no limb two strokes at once that had one: the lead voice keeps its own', () => {
    const text = 'title: T\nmeter: 2/4\ngroove: {ride: "xxx x", tom-low: ".x .x"}\nexercises: [. x]\n';
    const { text: after, tells } = changeLesson(text, { section: null, meter: '6/8' });
    expect(codesOf(text)).toEqual(new Set());
    expect(after).toContain('tom-low: ... ..x');
    expect(tells).toContainEqual({ fact: 'groove-loses-strokes', strokes: 1 });
    const handed = [
      'title: T',
      'meter: 2/4',
      'groove: {ride: "x.x x"}',
      'exercises:',
      '  - {pattern: {snare: . ., tom-low: .x .}, sticking: {tom-low: R}}',
      '',
    ].join('\n');
    const turned = changeLesson(handed, { section: null, meter: '6/8' }).text;
    expect(turned).toContain('tom-low: ..x .');
    expect(parseLesson(turned, 'turned').lesson?.exercises[0]?.parts[1]?.hands).toEqual(['L']);
  });

  it('[LE2900] a beat that the old bar had and left silent stays silent', () => {
    // definition: 2/4 and 4/8 are equally long
    expect(changed('xx x', '2/4', '4/8', 'repeats')).toEqual(['x x x .', 0, 0]);
  });

  it.each([[4], [11]])('[LE401] leaves no limb two strokes at once in grooves at random, seed %i', (seed) => {
    const property = fc.property(
      arbitraryLessonText,
      fc.constantFrom('4/4', '9/8', '4/8', '6/8'),
      (text, to) => {
        expect(newProblems(text, changeLesson(text, { section: null, meter: to }).text)).toEqual([]);
      },
    );
    fc.assert(property, { seed, numRuns: 60 });
  });

  it('[LE402] tells what becomes of it, keeps comments, and changes nothing where nothing has to', () => {
    const text = [
      'title: Four # of them',
      'feel: triplet',
      'tempo: 120',
      'groove: {ride: x x.x x x.x, hihat-foot: . x . x}',
      'vocabulary: [..., ..x, x..]',
      'exercises:',
      '  - x.. ... ... ..x # the fourth',
      '  - {pattern: x.. ... ..x x.., sticking: R L R, fill: 4, dynamics: p . . f}',
      '  - x.. ... ... x..',
      'forms: {tune: {sections: [{pattern: 4, ending: {voices: snare, beat: 4}}]}}',
      '',
    ].join('\n');
    const { text: after, tells } = changeLesson(text, { section: null, meter: '3/4' });
    expect(tells).toEqual([
      { fact: 'strokes-without-place', strokes: 2, exercises: ['1', '2'] },
      { fact: 'exercises-become-twins', exercises: ['3'] },
      { fact: 'dynamics-without-place', exercises: ['2'] },
      { fact: 'fill-on-last-beat', exercises: ['2'] },
      { fact: 'groove-loses-beats', beats: 1, voices: ['ride', 'hihat-foot'] },
      { fact: 'ending-on-last-beat', form: 'tune' },
    ]);
    expect(after).toContain('title: Four # of them');
    expect(after).toContain('ride: x x.x x');
    const lesson = parseLesson(after, 'after').lesson;
    expect(lesson?.exercises[1]?.sticking).toEqual(['R', 'L']);
    expect(lesson?.tempo.startBpm).toBe(120);
    const back = changeLesson(text, { section: null, meter: '4/4', feel: 'even' });
    expect(back.tells).toEqual([]);
    expect(parseLesson(back.text, 'back').lesson?.exercises).toEqual(
      parseLesson(text, 'text').lesson?.exercises,
    );
    // definition: 120 quarters a minute as 120 dotted quarters are 180 quarters
    const slow = changeLesson(text, { section: null, meter: '12/8' });
    expect(parseLesson(slow.text, 'slow').lesson?.tempo.startBpm).toBe(180);
  });

  it('[LE402] keeps the name of an exercise that something refers to', () => {
    const text = 'title: One\nexercises:\n  - x. x. x. x.\n  - .x x. x. x.\n';
    const { text: after } = changeLesson(text, { section: null, meter: '3/4', inUse: ['snare x. x. x. x.'] });
    expect(parseLesson(after, 'after').lesson?.exercises.map((each) => each.id)).toEqual([
      'snare x. x. x. x.',
      undefined,
    ]);
  });
});
