/** What was played, told as what it is: heard from a kit's notes, or as an ear hears that makes no mistake. */
import type { Form, FullReport, Lesson, Voice } from '@shedbook/core';
import { expect, it } from 'vitest';
import { hearStory, taskOf } from '../../../internal/testing/stories/hear.mjs';
import { sheetNamed } from '../../../internal/testing/stories/lessons.mjs';
import { type JudgeTask, judge, type Verdict } from './index.ts';

const FORM: Form = {
  name: 'loop',
  sections: [{ play: 'pattern', bars: 4, ending: null }],
  repeat: 1,
  countInBars: 0,
};

interface Story {
  readonly sheet?: string;
  readonly exercise: number;
  readonly rounds?: number;
  readonly click?: boolean;
  readonly microphone?: boolean;
  readonly play: object;
}

function verdictOn(story: Story, unheard: readonly Voice[] = []): Verdict {
  const lesson = sheetNamed(story.sheet) as Lesson;
  const told = { name: 'told', level: 'beginner', ...story };
  const { take } = hearStory(lesson, FORM, told as never);
  const report = take.report as FullReport | null;
  const doubted = unheard.map((voice) => ({ reason: 'hard-to-tell', voice }) as const);
  const heard = { ...take, report: report && { ...report, unheard: doubted } };
  return judge(taskOf(lesson, FORM, told as never) as JudgeTask, heard, 'beginner').verdict;
}

it('[JU340] each of two voices that play each other’s part is told where it belongs', () => {
  const verdict = verdictOn({
    ...{ exercise: 11, click: true },
    play: { on: { ride: 'snare', snare: 'ride' }, spreadMs: 10 },
  });
  expect(verdict.is).toBe('not yet');
  expect(verdict.about.map(({ what, voice, instead }) => [what, voice, instead])).toEqual(
    expect.arrayContaining([
      ['wrong-voice', 'ride', 'snare'],
      ['wrong-voice', 'snare', 'ride'],
    ]),
  );
  expect(verdict.about.map(({ what }) => what)).not.toContain('other-exercise');
});

it('[JU341] a bar that was left out is told by its number', () => {
  const verdict = verdictOn({
    ...{ sheet: 'march', exercise: 2, rounds: 3 },
    play: { skips: { round: 1, bar: 2 }, spreadMs: 8 },
  });
  // definition: after the first bar, once in three rounds; its bars come in pairs, so that the third may be the first
  expect(['nearly', 'not yet']).toContain(verdict.is);
  expect(verdict.about[0]).toMatchObject({ what: 'missing', times: expect.any(Number) });
  expect(verdict.about[0]?.voice).toBeUndefined();
  expect(verdict.about[0]?.places?.[0]).toEqual({ bar: 2, beat: 1, slot: 1 });
});

it('[JU342] ghost notes like accents are too loud, a snare that is softer as a whole is not', () => {
  const story = { sheet: 'funk', exercise: 6, click: true };
  // definition: two of four snare strokes a bar are ghost notes, 18 dB under the back beat
  expect(verdictOn({ ...story, play: { ghostsDb: 16, spreadMs: 8 } }).about[0]).toMatchObject({
    ...{ what: 'loud', voice: 'snare' },
    places: expect.arrayContaining([{ bar: 1, beat: 1, slot: 2 }]),
  });
  expect(verdictOn({ ...story, play: { louderDb: { snare: -4 }, spreadMs: 8 } }).is).toBe('clean');
});

it('[JU343] sounds at any time are nobody’s playing', () => {
  const lesson = sheetNamed() as Lesson;
  const said = lesson.exercises.map(
    ({ number }) =>
      verdictOn({
        ...{ exercise: number, rounds: 1, click: true, microphone: true },
        play: { only: [], sounds: 11 },
      }).is,
  );
  expect(new Set(said)).toEqual(new Set(['not judged']));
});

it('[JU344] another exercise is named, though the ear doubts the voice at the places of the one asked', () => {
  const story = { exercise: 10, click: true, microphone: true, play: { exercise: 15, spreadMs: 8 } };
  expect(verdictOn(story, ['snare']).about[0]).toMatchObject({ what: 'other-exercise', exercise: 15 });
});
