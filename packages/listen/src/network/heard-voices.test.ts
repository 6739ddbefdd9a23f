import { readFileSync } from 'node:fs';
import { type Form, Hertz, parseLesson, perform, Seconds } from '@shedbook/core';
import { render } from '@shedbook/sound';
import { expect, it, vi } from 'vitest';
import { keptKit } from '../../../../internal/testing/kept-kit.mjs';
import { listen } from '../listen.ts';
import { HEARD_VOICES } from './heard-voices.data.ts';

const RATE = Hertz(44_100);

const file = (path: string) => readFileSync(new URL(`../../../../${path}`, import.meta.url), 'utf8');

vi.mock('@shedbook/core', async (original) => {
  const core = await original<typeof import('@shedbook/core')>();
  return { ...core, VOICES: core.VOICES.toReversed() };
});

it('[LI56] the outputs stand in the order in which the weights were trained', () => {
  const list = /^VOICES = \[([^\]]+)\]/m.exec(file('internal/listen-lab/train.py'))?.[1] ?? '';
  const trained = [...list.matchAll(/'([^']+)'/g)].map(([, name]) => name);
  // definition: the program that trained the weights says which output is which voice
  expect(trained).toHaveLength(13);
  expect(HEARD_VOICES).toEqual(trained);
});

it("[LI56] the demo lesson is heard though core's list of voices stands in another order", () => {
  const { lesson } = parseLesson(file('demo/first-swing.lesson.yaml'), 'first-swing.lesson.yaml');
  if (!lesson) throw new Error('no lesson');
  const form: Form = {
    name: 'four',
    sections: [{ play: 'pattern', bars: 4, ending: null }],
    repeat: 1,
    countInBars: 0,
  };
  const asked = { lesson, exercise: 1, form };
  const { strokes, durationSeconds } = perform(lesson, asked);
  const later = strokes.map((stroke) => ({ ...stroke, timeSeconds: Seconds(stroke.timeSeconds + 0.5) }));
  const kit = keptKit({ sampleRateHz: RATE });
  const { left, right } = render({ strokes: later, durationSeconds: Seconds(durationSeconds + 1) }, { kit });
  const { report } = listen(
    left.map((sample, i) => sample + (right[i] as number)),
    RATE,
    asked,
  );
  // definition: what was rendered is what was played
  expect(report?.missed).toEqual([]);
  const names = (struck: readonly { readonly voice: string }[]) => struck.map(({ voice }) => voice).sort();
  expect(names(report?.strokes ?? [])).toEqual(names(strokes));
});
