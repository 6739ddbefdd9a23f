/** The take of a stretch that was heard. */

import { exerciseKey, type TakeReport } from '@shedbook/core';
import { recordRound } from '@shedbook/judge';
import { momentFrom } from '@shedbook/stand';

import type { StretchEnded } from '../ear/hearing.ts';

import type { WholeTake } from './take.ts';

/** Shorter than a loop, nothing is a take. */
const FEWEST_LOOPS = 1;

/** What a report says of strokes is relative to the recording already; only the end of it is needed here. */
function lastSecond(report: TakeReport | null): number {
  return (report?.strokes.at(-1)?.timeSeconds ?? 0) + 1;
}

/** The take, or null where no loop was played to its end. */
export function takeFrom(
  ended: StretchEnded,
  lesson: { readonly id: string; readonly title: string },
): WholeTake | null {
  const { stretch, take, kind, latencySeconds } = ended;
  if (take.loops.length < FEWEST_LOOPS) return null;
  const { task } = stretch;
  const exercise = task.lesson.exercises.find((each) => each.number === task.exercise) ?? null;
  const { report, refusal } = take.heard;
  return {
    audio: take.audio,
    take: {
      id: stretch.id,
      startedAt: momentFrom(stretch.startedAt),
      lesson: lesson.id,
      lessonTitle: lesson.title,
      exercise: exercise ? exerciseKey(exercise) : null,
      number: task.exercise,
      form: task.form.name,
      layers: task.layers,
      mine: task.mine,
      kind,
      durationSeconds: take.audio ? take.durationSeconds : lastSecond(report),
      latencySeconds,
      loops: take.loops.map(({ startSeconds, endSeconds, bpm }) => ({
        startSeconds: startSeconds - take.originSeconds,
        endSeconds: endSeconds - take.originSeconds,
        bpm,
      })),
      verdicts: stretch.loops.map(({ loop, judgement: { verdict } }) =>
        recordRound({ bpm: loop.bpm, verdict }),
      ),
      report,
      refused: refusal,
      audioBytes: take.audio?.size ?? 0,
    },
  };
}
