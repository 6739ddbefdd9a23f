import { Bpm, type Hertz, perform, Seconds, TakeDb, type Voice } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { RATE, sounded, swingOf } from '../../test/takes.ts';
import { createLiveListener } from './live-listener.ts';

const BPM = Bpm(120);
const START = 0.4;
const LESSON = swingOf(['x.. ..x x.x ..x']);
const FORM = {
  ...{ name: 'two', repeat: 1, countInBars: 0 },
  sections: [{ play: 'pattern', bars: 2, ending: null }],
} as const;
const asked = { lesson: LESSON, exercise: 1, form: FORM, bpm: BPM };
const ROUND = perform(LESSON, { exercise: 1, form: FORM, bpm: BPM });

/** A listener for rounds of which some are played as written, and nothing sounds in the others. */
function listenerFor(options: { readonly sampleRateHz?: Hertz }, rounds: readonly boolean[]) {
  const listener = createLiveListener(asked, { ...options, only: 'reports' });
  const starts = rounds.map((_, round) => START + round * ROUND.durationSeconds);
  for (const start of starts) listener.startLoop(Seconds(start), BPM);
  const strokes = starts.flatMap((start, round) =>
    rounds[round]
      ? ROUND.strokes.map((stroke) => ({ ...stroke, timeSeconds: Seconds(stroke.timeSeconds + start) }))
      : [],
  );
  return { listener, strokes, durationSeconds: Seconds(START + rounds.length * ROUND.durationSeconds + 0.5) };
}

const HEARD = {
  sound(rounds: readonly boolean[]) {
    const { listener, strokes, durationSeconds } = listenerFor({ sampleRateHz: RATE }, rounds);
    const audio = sounded(strokes, durationSeconds).map((sample) => 2 * sample);
    listener.push(audio);
    return listener;
  },
  notes(rounds: readonly boolean[]) {
    const { listener, strokes } = listenerFor({}, rounds);
    for (const { timeSeconds, voice, levelDb } of strokes)
      listener.note(timeSeconds, voice as Voice, TakeDb(levelDb));
    return listener;
  },
};

describe.each(['sound', 'notes'] as const)('rounds in which nobody played, by %s', (by) => {
  it.each([
    ['at the end', [true, false, false]],
    ['at the beginning', [false, true]],
    ['between', [true, false, true]],
  ] as const)('[LI1900] are no part of the report on the whole: %s', (_, rounds) => {
    const { report } = HEARD[by](rounds).finish();
    const played = rounds.filter(Boolean).length;
    // definition: what was asked in the rounds that were played is heard or missed, and nothing else is
    const due = played * ROUND.strokes.length;
    const placed = report?.strokes.filter(({ written }) => written) ?? [];
    expect(placed.length + (report?.missed.length ?? Number.NaN)).toBe(due);
    expect(report?.missed.length).toBeLessThan(0.05 * due);
    expect(report?.take.durationSeconds).toBeCloseTo(played * ROUND.durationSeconds, 6);
    expect(Math.abs((report?.alignment.bpm ?? 0) - BPM)).toBeLessThan(0.1);
    // a bar that nobody played is none of the form's
    const between = rounds.slice(rounds.indexOf(true), rounds.lastIndexOf(true) + 1);
    expect(report?.playedBars).toEqual(
      between.flatMap((isPlayed, round) => (isPlayed ? [2 * round + 1, 2 * round + 2] : [null, null])),
    );
  });
});

it('[LI1900] rounds in which next to nothing was heard are no part of it either, unless there are no others', () => {
  const ofRounds = (first: number) => {
    const { listener, strokes } = listenerFor({}, [true, true]);
    const heard = strokes.slice(ROUND.strokes.length - first, ROUND.strokes.length + 2);
    for (const { timeSeconds, voice, levelDb } of heard)
      listener.note(timeSeconds, voice as Voice, TakeDb(levelDb));
    const { report } = listener.finish();
    return [report?.strokes.length, report?.missed.length];
  };
  // definition: the strokes of one round, and two of two rounds
  expect(ofRounds(ROUND.strokes.length)).toEqual([ROUND.strokes.length, 0]);
  expect(ofRounds(0)).toEqual([2, 2 * ROUND.strokes.length - 2]);
});
