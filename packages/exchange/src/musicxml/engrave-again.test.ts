import { readFileSync } from 'node:fs';
import {
  barsOf,
  type Exercise,
  type Lesson,
  orderOf,
  parseLesson,
  perform,
  type Stroke,
  toNumber,
} from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEMO_LESSONS } from '../../../../internal/testing/demo-lessons.ts';
import { createEngraver, createMeiWriter, type EngravedNote } from '../../test/engraved.ts';
import { anyLesson, onceThrough, swingLesson } from '../../test/lessons.ts';
import { STAFF_PLACES } from './staff-places.ts';
import { writeMusicXml } from './write.ts';

const engrave = await createEngraver();
const toMei = await createMeiWriter();

const STEPS = 'CDEFGAB';

/** definition: E4 is the bottom line of a treble staff */
const BOTTOM_LINE = 4 * 7 + STEPS.indexOf('E');

function locOf({ voice }: Stroke): number {
  const { step, octave } = STAFF_PLACES[voice as keyof typeof STAFF_PLACES];
  return octave * 7 + STEPS.indexOf(step) - BOTTOM_LINE;
}

/**
 * verovio gives quarters as floats; this is far below the closest two slots. Places are taken from the bar line,
 * since verovio 6.3.0 gives a bar rest in an additive meter no length.
 */
const QUARTERS_DIGITS = 4;

function told(bar: number, quarters: number, loc: number, parentheses: boolean): string {
  return `${bar} ${quarters.toFixed(QUARTERS_DIGITS)} ${loc} ${parentheses ? '( )' : ''}`;
}

/** verovio lets grace notes at the start of a score push the strokes after them, so times are taken without them. */
function withoutGraces(musicXml: string): string {
  return musicXml.replaceAll(/<note>\s*<grace[\s\S]*?<\/note>/g, '');
}

function compare(lesson: Lesson, exercise: Exercise): void {
  const text = writeMusicXml(lesson, { exercises: [exercise.number] });
  const main = engrave(withoutGraces(text));
  const { strokes } = perform(lesson, { exercise: exercise.number, form: onceThrough(exercise) });
  const read = (note: EngravedNote) => told(note.bar, note.quarters, note.loc, note.parentheses);
  const wanted = strokes.map((stroke) => {
    const bar = stroke.written.bar - 1;
    const quarters = 4 * (toNumber(stroke.at) - bar * toNumber(lesson.meter.bar));
    return told(bar, quarters, locOf(stroke), stroke.mark === 'g');
  });
  expect(main.map(read).sort()).toEqual(wanted.sort());
  const graces = { flam: 1, drag: 2, normal: 0, bell: 0, splash: 0, buzz: 0, tap: 0, sweep: 0 };
  const wantedGraces = strokes.reduce((sum, stroke) => sum + graces[stroke.articulation], 0);
  expect(engrave(text).filter((note) => note.grace)).toHaveLength(wantedGraces);
}

/** The strokes of an exercise by the bars that they are written in, each once, after some bars. */
function writtenStrokes(lesson: Lesson, exercise: Exercise, barsBefore: number): readonly string[] {
  const { strokes } = perform(lesson, { exercise: exercise.number, form: onceThrough(exercise) });
  const order = orderOf(exercise);
  const all = strokes.map((stroke) => {
    const played = stroke.written.bar - 1;
    const quarters = 4 * (toNumber(stroke.at) - played * toNumber(lesson.meter.bar));
    const bar = barsBefore + (order[played] ?? 0);
    return told(bar, quarters, locOf(stroke), stroke.mark === 'g');
  });
  return [...new Set(all)];
}

describe('what we export engraves again', () => {
  it('[EX42] in verovio with the same strokes, heads and accents, for a swing lesson', () => {
    const lesson = swingLesson();
    for (const exercise of lesson.exercises) compare(lesson, exercise);
    // library: verovio 6.3.0, renderToTimemap and MEI: x heads on the ride (loc 8) and the hi-hat foot (loc -1)
    const notes = engrave(writeMusicXml(lesson, { exercises: [1] }));
    expect(notes.filter((note) => note.loc === 8).every((note) => note.head === 'x')).toBe(true);
    expect(notes.filter((note) => note.loc === -1).map((note) => note.quarters)).toEqual([1, 3]);
    expect(notes.filter((note) => note.accent && note.loc === 5).map((note) => note.quarters)).toEqual([2]);
  });

  it('[EX42] in verovio with the same strokes, for any lesson', () => {
    fc.assert(
      fc.property(anyLesson, (lesson) => {
        // library: verovio 6.3.0, renderToTimemap and MEI
        for (const exercise of lesson.exercises) compare(lesson, exercise);
      }),
      { numRuns: 25 },
    );
  });

  it.each(DEMO_LESSONS)('[EX6205] in verovio with the same strokes, repeats and endings: %s', (name) => {
    const yaml = readFileSync(new URL(`../../../../demo/${name}`, import.meta.url), 'utf8');
    const { lesson } = parseLesson(yaml, name);
    if (!lesson) throw new Error(`${name} has problems`);
    const text = writeMusicXml(lesson);
    let bars = 0;
    const wanted = lesson.exercises.flatMap((exercise) => {
      const strokes = writtenStrokes(lesson, exercise, bars);
      bars += barsOf(exercise);
      return strokes;
    });
    // library: verovio 6 (package-lock.json), renderToTimemap and MEI
    const shown = engrave(withoutGraces(text)).map((note) =>
      told(note.bar, note.quarters, note.loc, note.parentheses),
    );
    expect(shown.sort()).toEqual(wanted.sort());
    const mei = toMei(text);
    const count = (pattern: RegExp) => mei.match(pattern)?.length ?? 0;
    const repeats = lesson.exercises.flatMap((each) => each.repeats ?? []);
    expect([count(/left="rptstart"/g), count(/right="rptend"/g), count(/<ending /g)]).toEqual([
      repeats.length,
      repeats.length,
      repeats.reduce((sum, { endings }) => sum + endings.length, 0),
    ]);
  });
});
