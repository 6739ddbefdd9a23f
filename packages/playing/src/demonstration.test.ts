import { Seconds } from '@shedbook/core';
import { expect, it } from 'vitest';
import { asked, playNotes, reportOfNotes } from '../../../internal/testing/played-notes.ts';
import { playedClock } from './clock.ts';
import { type Demonstration, demonstrate, demonstrated } from './demonstration.ts';
import { landingsOf } from './landings.ts';

/** Seconds of the recording that are left out before the demonstration. */
const FROM = 0.5;

it('[PL3600] a demonstration has the ball down on each stroke when its teacher strikes it, also as it is written in a file', () => {
  const notes = playNotes(1, 100, ({ timeSeconds, ...note }) => ({
    ...note,
    timeSeconds: Seconds(timeSeconds - timeSeconds ** 2 / 400),
  }));
  const heard = { exercise: asked.exercise as number, form: asked.form, report: reportOfNotes(notes) };
  const made = demonstrate(asked.lesson, heard, { fromSeconds: FROM, toSeconds: 24 });
  const read = JSON.parse(JSON.stringify(made)) as Demonstration;
  expect(read).toEqual(made);
  expect([read.formBars, read.seconds]).toEqual([[1, 2, 3, 4, 5, 6, 7, 8], 23.5]);
  const program = demonstrated(asked.lesson, read);
  const clock = playedClock(read.knots);
  const struck = notes
    .filter(({ voice }) => voice === 'snare' || voice === 'ride')
    .map(({ timeSeconds }) => timeSeconds - FROM);
  const landings = landingsOf(program).filter(({ bar }) => bar > 0);
  // definition: four beats and three strokes between beats in each of eight bars
  expect(landings).toHaveLength(8 * (4 + 3));
  for (const { place } of landings) {
    const at = clock.secondsAt(place);
    // definition: times are written to 0.1 ms
    expect(Math.min(...struck.map((time) => Math.abs(time - at)))).toBeLessThanOrEqual(0.5e-4 + 1e-9);
  }
  for (const onset of read.onsets)
    expect(Math.min(...notes.map((note) => Math.abs(note.timeSeconds - FROM - onset)))).toBeLessThan(1e-4);
});

it('[PL3600] a bar that is played again is shown where it is written', () => {
  const form = { ...asked.form, sections: [{ play: 'pattern' as const, bars: 4, ending: null }] };
  const played = { exercise: 1, form, bpm: reportOfNotes(playNotes(1, 100)).alignment.bpm };
  const program = demonstrated(asked.lesson, { ...played, formBars: [1, 2, 2, 4] });
  // definition: each bar has the number of the bar of the form, at the next bar's place
  expect(program.bars.map(({ bar, place }) => [bar, place])).toEqual([
    [1, 0],
    [2, 1],
    [2, 2],
    [4, 3],
  ]);
  expect(landingsOf(program).map(({ bar }) => bar)).toEqual(
    [1, 2, 2, 4].flatMap((bar) => Array.from({ length: 7 }, () => bar)),
  );
});
