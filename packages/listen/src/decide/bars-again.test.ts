import { type Form, type Lesson, parseLesson, perform } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { placeBars } from '../align/bars.ts';
import { formGrid } from '../align/form-grid.ts';
import { KIND_COUNT, kindOf, type Observations } from '../align/observations.ts';
import { placeAgain } from './bars-again.ts';
import { byVoice, type Chance } from './likelihood.ts';

const TEXT = `title: Slow twelve-eight
meter: 12/8
tempo: 52
feel: even
groove: {ride: x.. x.. x.. x.., hihat-foot: {pattern: . x . x, level: -8}}
comping: snare
exercises:
  - ... ... ... x..
`;
const lesson = parseLesson(TEXT, 'slow').lesson as Lesson;
const bars = (play: 'pattern' | 'time', count: number) => ({ play, bars: count, ending: null });
const FORM: Form = {
  name: 'example',
  sections: [bars('pattern', 8), bars('time', 2), bars('pattern', 4), bars('time', 2)],
  repeat: 1,
  countInBars: 0,
};
const grid = formGrid(perform(lesson, { exercise: 1, form: FORM }), lesson.meter);
const { barSeconds } = grid;
/**
 * What a first look takes for a snare where only foot and ride are struck, and what is left of it once it is known how
 * eagerly this kit is heard: middle values of our own recording of such a lesson.
 */
const FIRST_LOOK = 0.86;
const KNOWN_KIT = 0.4;

/** A take that goes through some bars of the form, from 0. */
function played(order: readonly number[]) {
  const strokes = order.flatMap((formBar, at) =>
    grid.bars[formBar]!.strokes.map(({ voice, position }) => ({
      voice,
      seconds: (at + position) * barSeconds,
    })),
  );
  const times = [...new Set(strokes.map(({ seconds }) => seconds))];
  const values = new Float64Array(times.length * KIND_COUNT);
  const at = (seconds: number, voice: 'ride' | 'snare') =>
    strokes.some((one) => one.seconds === seconds && one.voice === voice);
  for (const [i, seconds] of times.entries()) {
    for (const one of strokes.filter((each) => each.seconds === seconds))
      values[i * KIND_COUNT + kindOf(one.voice)] = 1;
    const isFoot = values[i * KIND_COUNT + kindOf('hihat-foot')] === 1;
    if (isFoot && !at(seconds, 'snare')) values[i * KIND_COUNT + kindOf('snare')] = FIRST_LOOK;
    values[i * KIND_COUNT + KIND_COUNT - 1] = 1;
  }
  const seen: Observations = { times: Float64Array.from(times), values };
  const chances = times.flatMap((timeSeconds, i): Chance[] => {
    const isFoot = values[i * KIND_COUNT + kindOf('hihat-foot')] === 1;
    const snare = at(timeSeconds, 'snare') ? 0.95 : KNOWN_KIT;
    return [
      { voice: 'ride', timeSeconds, struck: 0.98 },
      ...(isFoot ? [{ voice: 'hihat-foot', timeSeconds, struck: 0.9 } as const] : []),
      ...(isFoot ? [{ voice: 'snare', timeSeconds, struck: snare } as const] : []),
    ];
  });
  return { seen, chances: byVoice(chances) };
}

function heardBars(order: readonly number[]) {
  const { seen, chances } = played(order);
  const lines = order.map((_, at) => ({ startSeconds: at * barSeconds, barSeconds }));
  const first = placeBars(seen, grid, lines).bars;
  return { first, again: placeAgain(seen, grid, first, chances).map(({ formBar }) => formBar) };
}

const ALL = grid.bars.map((_, index) => index);

describe('the bars of a form of like bars', () => {
  it('[LI3300] who goes straight on leaves no bar out, however like the bars are', () => {
    // definition: the take is the form from its first bar to its last
    expect(heardBars(ALL).again).toEqual(ALL);
  });

  it('[LI3300] bars that are left out are told all the same', () => {
    // definition: the two bars of time after the eighth are not played
    const order = ALL.filter((bar) => bar !== 8 && bar !== 9);
    const { again } = heardBars(order);
    expect(again.map((bar) => grid.bars[bar ?? 0]?.strokes.length)).toEqual(
      order.map((bar) => grid.bars[bar]?.strokes.length),
    );
  });

  it('[LI3300] bars in which nothing is played stay so', () => {
    const { seen, chances } = played(ALL);
    const lines = ALL.map((at) => ({ startSeconds: at * barSeconds, barSeconds }));
    const first = placeBars(seen, grid, lines).bars.map((bar, at) =>
      at === 5 ? { ...bar, formBar: null } : bar,
    );
    expect(placeAgain(seen, grid, first, chances)[5]?.formBar).toBeNull();
  });
});
