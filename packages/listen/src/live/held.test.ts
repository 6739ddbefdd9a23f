/** A roll that is held, beside the ride, while the page listens. */
import { type Lesson, parseLesson, perform, Seconds } from '@shedbook/core';
import { expect, it } from 'vitest';
import { RATE, sounded } from '../../test/takes.ts';
import { createLiveListener } from './live-listener.ts';
import type { LiveStroke } from './live-stroke.ts';

const TEXT = `
title: Held
tempo: 80
feel: even
groove: {ride: x x x x, hihat-foot: {pattern: . x . x, level: -6}}
vocabulary: [x, b, .]
exercises:
  - x x b ~
`;
const LESSON = parseLesson(TEXT, 'held').lesson as Lesson;
const FORM = {
  name: 'four',
  sections: [{ play: 'pattern', bars: 4, ending: null }],
  repeat: 1,
  countInBars: 0,
} as const;
const START = Seconds(0.4);

// definition: nothing sounds but what is written
it('[LI8102] live, no bounce of a roll is a stroke too many, at once or once the bar is over', () => {
  const asked = { lesson: LESSON, exercise: 1, form: FORM };
  const { strokes, durationSeconds } = perform(LESSON, asked);
  const later = strokes.map((stroke) => ({ ...stroke, timeSeconds: Seconds(stroke.timeSeconds + START) }));
  const audio = sounded(later, Seconds(durationSeconds + START + 0.5));
  const listener = createLiveListener(asked, { sampleRateHz: RATE });
  listener.startLoop(START, LESSON.tempo.startBpm);
  const heard: LiveStroke[] = [];
  for (let at = 0; at < audio.length; at += RATE / 100)
    heard.push(...listener.push(audio.subarray(at, at + RATE / 100)));
  const hands = heard.filter(({ voice }) => voice === 'snare' || voice === 'ride');
  // twelve strokes of the snare and sixteen of the ride are written
  expect(hands.filter(({ written }) => written).length).toBeGreaterThan(20);
  expect(hands.filter(({ written }) => !written)).toEqual([]);
  const { report } = listener.loopReport(0);
  expect(report?.missed.filter(({ voice }) => voice !== 'hihat-foot')).toEqual([]);
  expect(report?.strokes.filter(({ written }) => !written)).toEqual([]);
});
