import { Bpm, ontoPad, perform, Seconds, TakeDb } from '@shedbook/core';
import { judge, judgeTaskOf } from '@shedbook/judge';
import { createLiveListener } from '@shedbook/listen';
import { describe, expect, it } from 'vitest';
import { formOnce, HEARING_LESSON, lessonOf } from '../../../../internal/testing/hearing.ts';

const lesson = lessonOf(HEARING_LESSON);
const BPM = Bpm(160);
const pad = ontoPad({ lesson, exercise: 1, form: formOnce(lesson) });
const task = { ...pad, layers: lesson.layers.length, bpm: BPM, mine: [] };

/** When the exercise is struck, in seconds from the bar line. */
const written = perform(pad.lesson, { ...pad, bpm: BPM })
  .strokes.filter(({ voice }) => voice === 'snare')
  .map(({ timeSeconds }) => Number(timeSeconds));

/** The verdict on strokes at some moments. */
function verdictOn(times: readonly number[]) {
  const listener = createLiveListener({ ...pad, bpm: BPM });
  const loop = listener.startLoop(Seconds(1), BPM);
  for (const time of times) listener.note(Seconds(1 + time), 'snare', TakeDb(-12));
  return judge(judgeTaskOf(task), listener.loopReport(loop), 'beginner').verdict;
}

describe('one surface', () => {
  it('[ST149] is clean where the rhythm was played, and not where it was not', () => {
    expect(verdictOn(written).is).toBe('clean');
    expect(verdictOn(written.slice(0, Math.ceil(written.length / 2))).is).not.toBe('clean');
    // every beat of two bars of four at 160
    expect(verdictOn(Array.from({ length: 8 }, (_, beat) => beat * 0.375)).is).not.toBe('clean');
    expect(verdictOn([]).is).toBe('not judged');
  });
});
