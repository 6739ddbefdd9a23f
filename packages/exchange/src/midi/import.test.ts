import {
  Bpm,
  cell,
  type ExercisePart,
  formatFraction,
  formatPattern,
  groupBy,
  LeadDb,
  meter,
  perform,
  quantise,
  Seconds,
  type Stroke,
  seededRandom,
  swingAt,
  Ticks,
  type Voice,
} from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { byteProblemInEnglish } from '../../../../internal/testing/in-english.ts';
import {
  anyLesson,
  exerciseOn,
  lessonOf,
  onceThrough,
  patternForm,
  swingLesson,
  withoutOrnaments,
} from '../../test/lessons.ts';
import { played } from '../../test/played.ts';
import { encodeSmf } from './encode.ts';
import { importMidi } from './import.ts';
import { ORNAMENT_GAP_SECONDS } from './ornaments.ts';
import { readMidi } from './read.ts';
import type { NoteEvent } from './smf.ts';
import { writeMidi } from './write.ts';

function textOf(parts: readonly ExercisePart[] | undefined, voice: Voice): string | undefined {
  const part = parts?.find((each) => each.voice === voice);
  return part && formatPattern(part.pattern);
}

describe('importing MIDI into a lesson', () => {
  it('[EX24] reads a groove and its comping back as the text they were written as', () => {
    const lesson = swingLesson();
    const performance = perform(lesson, { exercise: 1, form: patternForm(1, 1), bpm: Bpm(120) });
    const take = readMidi(writeMidi(performance, { title: 'A', meter: lesson.meter }));
    const { exercises, misfits, problems, bpm } = importMidi(take, {
      feel: lesson.feel,
      balance: lesson.balance,
    });
    expect([misfits, problems, bpm]).toEqual([[], [], 120]);
    expect(exercises).toHaveLength(1);
    const parts = exercises[0]?.parts;
    expect(textOf(parts, 'ride')).toBe('x x.x x x.x');
    expect(textOf(parts, 'hihat-foot')).toBe('. x . x');
    expect(textOf(parts, 'bass')).toBe('g g g g');
    expect(textOf(parts, 'snare')).toBe('..x . X .');
  });

  it('[EX24] reads marks back: flam, drag, buzz, ghost, accent, side stick, rim shot, open hi-hat, bell', () => {
    const lesson = lessonOf({
      tempo: { startBpm: Bpm(60), goalBpm: Bpm(60), stepBpm: Bpm(5) },
      groove: [
        { voice: 'ride', pattern: { bars: [['bx', 'x.', 'B.', '..'].map(cell)] } },
        { voice: 'hihat', pattern: { bars: [['..', 'xo', 'x.', 'xO'].map(cell)] } },
      ],
      exercises: [exerciseOn('snare', 'xf d.b. gX xsR')],
    });
    const performance = perform(lesson, { exercise: 1, form: patternForm(1, 1) });
    const take = readMidi(writeMidi(performance, { title: 'A', meter: lesson.meter }));
    const { exercises, misfits } = importMidi(take, { balance: lesson.balance });
    expect(misfits).toEqual([]);
    expect(textOf(exercises[0]?.parts, 'snare')).toBe('xf db gX xsR');
    expect(textOf(exercises[0]?.parts, 'ride')).toBe('bx x B .');
    expect(textOf(exercises[0]?.parts, 'hihat')).toBe('. xo x xO');
  });

  it('[EX25] skips a count-in of clicks and splits the rest into exercises', () => {
    const lesson = lessonOf({ exercises: [exerciseOn('snare', 'x . . . | .x . . . | . . . . | x x . .')] });
    const performance = perform(lesson, { exercise: 1, form: patternForm(4, 2) });
    const take = readMidi(writeMidi(performance, { title: 'A', meter: lesson.meter }));
    const { exercises } = importMidi(take, { barsPerExercise: 1 });
    expect(exercises.map((each) => [each.number, textOf(each.parts, 'snare')])).toEqual([
      [1, 'x . . .'],
      [2, '.x . . .'],
      [3, 'x x . .'],
    ]);
  });

  it('[EX26] reports notes that fit no slot and keys that are no voice, and loses neither', () => {
    // definition: ticks 0 and 96 are beats; 40 of 96 is 5/12 of a beat, 1/12 from the nearest slots; 54 is a tambourine
    const take = readMidi(
      played([
        [0, 38],
        [96, 38],
        [136, 38],
        [192, 54],
      ]),
    );
    const { exercises, misfits, problems } = importMidi(take);
    expect(textOf(exercises[0]?.parts, 'snare')).toBe('x x . .');
    expect(misfits.map((note) => note.ticks)).toEqual([136]);
    expect(take.others).toMatchObject([{ key: 54, ticks: 192 }]);
    expect(problems.map((problem) => byteProblemInEnglish('take.mid', problem))).toEqual([
      'take.mid: warning: found 1 note of key 54, expected a key of the drum set on channel 10 (these notes are left out; map the key to a voice to keep them)',
      'take.mid: warning: found 1 note on no place of a beat, expected notes on 1, 2, 3, 4 or 6 places a beat, in at most 4000 bars (they are left out)',
    ]);
  });

  it('[EX27] reads all channels where none is the tenth, and only the tenth where it is there', () => {
    expect(readMidi(played([[0, 38]], 1)).notes).toMatchObject([{ voice: 'snare', channel: 1 }]);
    const events: readonly NoteEvent[] = [1, 10].map((channel) => {
      return { kind: 'note-on', ticks: Ticks(0), channel, key: 38, velocity: 90 };
    });
    const both = readMidi(
      encodeSmf({ format: 0, ticksPerQuarter: 96, tracks: [{ events, endTicks: Ticks(96) }] }),
    );
    expect(both.notes).toMatchObject([{ channel: 10 }]);
    expect(both.problems).toMatchObject([{ found: { fact: 'midi-notes-of-channel', notes: 1, channel: 1 } }]);
    expect(readMidi(played([[0, 39]]), { keys: { 39: 'snare' } }).notes).toMatchObject([{ voice: 'snare' }]);
  });

  it('[EX28] says when the meter changes', () => {
    const meters = [
      { kind: 'time-signature' as const, ticks: Ticks(0), upper: 3, lower: 4, clocksPerClick: 24 },
      { kind: 'time-signature' as const, ticks: Ticks(288), upper: 4, lower: 4, clocksPerClick: 24 },
    ];
    const events = [
      ...meters,
      { kind: 'note-on' as const, ticks: Ticks(288), channel: 10, key: 38, velocity: 90 },
    ];
    const take = readMidi(
      encodeSmf({ format: 0, ticksPerQuarter: 96, tracks: [{ events, endTicks: Ticks(672) }] }),
    );
    const { meter: read, problems } = importMidi(take);
    expect(read.text).toBe('3/4');
    expect(problems).toMatchObject([
      { code: 'midi-meter', found: { fact: 'change-of-meter', meter: '4/4' } },
    ]);
  });

  it('[EX29] puts played notes on the slot they lie nearest to, early ones on the next beat', () => {
    const grid = { meter: meter('4/4'), swing: null, toleranceBeats: null };
    const slotsOf = (beats: readonly number[]) => {
      const [places = []] = quantise([beats.map((beat) => beat / 4)], grid);
      return places.map((place) => place && place.bar * 4 + (place.inBar.num / place.inBar.den) * 4);
    };
    // common practice: a player is some hundredths of a beat off; 0.03 of a beat at 120 is 15 ms
    expect(slotsOf([0.02, 0.98, 2.03])).toEqual([0, 1, 2]);
    expect(slotsOf([0, 0.27, 0.5, 0.74])).toEqual([0, 0.25, 0.5, 0.75]);
    expect(slotsOf([0.01, 0.35, 0.65])).toEqual([0, 1 / 3, 2 / 3]);
    expect(slotsOf([3.99])).toEqual([4]);
  });

  it('[EX30] finds the written slots of swung notes when the feel is known', () => {
    const swing = swingAt({ kind: 'ratio', ratio: 3, of: 'eighths' }, 120);
    const grid = { meter: meter('4/4'), swing, toleranceBeats: null };
    // definition: long:short = 3:1, so the written last triplet is played at 3/4 of the beat
    const [places = []] = quantise([[0, 0.75 / 4, 0.25]], grid);
    expect(places.map((place) => place?.inBar)).toEqual([
      { num: 0, den: 1 },
      { num: 1, den: 6 },
      { num: 1, den: 4 },
    ]);
  });

  it('[EX32] reads a groove played by a person as the text they read it from', () => {
    const lesson = swingLesson();
    const performance = perform(lesson, { exercise: 1, form: patternForm(2, 1), bpm: Bpm(160) });
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const random = seededRandom(seed);
        // published: Fujii et al. 2011, Music Perception 28(5): professional drummers are 1 to 10 ms off a metronome
        const strokes = performance.strokes.map((stroke) => {
          const timeSeconds = Seconds(stroke.timeSeconds + (random.next() - 0.5) * 0.02);
          return { ...stroke, timeSeconds, levelDb: LeadDb(stroke.levelDb + (random.next() - 0.5) * 3) };
        });
        strokes.sort((a, b) => a.timeSeconds - b.timeSeconds);
        const bytes = writeMidi({ ...performance, strokes }, { title: 'A', meter: lesson.meter });
        const { exercises, misfits } = importMidi(readMidi(bytes), {
          feel: lesson.feel,
          balance: lesson.balance,
        });
        expect(misfits).toEqual([]);
        const parts = exercises[0]?.parts;
        expect(textOf(parts, 'ride')).toBe('x x.x x x.x | x x.x x x.x');
        expect(textOf(parts, 'bass')).toBe('g g g g | g g g g');
        expect(textOf(parts, 'snare')).toBe('..x . X . | ..x . X .');
      }),
    );
  });

  it('[EX31] loses no stroke between a lesson, its file and the import', () => {
    fc.assert(
      fc.property(anyLesson.map(withoutOrnaments), (lesson) => {
        const exercise = lesson.exercises[0] as (typeof lesson.exercises)[number];
        const performance = perform(lesson, { exercise: 1, form: onceThrough(exercise, 1) });
        // definition: a format that has only notes cannot tell strokes so near each other from a flam or a buzz
        fc.pre(!hasStrokesAsNearAsOrnaments(performance.strokes));
        const timing = 'written';
        const take = readMidi(writeMidi(performance, { title: lesson.title, meter: lesson.meter, timing }));
        const { exercises, misfits } = importMidi(take, { meter: lesson.meter, balance: lesson.balance });
        expect(misfits).toEqual([]);
        const again = { ...lesson, groove: [], exercises };
        const read = exercises.flatMap((each) => {
          return perform(again, { exercise: each.number, form: onceThrough(each, 1) }).strokes;
        });
        expect(touchesOf(read)).toEqual(touchesOf(performance.strokes));
      }),
    );
  });
});

/** Whether strokes of one voice follow each other as closely as those of an ornament. */
function hasStrokesAsNearAsOrnaments(strokes: readonly Stroke[]): boolean {
  const byVoice = groupBy(strokes, ({ voice }) => voice);
  return [...byVoice.values()].some((own) => {
    const times = own.map(({ timeSeconds }) => timeSeconds).toSorted((a, b) => a - b);
    return times.some((time, index) => index > 0 && time - (times[index - 1] ?? 0) <= ORNAMENT_GAP_SECONDS);
  });
}

/** Where, what and how loud each stroke is, in one order. */
function touchesOf(strokes: readonly Stroke[]): readonly string[] {
  const drums = strokes.filter((stroke) => stroke.voice !== 'click');
  return drums.map((s) => `${formatFraction(s.at)} ${s.voice} ${s.articulation} ${s.levelDb}`).sort();
}
