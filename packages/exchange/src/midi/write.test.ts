import { Bpm, fraction, meter, perform, type Stroke, Ticks, toNumber, writableSlots } from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  anyLesson,
  exerciseOn,
  lessonOf,
  onceThrough,
  patternForm,
  swingLesson,
} from '../../test/lessons.ts';
import { timeSignature } from './conductor-track.ts';
import { decodeSmf } from './decode.ts';
import { encodeSmf } from './encode.ts';
import { foldOrnaments } from './ornaments.ts';
import { TICKS_PER_QUARTER, wholeNotesToTicks } from './placement.ts';
import { readMidi } from './read.ts';
import type { Smf, SmfTrack } from './smf.ts';
import { writeMidi, writeMidiSheet } from './write.ts';

function fileOf(bytes: Uint8Array): Smf {
  const { file, problems } = decodeSmf(bytes);
  expect(problems).toEqual([]);
  return file as Smf;
}

function nameOf(track: SmfTrack | undefined): unknown {
  return track?.events.find((event) => event.kind === 'name');
}

function onsets(track: SmfTrack | undefined): readonly number[] {
  return (track?.events ?? []).flatMap((event) => (event.kind === 'note-on' ? [event.ticks] : []));
}

/** One file with one event, without its header and its end of track. */
function eventBytes(meterText: string): readonly number[] {
  const events = [timeSignature(meter(meterText))];
  const bytes = encodeSmf({ format: 0, ticksPerQuarter: 96, tracks: [{ events, endTicks: Ticks(0) }] });
  return [...bytes.slice(23, -4)];
}

const LONGEST_TICK_SECONDS = 60 / 40 / TICKS_PER_QUARTER;

const TIME_SIGNATURES: readonly (readonly [string, readonly number[]])[] = [
  // standard: RP-001, time signature event: 6/8 with a click each dotted quarter, its own example
  ['6/8', [0xff, 0x58, 0x04, 0x06, 0x03, 0x24, 0x08]],
  // standard: RP-001: 24 clocks a quarter
  ['4/4', [0xff, 0x58, 0x04, 0x04, 0x02, 0x18, 0x08]],
  // definition: two half-note beats of 48 clocks
  ['2/2', [0xff, 0x58, 0x04, 0x02, 0x01, 0x30, 0x08]],
  // definition: four dotted quarters of 36 clocks
  ['12/8', [0xff, 0x58, 0x04, 0x0c, 0x03, 0x24, 0x08]],
  // definition: beats of unequal length, so a click each eighth of 12 clocks
  ['2+2+3/8', [0xff, 0x58, 0x04, 0x07, 0x03, 0x0c, 0x08]],
];

const TIMINGS = ['performed', 'written'] as const;

describe('writing Standard MIDI Files', () => {
  it('[EX14] writes header, tempo and meter byte for byte', () => {
    const bytes = writeMidi(perform(swingLesson(), { exercise: 1, form: patternForm(1), bpm: Bpm(120) }), {
      title: 'A',
      meter: meter('4/4'),
    });
    // standard: RP-001: "MThd", length 6, format 1; 3360 ticks is 0x0D20; five tracks: conductor and four voices
    expect([...bytes.slice(0, 14)]).toEqual([0x4d, 0x54, 0x68, 0x64, 0, 0, 0, 6, 0, 1, 0, 5, 0x0d, 0x20]);
    const text = bytes.reduce((hex, byte) => hex + byte.toString(16).padStart(2, '0'), '');
    // standard: RP-001: 4/4 with a click a quarter is FF 58 04 04 02 18 08; 500 000 µs is 07 A1 20
    expect(text).toContain('00ff580404021808');
    expect(text).toContain('00ff510307a120');
    // standard: RP-001: end of track is FF 2F 00, the last three bytes of the file
    expect(text.endsWith('ff2f00')).toBe(true);
  });

  it.each(TIME_SIGNATURES)(
    '[EX15] writes the time signature of %s with the clock of its beat',
    (text, bytes) => {
      expect(eventBytes(text)).toEqual(bytes);
    },
  );

  it('[EX16] names a track for every voice that plays, the lesson for the first', () => {
    const file = fileOf(
      writeMidi(perform(swingLesson(), { exercise: 1, form: patternForm(1, 1) }), {
        title: 'First swing',
        by: 'Oda Lindqvist-Reyes',
        meter: meter('4/4'),
      }),
    );
    const names = file.tracks.map((track) => nameOf(track));
    const named = (text: string) => ({ kind: 'name', ticks: Ticks(0), text });
    expect(names).toEqual(
      ['First swing', 'ride', 'hi-hat foot', 'bass drum', 'snare', 'click'].map((text) => named(text)),
    );
    // definition: a bar of 4/4 is 13440 ticks at 3360 a quarter; count-in and one bar
    expect(file.tracks.map((track) => track.endTicks)).toEqual(file.tracks.map(() => 26880));
  });

  it('[EX17] plays swing as performed and, where asked, as written', () => {
    const lesson = lessonOf({
      feel: { kind: 'ratio', ratio: 2, of: 'eighths' },
      exercises: [exerciseOn('snare', 'xx xx . xxx')],
    });
    const performance = perform(lesson, { exercise: 1, form: patternForm(1), bpm: Bpm(150) });
    const options = { title: 'A', meter: lesson.meter };
    // definition: long:short = 2:1, so the off-beat is at 2/3 of 3360 ticks
    expect(onsets(fileOf(writeMidi(performance, options)).tracks[1])).toEqual([
      0, 2240, 3360, 5600, 10080, 11200, 12320,
    ]);
    // definition: written eighths are halves of 3360 ticks, triplets thirds
    expect(onsets(fileOf(writeMidi(performance, { ...options, timing: 'written' })).tracks[1])).toEqual([
      0, 1680, 3360, 5040, 10080, 11200, 12320,
    ]);
  });

  it('[EX1400] has a whole tick for every slot that can be written', () => {
    const beats = [1, 2, 4, 8, 16, 32].flatMap((den) => [fraction(1, den), fraction(3, den)]);
    const written = beats.flatMap((beat) => writableSlots([beat]).map((slots) => toNumber(beat) / slots));
    const off = written.map(wholeNotesToTicks).filter((ticks) => Math.abs(ticks - Math.round(ticks)) > 1e-6);
    // definition: no value under a 64th: 8 slots each down to 1/8, 7 of 1/16, 3 of 1/32; 8 down to 3/16, 7 of 3/32
    expect([written.length, off]).toEqual([4 * 8 + 7 + 3 + 5 * 8 + 7, []]);
  });

  it('[EX18] follows a tempo that changes from bar to bar', () => {
    const lesson = lessonOf({ exercises: [exerciseOn('snare', 'x x x x')] });
    const tempo = [
      { at: { num: 0, den: 1 }, bpm: Bpm(120) },
      { at: { num: 1, den: 1 }, bpm: Bpm(60) },
    ];
    const take = readMidi(
      writeMidi(perform(lesson, { exercise: 1, form: patternForm(2), tempo }), {
        title: 'A',
        meter: lesson.meter,
      }),
    );
    // definition: quarters of 0.5 s at 120, of 1 s at 60
    expect(take.notes.map((note) => note.timeSeconds)).toEqual([0, 0.5, 1, 1.5, 2, 3, 4, 5]);
    expect(take.tempoMap.map((each) => [each.ticks, each.bpm])).toEqual([
      [0, 120],
      [13440, 60],
    ]);
  });

  it('[EX19] writes flam and drag as grace strokes and a buzz as bounces', () => {
    const lesson = lessonOf({ exercises: [exerciseOn('snare', 'x f d b')] });
    const performance = perform(lesson, { exercise: 1, form: patternForm(1), bpm: Bpm(60) });
    const ticks = onsets(fileOf(writeMidi(performance, { title: 'A', meter: lesson.meter })).tracks[1]);
    // common practice: a flam has one grace stroke before the beat, a drag two
    expect(ticks.filter((each) => each > 3150 && each <= 3360)).toHaveLength(2);
    expect(ticks.filter((each) => each > 6300 && each <= 6720)).toHaveLength(3);
    expect(ticks.filter((each) => each >= 10080).length).toBeGreaterThan(8);
  });

  it('[EX20] never lets a note run into the next one of its key', () => {
    fc.assert(
      fc.property(anyLesson, (lesson) => {
        const exercise = lesson.exercises[0] as (typeof lesson.exercises)[number];
        const performance = perform(lesson, { exercise: 1, form: onceThrough(exercise, 1) });
        const bytes = writeMidi(performance, { title: lesson.title, meter: lesson.meter });
        for (const track of fileOf(bytes).tracks) {
          const open = new Set<number>();
          for (const event of track.events) {
            if (event.kind === 'note-on') {
              expect(open.has(event.key)).toBe(false);
              open.add(event.key);
            } else if (event.kind === 'note-off') open.delete(event.key);
          }
          expect(open.size).toBe(0);
        }
      }),
    );
  });

  it('[EX21] puts a whole sheet in one file, each exercise after the last with its name as a marker', () => {
    const lesson = lessonOf({
      exercises: [
        exerciseOn('snare', 'x .', 1),
        exerciseOn('snare', '.x x | X .x', 2),
        exerciseOn('snare', '. f', 3),
      ],
      meter: meter('2/4'),
    });
    const sections = lesson.exercises.map((exercise) => ({
      name: `No. ${exercise.number}`,
      meter: lesson.meter,
      performance: perform(lesson, { exercise: exercise.number, form: onceThrough(exercise), bpm: Bpm(120) }),
    }));
    const take = readMidi(writeMidiSheet(sections, { title: lesson.title }));
    // definition: bars of two quarters; the sheet is one bar, two bars and one bar long
    const named = take.markers.filter((marker) => marker.text.startsWith('No.'));
    expect(named.map((marker) => toNumber(marker.at))).toEqual([0, 0.5, 1.5]);
    expect(foldOrnaments(take.notes).map((note) => note.ticks)).toEqual([
      0,
      6720 + 1680,
      6720 + 3360,
      13440,
      13440 + 5040,
      20160 + 3360,
    ]);
    expect(take.title).toBe('First swing');
  });

  it.each(TIMINGS)('[EX22] keeps every stroke of any lesson, as %s', (timing) => {
    fc.assert(
      fc.property(anyLesson, (lesson) => {
        const exercise = lesson.exercises[0] as (typeof lesson.exercises)[number];
        const performance = perform(lesson, { exercise: 1, form: onceThrough(exercise, 1) });
        const take = readMidi(writeMidi(performance, { title: lesson.title, meter: lesson.meter, timing }));
        expect(take.problems).toEqual([]);
        for (const voice of new Set(performance.strokes.map((stroke) => stroke.voice))) {
          const written = performance.strokes.filter((stroke) => stroke.voice === voice);
          const notes = take.notes.filter((note) => note.voice === voice);
          expectStrokes(written, notes, timing, lesson.meter.bar);
        }
      }),
    );
  });
});

function expectStrokes(
  strokes: readonly Stroke[],
  notes: ReturnType<typeof readMidi>['notes'],
  timing: 'performed' | 'written',
  countIn: { readonly num: number; readonly den: number },
): void {
  for (const stroke of strokes) {
    const at = (note: (typeof notes)[number]) =>
      timing === 'performed' ? note.timeSeconds : toNumber(note.at) - countIn.num / countIn.den;
    const wanted = timing === 'performed' ? stroke.timeSeconds : toNumber(stroke.at);
    const nearest = notes.reduce((best, note) =>
      Math.abs(at(note) - wanted) < Math.abs(at(best) - wanted) ? note : best,
    );
    const tolerance = timing === 'performed' ? LONGEST_TICK_SECONDS : 1e-12;
    expect(Math.abs(at(nearest) - wanted)).toBeLessThanOrEqual(tolerance);
    expect(
      notes.some((note) => at(note) === at(nearest) && Math.abs(note.levelDb - stroke.levelDb) < 1),
    ).toBe(true);
  }
  // common practice: one grace stroke for a flam, two for a drag; a buzz bounces while there is room
  const added = { normal: 0, bell: 0, splash: 0, tap: 0, sweep: 0, flam: 1, drag: 2, buzz: 0 };
  const least = strokes.reduce((sum, stroke) => sum + 1 + added[stroke.articulation], 0);
  const buzzes = strokes.some((stroke) => stroke.articulation === 'buzz');
  expect(buzzes ? Math.min(notes.length, least) : notes.length).toBe(least);
}
