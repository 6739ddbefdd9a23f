import { EMPTY_LOG } from '@shedbook/coach';
import { recordRound } from '@shedbook/judge';
import { expect, it } from 'vitest';
import {
  judgeKit,
  KIT_FORM,
  KIT_LESSON,
  KIT_TAKES,
  LADDER,
  recordKit,
} from '../../../../internal/testing/stories/kit-takes.ts';
import { climbedOf } from './climbed.ts';
import { withTake } from './take-in.ts';

it.each([...KIT_TAKES, LADDER])(
  '[ST108] $name: the desk keeps round by round what the judge says',
  (story) => {
    const { report, judgement } = judgeKit(story, recordKit(story));
    const exercise = KIT_LESSON.exercises[story.exercise - 1];
    if (!report || !exercise) throw new Error('no report');
    const shelf = { id: 'first-swing', lesson: { ...KIT_LESSON, forms: [KIT_FORM] } };
    const brought = { report, id: 'r', shelf, exercise, startedAt: '2026-11-25T18:00:00+01:00' };
    const [entry] = withTake(EMPTY_LOG, brought, story.level).entries;
    expect(entry?.loops).toEqual(judgement.rounds.map(recordRound));
    // definition: the rungs of the ladder, each clean
    if (story === LADDER)
      expect(entry?.loops.map(({ bpm, verdict }) => [Math.round(bpm), verdict])).toEqual(
        [72, 80, 88, 96].map((bpm) => [bpm, 'clean']),
      );
  },
);

it.each(KIT_TAKES.slice(0, 1))('[ST800] the rungs of a ladder stand one by one, $name has none', (steady) => {
  const shelf = { id: 'first-swing', lesson: { ...KIT_LESSON, forms: [KIT_FORM] } };
  const said = [steady, LADDER].map((story) => {
    const { report } = judgeKit(story, recordKit(story));
    const exercise = KIT_LESSON.exercises[story.exercise - 1];
    if (!report || !exercise) throw new Error('no report');
    const brought = { report, id: story.name, shelf, exercise, startedAt: '2026-11-25T18:00:00+01:00' };
    return climbedOf([shelf], withTake(EMPTY_LOG, brought, story.level)).flatMap(({ rounds }) =>
      rounds.map(({ bpm, verdict }) => [Math.round(bpm), verdict]),
    );
  });
  // definition: the ladder of that take, a step of 8 each round from 72 on
  expect(said).toEqual([[], [72, 80, 88, 96].map((bpm) => [bpm, 'clean'])]);
});
