import { Bpm, parseLesson, perform, Seconds, seededRandom, TakeDb, type Voice } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import {
  asked,
  bare,
  notesSent,
  playNotes,
  reportOfNotes,
  SILENCE,
  type TrueNote,
} from '../../../../internal/testing/played-notes.ts';
import { listenToNotes } from './listen-to-notes.ts';
import type { PlayedNote } from './notes.ts';

/** The exercise with every note late by some seconds. */
function play(exercise: number, bpm: number, late: (note: TrueNote) => number = () => 0) {
  return playNotes(exercise, bpm, (note) => ({
    ...note,
    timeSeconds: Seconds(note.timeSeconds + late(note)),
  }));
}

describe('a take of notes', () => {
  it('[LI25] keeps times, voices and levels as they were sent, and finds every place', () => {
    const random = seededRandom('notes');
    const notes = play(1, 100, () => (random.next() - 0.5) * 0.04);
    const report = reportOfNotes(notes);
    expect(report.take.kind).toBe('midi');
    const heard = report.strokes.map(({ timeSeconds, voice, levelDb }) => ({ timeSeconds, voice, levelDb }));
    expect(heard).toEqual(notes.map(bare));
    expect(report.strokes.map(({ written }) => written)).toEqual(notes.map(({ written }) => written));
    expect(report.missed).toEqual([]);
    expect(report.alignment.confidence).toBe(1);
    expect(report.unheard).toEqual([]);
  });

  it('[LI26] measures what was done to a steady take exactly', () => {
    // definition: the snare is 14 ms late, the off-beat ride at 3:5 of the beat makes a ratio of 1.5
    const beat = 60 / 91;
    const late = ({ voice, written }: TrueNote) => {
      if (voice === 'snare') return 0.014;
      return voice === 'ride' && written.slot === 3 ? (3 / 5 - 2 / 3) * beat : 0;
    };
    const report = reportOfNotes(play(1, 91, late));
    expect(report.voices.snare?.offsetMs.median).toBeCloseTo(14, 6);
    expect(report.voices.snare?.offsetMs.spread).toBeCloseTo(0, 6);
    expect(report.voices.bass?.offsetMs.median).toBeCloseTo(0, 6);
    expect(report.swingRatio?.median).toBeCloseTo(1.5, 6);
    expect(report.alignment.bpm).toBeCloseTo(91, 6);
    expect(report.alignment.startSeconds).toBeCloseTo(SILENCE, 6);
    expect(report.unheard).toEqual([{ reason: 'other-tempo', bpm: report.alignment.bpm, askedBpm: 100 }]);
  });

  it('[LI27] counts missed strokes, wrong places and wrong voices', () => {
    const all = play(1, 100);
    const notes = all
      .filter(({ voice, written }) => !(voice === 'bass' && written.bar === 3))
      .map((note) =>
        note.voice === 'snare' && note.written.bar === 5 && note.written.beat === 1
          ? { ...note, voice: 'tom-high' as const }
          : note,
      );
    const extra: PlayedNote = { timeSeconds: Seconds(SILENCE + 0.3), voice: 'snare', levelDb: TakeDb(-3) };
    const report = reportOfNotes([...notes, extra].toSorted((a, b) => a.timeSeconds - b.timeSeconds));
    const missed = report.missed.map(({ voice, bar, beat }) => `${voice} ${bar}.${beat}`);
    expect(missed).toEqual(['bass 3.1', 'bass 3.2', 'bass 3.3', 'bass 3.4', 'snare 5.1']);
    const unwritten = report.strokes.filter((stroke) => !stroke.written);
    expect(unwritten.map(({ voice }) => voice)).toEqual(['snare', 'tom-high']);
    expect(report.voices.snare).toMatchObject({ hits: 39, missed: 1, extra: 1 });
  });

  it('[LI29] finds what comes round again in whatever bar of the form it is', () => {
    const early = ({ voice, written: { bar, beat, slot } }: TrueNote) =>
      voice === 'snare' && beat === 3 && slot === 3 && bar <= 6 ? -0.024 : 0;
    const notes = play(1, 100, early).filter(
      ({ voice, written }) => !(voice === 'hihat-foot' && written.beat === 4 && written.bar !== 2),
    );
    const places = reportOfNotes(notes).places ?? [];
    const placeOf = (of: Voice, beat: number, slot: number) =>
      places.filter((place) => place.voice === of && place.beat === beat && place.slot === slot);
    // definition: 24 ms early in 6 of 8 bars, and left out in 7 of 8
    const [foot] = placeOf('hihat-foot', 4, 1);
    expect(foot).toMatchObject({ bar: 1, slots: 1, everyBar: true, missed: 7 });
    const [snare, ...others] = placeOf('snare', 3, 3);
    expect(others).toEqual([]);
    expect(snare).toMatchObject({ bar: 1, slots: 3, everyBar: true, missed: 0 });
    expect(snare?.offsetsMs.map((ms) => Math.round(ms) + 0)).toEqual([-24, -24, -24, -24, -24, -24, 0, 0]);
  });

  it('[LI28] names another exercise, and refuses another lesson and nothing', () => {
    const second = listenToNotes(play(2, 100).map(bare), Seconds(30), asked);
    expect(second.report?.exercise?.rather).toBe(2);
    // definition: exercise 3 leaves one of five strokes of exercise 1 out: 2 × 4 / (4 + 5) of them agree
    const third = listenToNotes(play(3, 100).map(bare), Seconds(30), asked);
    expect(third.report?.exercise?.rather).toBe(3);
    expect(third.report?.exercise?.agreement).toBeCloseTo(8 / 9, 2);
    expect(listenToNotes([], Seconds(30), asked).refusal?.fact).toBe('no-drum-notes');
    const random = seededRandom('no drums');
    const toms = Array.from({ length: 60 }, (_, i) => i / 3 + random.next() / 3);
    const noise = toms.map(
      (timeSeconds): PlayedNote => ({
        timeSeconds: Seconds(timeSeconds),
        voice: 'tom-high',
        levelDb: TakeDb(0),
      }),
    );
    expect(listenToNotes(noise, Seconds(30), asked).report).toBeNull();
    const one: PlayedNote = { timeSeconds: Seconds(1), voice: 'ride', levelDb: TakeDb(0) };
    expect(listenToNotes([one], Seconds(2), asked).refusal?.fact).toBe('no-pulse-followed');
  });

  it('[LI70] takes the rim for the snare where the snare is written and no side stick', () => {
    // definition: of each five strokes of the comping four are on the rim, as 7 of 8 backbeats on key 40 were
    let snares = 0;
    const notes = play(1, 100).map((note) => {
      if (note.voice !== 'snare') return note;
      snares += 1;
      return snares % 5 === 0 ? note : { ...note, voice: 'rimshot' as const };
    });
    expect(reportOfNotes(notes).voices.snare).toMatchObject({ hits: 40, missed: 0, extra: 0 });
    const crossed = notes.map((note) =>
      note.voice === 'rimshot' ? { ...note, voice: 'sidestick' as const } : note,
    );
    expect(reportOfNotes(crossed).voices.snare).toMatchObject({ hits: 40, missed: 0, extra: 0 });
  });

  it('[LI70] leaves a rim shot one where it is written, and takes it for the snare elsewhere', () => {
    const { lesson } = parseLesson(
      `title: Backbeat
tempo: 100
exercises: [". x . ."]
groove: {hihat: "xx xx xx xx", bass: "x . x ."}
forms:
  ended: {sections: [{pattern: 4, ending: rimshot + crash}]}
`,
      'backbeat.lesson.yaml',
    );
    if (!lesson) throw new Error('Internal error: the lesson of this test has a fault');
    const form = lesson.forms.find(({ name }) => name === 'ended')!;
    const { strokes } = perform(lesson, { exercise: 1, form, bpm: Bpm(100) });
    const rim = notesSent(strokes).map((note) =>
      note.voice === 'snare' ? { ...note, voice: 'rimshot' as const } : note,
    );
    const { report } = listenToNotes(rim, Seconds(12), { lesson, exercise: 1, form });
    const due = (of: Voice) => strokes.filter(({ voice }) => voice === of).length;
    expect(due('rimshot')).toBe(1);
    expect(report?.voices.snare).toMatchObject({ hits: due('snare'), missed: 0, extra: 0 });
    expect(report?.voices.rimshot).toMatchObject({ hits: 1, missed: 0, extra: 0 });
  });

  it('[LI77] hears the voices of the student alone, and follows them', () => {
    // definition: the student plays the snare 30 ms late; a machine plays ride and feet on time, and a snare of its own
    const machine = play(1, 100).map(bare);
    const student = play(1, 100, () => 0.03).filter(({ voice }) => voice === 'snare');
    const both = [...machine, ...student.map(bare)].toSorted((a, b) => a.timeSeconds - b.timeSeconds);
    const whole = listenToNotes(both, Seconds(30), { ...asked, plays: ['ride'] }).report;
    expect(Object.keys(whole?.voices ?? {})).toEqual(['ride']);
    expect(whole).toMatchObject({ plays: ['ride'], missed: [] });
    const alone = listenToNotes(student.map(bare), Seconds(30), { ...asked, plays: ['snare'] }).report;
    expect(alone?.voices.snare).toMatchObject({ hits: 40, missed: 0, extra: 0 });
    expect(alone?.missed).toEqual([]);
    expect(alone?.alignment.startSeconds).toBeCloseTo(SILENCE + 0.03, 3);
  });
});
