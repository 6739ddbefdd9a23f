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
