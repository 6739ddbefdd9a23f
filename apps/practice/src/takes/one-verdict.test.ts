import { Bpm } from '@shedbook/core';
import { judge, judgeTaken, judgeTaskOf, recordRound } from '@shedbook/judge';
import { expect, it } from 'vitest';
import {
  judgeKit,
  KIT_FORM,
  KIT_TAKES,
  type KitStory,
  type KitTake,
  LADDER,
  KIT_LESSON as lesson,
  recordKit,
} from '../../../../internal/testing/stories/kit-takes.ts';
import { Listening } from '../ear/listening.ts';
import { takeFrom } from './take-from.ts';

/** The take as the page hears, judges and keeps it. */
function practised(story: KitStory, { bpm, rounds, countInSeconds, notes }: KitTake) {
  const task = {
    lesson,
    exercise: story.exercise,
    form: KIT_FORM,
    layers: lesson.layers.length,
    bpm,
    mine: [],
  };
  const form = { ...KIT_FORM, repeat: 1, countInBars: 0 };
  const asked = { lesson, exercise: story.exercise, form, bpm };
  const clock = { sampleRateHz: null, originSeconds: 0, latencySeconds: 0 };
  const ear = new Listening({ asked, ...clock, id: story.name });
  for (const { startSeconds, durationSeconds, bpm: at } of rounds) {
    const from = startSeconds + countInSeconds;
    ear.begin({ startSeconds: from, endSeconds: from + durationSeconds, bpm: Bpm(at) });
  }
  for (const { voice, timeSeconds, levelDb } of notes) ear.note({ seconds: timeSeconds, voice, levelDb });
  const loops = ear.over(Number.POSITIVE_INFINITY).map(({ loop, number, heard }) => {
    const played = { ...task, bpm: loop.bpm };
    const judgement = judge(judgeTaskOf(played), heard, story.level);
    return { stretch: story.name, number, loop, task: played, judgement, spreadsMs: {} };
  });
  const stretch = { id: story.name, startedAt: new Date('2026-11-25T18:00:00Z'), task, loops };
  const take = { kind: 'take' as const, id: story.name, ...ear.take(), originSeconds: 0 };
  const ended = { stretch, take, kind: 'midi' as const, latencySeconds: 0 };
  const kept = takeFrom(ended, { id: 'first-swing', title: lesson.title });
  if (!kept) throw new Error('no take was kept');
  return { kept: kept.take, judgement: judgeTaken(kept.take, lesson, KIT_FORM, story.level) };
}

it.each([...KIT_TAKES, LADDER])(
  '[ST79] $name: loop by loop and as a take the page says what the judge says',
  (story) => {
    const take = recordKit(story);
    const { kept, judgement } = practised(story, take);
    const { judgement: one } = judgeKit(story, take);
    expect(judgement?.verdict).toEqual(one.verdict);
    expect(judgement?.rounds).toEqual(one.rounds);
    // definition: a loop that is judged when it is over, and the same loop in the take
    const kinds = one.rounds.map((round) => recordRound(round).verdict);
    expect(kept.verdicts.map(({ verdict }) => verdict)).toEqual(kinds);
  },
);
