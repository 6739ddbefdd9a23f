import { Bpm, type Form, parseLesson, perform, Seconds, type Stroke, seededRandom } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { notesSent } from '../../../../internal/testing/played-notes.ts';
import { RATE, sounded, swingOf } from '../../test/takes.ts';
import { listen } from '../listen.ts';
import { listenToNotes } from '../midi/listen-to-notes.ts';
import { observeNotes } from '../midi/notes.ts';
import { align } from './align.ts';
import { barsFrom } from './follow.ts';
import { formGrid } from './form-grid.ts';

const BPM = 100;
/** Seconds of a bar as written, and before the first one. */
const BAR = 2.4;
const SILENCE = 0.7;

/** Four bars, each unlike the others. */
const LESSON = swingOf(['x.. ..x x.x ..x | ..x ... .x. x.. | x.x ... ... xxx | ... xx. ..x ...'], {
  bpm: BPM,
  more: 'balance: {bass: -10}\n',
});

function formOf(bars: number): Form {
  return { name: 'loop', sections: [{ play: 'pattern', bars, ending: null }], repeat: 1, countInBars: 0 };
}

/** The tempo at a place, in bars from the first, as a share of what is asked. */
type Course = (bar: number) => number;

/** Seconds of a place in bars, when the tempo takes a course. */
function secondsThrough(course: Course, bars: number): (place: number) => number {
  const parts = 64;
  const at = [SILENCE];
  for (let i = 0; i < bars * parts; i += 1) at.push(at.at(-1)! + BAR / parts / course((i + 0.5) / parts));
  return (place) => {
    const index = Math.min(bars * parts - 1, Math.max(0, Math.floor(place * parts)));
    return at[index]! + (place * parts - index) * (at[index + 1]! - at[index]!);
  };
}

/** Bars of the form in the order in which they are played, each stroke up to 8 ms off, at a tempo that changes. */
function play(bars: readonly number[], course: Course): readonly Stroke[] {
  const { strokes } = perform(LESSON, { exercise: 1, form: formOf(Math.max(...bars)), bpm: Bpm(BPM) });
  const random = seededRandom('hands');
  const seconds = secondsThrough(course, bars.length);
  return bars
    .flatMap((bar, index) =>
      strokes
        .filter(({ written }) => written.bar === bar)
        .map((stroke) => {
          const place = stroke.timeSeconds / BAR - (bar - 1) + index;
          return { ...stroke, timeSeconds: Seconds(seconds(place) + 0.016 * (random.next() - 0.5)) };
        }),
    )
    .toSorted((a, b) => a.timeSeconds - b.timeSeconds);
}

/** The report on a recording of strokes. */
function hear(strokes: readonly Stroke[], bars: number) {
  const samples = sounded(strokes, strokes.at(-1)!.timeSeconds + 1);
  const { report, refusal } = listen(samples, RATE, {
    lesson: LESSON,
    exercise: 1,
    form: formOf(bars),
  });
  if (!report) throw new Error(refusal.fact);
  return report;
}

const nameOf = ({ voice, written }: Pick<Stroke, 'voice' | 'written'>) =>
  `${voice} ${written.bar}.${written.beat}.${written.slot}`;

/**
 * Share of strokes that are reported within 50 ms with the place where they are written, of voices that the report does
 * not say it can hardly tell: what is asked here is whether the bars are followed.
 */
function shareFound(strokes: readonly Stroke[], report: ReturnType<typeof hear>): number {
  const untold = new Set<string>(report.unheard?.flatMap((one) => ('voice' in one ? [one.voice] : [])));
  const told = strokes.filter((stroke) => !untold.has(stroke.voice));
  const found = told.filter((stroke) =>
    report.strokes.some(
      ({ voice, written, timeSeconds }) =>
        written !== null &&
        nameOf({ voice, written }) === nameOf(stroke) &&
        Math.abs(timeSeconds - stroke.timeSeconds) < 0.05,
    ),
  );
  return found.length / told.length;
}

const bars = (count: number) => Array.from({ length: count }, (_, i) => i + 1);
/** Evenly from the asked tempo to a share of it over some bars. */
const drift =
  (to: number, over: number): Course =>
  (bar) =>
    1 + ((to - 1) * bar) / over;
/** A tempo that changes from bar to bar by three percent as a normal distribution, drawn back to what is asked. */
function wandering(seed: string): Course {
  const random = seededRandom(seed);
  const logs = [0];
  for (let i = 0; i < 20; i += 1) {
    const normal = Array.from({ length: 12 }, () => random.next()).reduce((a, b) => a + b, -6);
    logs.push(0.9 * logs.at(-1)! + 0.03 * normal);
  }
  return (bar) => {
    const from = Math.floor(bar);
    return Math.exp(logs[from]! + (bar - from) * (logs[from + 1]! - logs[from]!));
  };
}

/** Share of strokes at their place: a few may be misheard, while one bar of sixteen that is lost is more than this. */
const NEARLY_ALL = 0.94;

describe('a recording whose tempo changes', () => {
  it.each<[string, number, Course]>([
    ['rises by 12 % over 8 bars', 8, drift(1.12, 8)],
    ['falls by 12 % over 8 bars', 8, drift(0.88, 8)],
    ['rises by 20 % over 16 bars', 16, drift(1.2, 16)],
    ['falls by 20 % over 16 bars', 16, drift(0.8, 16)],
    ['steps up by 12 % and down again', 12, (bar) => (bar >= 4 && bar < 9 ? 1.12 : 1)],
    ['steps down by 10 % and up again', 12, (bar) => (bar >= 5 && bar < 8 ? 0.9 : 1)],
    ['wanders by 3 % from bar to bar', 12, wandering('wander')],
  ])('[LI47] is followed bar by bar when it %s', (_, count, course) => {
    const strokes = play(bars(count), course);
    const report = hear(strokes, count);
    expect(report.playedBars).toEqual(bars(count));
    expect(shareFound(strokes, report)).toBeGreaterThanOrEqual(NEARLY_ALL);
    // definition: the tempo of the course in the middle of the first and of the last bar, smoothed over two bars
    expect(Math.abs(report.tempo[0]!.bpm / (BPM * course(0.5)) - 1)).toBeLessThan(0.04);
    expect(Math.abs(report.tempo.at(-1)!.bpm / (BPM * course(count - 0.5)) - 1)).toBeLessThan(0.04);
  });

  it('[LI48] has a bar played again and one left out where they are, at a tempo that drifts too', () => {
    // bar 2 again, bar 6 left out
    const order = [1, 2, 2, 3, 4, 5, 7, 8];
    for (const course of [() => 1, drift(0.88, 8)]) {
      const strokes = play(order, course);
      const report = hear(strokes, 8);
      expect(report.playedBars).toEqual(order);
      expect(shareFound(strokes, report)).toBeGreaterThanOrEqual(NEARLY_ALL);
    }
  });
});

describe('notes whose tempo changes', () => {
  it('[LI47] lie in bars whose lines are within 20 ms of where they were played', () => {
    for (const course of [drift(1.2, 16), drift(0.8, 16), wandering('lines')]) {
      const strokes = play(bars(16), course);
      const grid = formGrid(perform(LESSON, { exercise: 1, form: formOf(16), bpm: Bpm(BPM) }), LESSON.meter);
      const seconds = secondsThrough(course, 16);
      const lines = align(observeNotes(notesSent(strokes)), grid)?.bars.map((bar) => bar.startSeconds) ?? [];
      // definition: where the course of the tempo has the bar lines
      const errors = bars(16).map((bar) => Math.abs((lines[bar - 1] ?? 0) - seconds(bar - 1)));
      expect(Math.max(...errors)).toBeLessThan(0.02);
    }
  });

  it('[LI48] keep the bars that follow a bar played again, and a bar left out', () => {
    const order = [1, 2, 3, 3, 4, 5, 7, 8];
    const strokes = play(order, wandering('notes'));
    const { report } = listenToNotes(notesSent(strokes), Seconds(30), {
      lesson: LESSON,
      exercise: 1,
      form: formOf(8),
    });
    expect(report?.playedBars).toEqual(order);
    expect(report?.strokes.map(({ written }) => written)).toEqual(strokes.map(({ written }) => written));
    expect(report?.missed).toEqual([]);
  });
});

describe('bars whose beats are not of one length', () => {
  it('[LI5900] end where they end, the last one too, of which only beats were walked', () => {
    const text = 'title: Seven\nmeter: 2+2+3/8\ngroove: {hihat: xx xx xxx}\nexercises: [x. .x x.x]';
    const lesson = parseLesson(text, 'seven.lesson.yaml').lesson!;
    const grid = formGrid(perform(lesson, { exercise: 1, form: formOf(2), bpm: Bpm(BPM) }), lesson.meter);
    // definition: a bar of seven eighths at 100 quarter notes a minute lasts 7 × 0.3 s; its beats begin at 0, 2 and 4
    const walked = [0, 2, 4, 7, 9, 11].map((eighths, beat) => ({
      seconds: 1 + eighths * 0.3,
      barSeconds: 2.1,
      beat: beat % 3,
    }));
    const bars = barsFrom(walked, grid, 0);
    expect(bars.map(({ startSeconds }) => startSeconds)).toEqual([1, expect.closeTo(3.1, 9)]);
    for (const { barSeconds } of bars) expect(barSeconds).toBeCloseTo(2.1, 9);
    const upbeat = barsFrom(walked.slice(1, 5), grid, 0);
    expect(upbeat.map(({ startSeconds }) => startSeconds)).toEqual([
      expect.closeTo(1, 9),
      expect.closeTo(3.1, 9),
    ]);
    for (const { barSeconds } of upbeat) expect(barSeconds).toBeCloseTo(2.1, 9);
  });
});
