import { Bpm, parseLesson, Seconds } from '@shedbook/core';
import { createProgram } from '@shedbook/playing';
import type { Heard } from '@shedbook/stand';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { formOf } from './choice.ts';
import { type BarStarted, type LoopEnded, type PracticeEvent, watchBars } from './events.ts';

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  vi.useRealTimers();
});

const { lesson: read } = parseLesson('title: Events\nexercises: ["x x x x"]\n', 'lesson');
if (!read) throw new Error('the lesson has problems');
const PROGRAM = createProgram(read, { exercise: 1, form: formOf(read, 'loop'), layers: 9, bpm: Bpm(120) });

/** When the first bar begins, in seconds of the audio context. */
const START = 3.21;

/** What is heard at a moment; the tempo is doubled from the second round on. */
function heardAt(seconds: number): Heard | null {
  // definition: at 120 a bar of 4/4 lasts 2 s and a whole note too, at 240 half as long; the form has four bars
  const second = START + 8;
  const pass = seconds < second ? 0 : 1 + Math.floor((seconds - second) / 4);
  const bpm = pass === 0 ? 120 : 240;
  const from = pass === 0 ? START : second + (pass - 1) * 4;
  const secondsOf = (place: number) => from + (place * 240) / bpm;
  return {
    program: PROGRAM,
    place: ((seconds - from) * bpm) / 240,
    pass,
    bpm: Bpm(bpm),
    secondsOf,
    fromPlace: 0,
  };
}

/** Everything told of 15 s, where the page comes to look so many milliseconds after its last look. */
function toldOf(heard: (seconds: number, now: number) => Heard | null, lookMs: (look: number) => number) {
  let now = 1;
  const events: PracticeEvent[] = [];
  const player = { heard: (at: number = now) => heard(at, now), heardSeconds: () => Seconds(now) };
  const stop = watchBars(player, (event) => events.push(event));
  for (let look = 0; now < 16; look += 1) {
    now += lookMs(look) / 1000;
    vi.advanceTimersByTime(25);
  }
  stop();
  return events;
}

it.each([
  ['at its leisure', () => 25],
  // definition: bars of 1 s are shorter than what the page is away for
  ['away for more than a bar now and then', (look: number) => (look % 40 === 39 ? 1500 : 25)],
] as const)('[ST56] tells of every bar and loop with its exact times, and of none twice: %s', (_, lookMs) => {
  const events = toldOf(heardAt, lookMs);
  const bars = events.filter((event): event is BarStarted => event.kind === 'bar');
  // definition: four bars of 2 s, then bars of 1 s
  expect(
    bars.slice(0, 8).map(({ pass, bar, startSeconds, endSeconds }) => [pass, bar, startSeconds, endSeconds]),
  ).toEqual([
    [0, 1, START, START + 2],
    [0, 2, START + 2, START + 4],
    [0, 3, START + 4, START + 6],
    [0, 4, START + 6, START + 8],
    [1, 1, START + 8, START + 9],
    [1, 2, START + 9, START + 10],
    [1, 3, START + 10, START + 11],
    [1, 4, START + 11, START + 12],
  ]);
  expect(new Set(bars.map(({ pass, bar }) => `${pass} ${bar}`)).size).toBe(bars.length);
  const loops = events.filter((event): event is LoopEnded => event.kind === 'loop');
  expect(
    loops.map(({ pass, bpm, startSeconds, endSeconds }) => [pass, bpm, startSeconds, endSeconds]),
  ).toEqual([
    [0, 120, START, START + 8],
    [1, 240, START + 8, START + 12],
  ]);
});

it('[ST56] misses no bar where the sound thread says late that it went on', () => {
  // definition: the second round begins 8 s after the first; the page hears of it a second and a half later
  const late = (seconds: number, now: number) => {
    const first = heardAt(START + 1);
    return first && now < START + 9.5 ? { ...first, place: (seconds - START) / 2 } : heardAt(seconds);
  };
  const bars = toldOf(late, () => 25).filter((event): event is BarStarted => event.kind === 'bar');
  expect(bars.slice(0, 6).map(({ pass, bar }) => `${pass} ${bar}`)).toEqual([
    ...['0 1', '0 2', '0 3', '0 4', '1 1', '1 2'],
  ]);
});

it('[ST115] a round that was gone on with in its third bar is told from there, and counts for nothing', () => {
  let now = 1;
  const events: PracticeEvent[] = [];
  const heard = (at = now) => {
    const each = heardAt(at);
    // definition: bars of 4/4 are one whole note long, so the third begins at 2
    return each && { ...each, fromPlace: each.pass === 0 ? 2 : 0 };
  };
  const stop = watchBars({ heard, heardSeconds: () => Seconds(now) }, (event) => events.push(event));
  for (let i = 0; i < 650; i += 1) {
    now += 0.023;
    vi.advanceTimersByTime(23);
  }
  stop();
  const bars = events.filter((event): event is BarStarted => event.kind === 'bar');
  expect(bars.slice(0, 3).map(({ pass, bar }) => [pass, bar])).toEqual([
    [0, 3],
    [0, 4],
    [1, 1],
  ]);
  const loops = events.filter((event): event is LoopEnded => event.kind === 'loop');
  expect(loops.map(({ pass }) => pass)).toEqual([1]);
});
