/** Judging a loop that was heard; loaded when somebody begins to play to an ear. */
import type { TakeReport } from '@shedbook/core';
import {
  type Judgement,
  judgeInTurn,
  judgeTaskOf,
  type Level,
  type PlayedTask,
  type ToJudge,
} from '@shedbook/judge';

/** A loop that was heard, and what was heard in those before it at the same tempo, the latest last. */
export interface HeardLoop {
  readonly played: PlayedTask;
  readonly heard: ToJudge;
  readonly before: readonly TakeReport[];
}

/** The verdict on a loop. */
export function judgeLoop({ played, heard, before }: HeardLoop, level: Level): Judgement {
  return judgeInTurn(judgeTaskOf(played), heard, before, level);
}
