/** Takes with a planted fault: sentences, table and places tell the same one. */
import type { FullReport, Lesson, Voice } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { hearStory, taskOf } from '../../../internal/testing/stories/hear.mjs';
import { sheetNamed } from '../../../internal/testing/stories/lessons.mjs';
import type { Changes } from '../../../internal/testing/stories/story.d.ts';
import { asJudged, judge } from './index.ts';

const BARS = 4;

function heard(
  play: Changes,
  how: { readonly microphone?: boolean; readonly click?: boolean; rounds?: number },
) {
  const lesson = sheetNamed() as Lesson;
  const { rounds = 1, ...rest } = how;
  const form = {
    ...{ name: 'loop', repeat: 1, countInBars: 0 },
    sections: [{ play: 'pattern' as const, bars: BARS, ending: null }],
  };
  const story = {
    ...({ name: JSON.stringify(play), exercise: 10, level: 'intermediate', is: 'clean', rounds } as const),
    ...rest,
    play: { spreadMs: 5, ...play },
  };
  const { take } = hearStory(lesson, form, story);
  const task = taskOf(lesson, form, story);
  const { report } = take;
  if (!report) throw new Error('a report');
  const judgement = judge(task, take, 'intermediate');
  return { task, judgement, report, told: asJudged(report, judgement) };
}

const countsOf = ({ voices }: FullReport, voice: Voice) => {
  const of = voices[voice];
  return of && [of.hits, of.missed, of.extra];
};

const WAYS = [
  ['notes by oneself', {}],
  ['an ear without mistakes, beside a click', { microphone: true, click: true }],
] as const;

describe.each(WAYS)('%s', (_, how) => {
  it('[JU5300] a limb that came far too late is late in all of them, and nowhere missing and too much', () => {
    const { judgement, told } = heard({ lateMs: { snare: 110 } }, how);
    expect(judgement.verdict.about.map(({ what, voice }) => [what, voice])).toEqual([['late', 'snare']]);
    // definition: exercise 10 has five strokes of the snare a bar
    expect(countsOf(told, 'snare')).toEqual([5 * BARS, 0, 0]);
    expect(Math.abs((told.voices.snare?.offsetMs.median ?? 0) - 110)).toBeLessThan(5);
    const own = told.strokes.filter(({ voice }) => voice === 'snare');
    expect(own.every(({ offsetMs }) => Math.abs((offsetMs ?? 0) - 110) < 25)).toBe(true);
    expect(told.missed.concat()).toEqual([]);
    const places = told.places?.filter(({ voice }) => voice === 'snare') ?? [];
    expect(places.map(({ missed, offsetsMs }) => [missed, offsetsMs.length])).toEqual(
      Array.from({ length: 5 }, () => [0, BARS]),
    );
  });

  it('[JU5300] what is missing is missing as often in the table as in the sentence', () => {
    const { judgement, told } = heard({ leavesAt: [{ voice: 'snare', bars: [2] }] }, how);
    const [about] = judgement.verdict.about;
    expect(about).toMatchObject({ what: 'missing', voice: 'snare', times: 5, of: 20 });
    expect(countsOf(told, 'snare')).toEqual([15, 5, 0]);
    expect(told.missed.map(({ voice, bar }) => [voice, bar])).toEqual(
      Array.from({ length: 5 }, () => ['snare', 2]),
    );
    expect(told.missedSeconds).toHaveLength(told.missed.length);
  });

  it('[JU5301] late in two bars of four is late there', () => {
    const { judgement, told } = heard({ lateAt: [{ voice: 'snare', bars: [3, 4], ms: 100 }] }, how);
    const [about, ...more] = judgement.verdict.about;
    expect(more).toEqual([]);
    expect(about).toMatchObject({ what: 'late', voice: 'snare', bars: [3, 4] });
    expect(Math.abs((about?.ms ?? 0) - 100)).toBeLessThan(6);
    expect(judgement.verdict.is).toBe('not yet');
    expect(countsOf(told, 'snare')).toEqual([20, 0, 0]);
  });

  it('[JU5301] late in one round of three is late in that round; in one bar of it, in that bar', () => {
    const inRound = heard({ lateAt: [{ voice: 'bass', rounds: [1], ms: 90 }] }, { ...how, rounds: 3 });
    expect(inRound.judgement.verdict.about).toEqual([
      expect.objectContaining({ what: 'late', voice: 'bass', rounds: [2] }),
    ]);
    expect(inRound.judgement.verdict.about[0]?.bars).toBeUndefined();
    const inBar = heard(
      { lateAt: [{ voice: 'snare', rounds: [2], bars: [2], ms: -90 }] },
      { ...how, rounds: 3 },
    );
    expect(inBar.judgement.verdict.about).toEqual([
      expect.objectContaining({ what: 'early', voice: 'snare', bars: [2], rounds: [3] }),
    ]);
  });

  it('[JU5301] missing in two rounds of four is told by the rounds, in one bar each time by the bar', () => {
    const leave = (at: { rounds?: number[]; bars?: number[] }) =>
      heard({ leavesAt: [{ voice: 'snare', ...at }] }, { ...how, rounds: 4 }).judgement.verdict.about[0];
    expect(leave({ rounds: [0, 2] })).toMatchObject({ what: 'missing', voice: 'snare', rounds: [1, 3] });
    expect(leave({ bars: [3] })).toMatchObject({ what: 'missing', voice: 'snare', bars: [3] });
  });
});

it('[JU5300] of a voice that is called late no table says that its strokes are a guess', () => {
  const { task, report } = heard({ lateMs: { snare: 55 } }, { microphone: true });
  const doubtful = { ...report, unheard: [{ reason: 'hard-to-tell', voice: 'snare' }] as const };
  const judgement = judge(task, { report: doubtful }, 'intermediate');
  expect(judgement.verdict.about).toMatchObject([{ what: 'late', voice: 'snare' }]);
  expect(asJudged(doubtful, judgement).unheard).toEqual([]);
  // where nothing is told of it, the doubt stands
  const right = heard({}, { microphone: true });
  const open = { ...right.report, unheard: doubtful.unheard };
  expect(asJudged(open, judge(right.task, { report: open }, 'intermediate')).unheard).toEqual(
    doubtful.unheard,
  );
});

const PLANTED: readonly Changes[] = [
  {},
  { lateMs: { snare: 110 } },
  { lateAt: [{ voice: 'bass', bars: [1, 2], ms: 90 }] },
  { leaves: ['snare'] },
  { straight: true },
  { on: { snare: 'tom-high' } },
  { exercise: 13 },
  { beatsLate: 1 },
  { adds: [{ voice: 'snare', place: '2.2' }] },
];

it.each(PLANTED)('[JU5300] %j: the report as it was judged gets the same verdict', (play) => {
  for (const [, how] of WAYS) {
    const { task, judgement, told } = heard(play, how);
    const again = judge(task, { report: told }, 'intermediate');
    const namesOf = ({ is, about }: typeof again.verdict) => [
      is,
      ...about.map(({ what, voice }) => [what, voice]),
    ];
    expect(namesOf(again.verdict)).toEqual(namesOf(judgement.verdict));
    expect(asJudged(told, again).voices).toEqual(told.voices);
  }
});

it('[JU5301] a hand whose strokes scatter is late in no bar', () => {
  for (let seed = 0; seed < 4; seed += 1) {
    const { judgement } = heard({ spreadMs: 22, spreadDb: seed / 100 }, { microphone: true, rounds: 2 });
    expect(judgement.verdict.about.filter(({ bars, rounds }) => bars ?? rounds)).toEqual([]);
  }
});
