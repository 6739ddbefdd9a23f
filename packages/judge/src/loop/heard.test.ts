import {
  Bpm,
  LeadDb,
  Milliseconds,
  type ReportStroke,
  Seconds,
  TakeDb,
  type TakeReport,
} from '@shedbook/core';
import { expect, it } from 'vitest';
import { swingTask } from '../../../../internal/testing/loops.ts';
import { type HeardStroke, splitLoops } from './heard.ts';
import { judgeTake, recordLoop } from './judge.ts';
import type { TaskStroke } from './task.ts';

const task = swingTask();
const LOOPS = 3;

/** A report of three loops as written; the second has a snare stroke too many in its second bar. */
function report(): TakeReport {
  const barSeconds = (4 * 60) / 72;
  const strokes = Array.from({ length: LOOPS }, (_, loop) =>
    task.strokes.map((stroke): ReportStroke => {
      const { voice, written, levelDb } = stroke;
      const bar = written.bar + loop * task.bars;
      const timeSeconds = (bar - 1 + (written.beat - 1 + (written.slot - 1) / 3) / 4) * barSeconds;
      return {
        timeSeconds: Seconds(timeSeconds),
        voice,
        levelDb: LeadDb(levelDb),
        written: { ...written, bar },
        offsetMs: Milliseconds(0),
        confidence: 1,
      };
    }),
  ).flat();
  const extra: ReportStroke = {
    timeSeconds: Seconds(5.02 * barSeconds),
    voice: 'snare',
    levelDb: LeadDb(0),
    written: null,
    offsetMs: null,
    confidence: 1,
  };
  const voice = {
    hits: 1,
    missed: 0,
    extra: 0,
    offsetMs: { median: Milliseconds(0), spread: Milliseconds(0) },
    levelDb: LeadDb(0),
  };
  return {
    version: 1,
    take: { kind: 'midi', durationSeconds: Seconds(LOOPS * task.bars * barSeconds) },
    alignment: { startSeconds: Seconds(0), bpm: Bpm(72), driftBpmPerMinute: 0, confidence: 1 },
    strokes: [...strokes, extra].toSorted((a, b) => a.timeSeconds - b.timeSeconds),
    missed: [{ bar: 9, beat: 1, slot: 1, voice: 'crash' }],
    voices: { ride: voice, snare: voice, bass: voice, 'hihat-foot': voice },
    swingRatio: null,
    balanceDb: {},
    unheard: [{ reason: 'hard-to-tell', voice: 'bass' }],
  };
}

it('[CH8] a take is cut into its loops, bars counted from the start of each', () => {
  const loops = splitLoops(report(), task);
  expect(loops).toHaveLength(LOOPS);
  for (const loop of loops) expect(loop.strokes).toHaveLength(task.strokes.length);
  // definition: bar 9 of a take of four-bar loops is bar 1 of the third
  expect(loops[2]?.missed).toEqual([{ bar: 1, beat: 1, slot: 1, voice: 'crash' }]);
});

it('[CH8] a stroke too many belongs to the written stroke nearest to it in time', () => {
  const loops = splitLoops(report(), task);
  // definition: 5.02 bars after the start is just after the 1 of the sixth bar, bar 2 of the second loop
  expect(loops.map(({ extra }) => extra.map(({ near }) => near))).toEqual([
    [],
    [{ bar: 2, beat: 1, slot: 1 }],
    [],
  ]);
});

it('[CH8] a take is judged loop by loop; what was not heard is passed on; the log keeps verdict and faults', () => {
  const judged = judgeTake(task, report(), 'advanced');
  expect(judged.loops.map(({ verdict }) => verdict)).toEqual(['clean', 'loose', 'clean']);
  expect(judged.reasons.map(({ kind, voice, place, loops }) => [kind, voice, place, loops])).toEqual([
    ['extra', 'snare', { bar: 2, beat: 1, slot: 1 }, 1],
  ]);
  expect(judged.unheard).toEqual([{ reason: 'hard-to-tell', voice: 'bass' }]);
  const second = judged.loops[1];
  expect(second && recordLoop(second)).toEqual({
    bpm: Bpm(72),
    verdict: 'loose',
    faults: [{ kind: 'extra', voice: 'snare', place: { bar: 2, beat: 1, slot: 1 }, amount: 1 }],
  });
});

it('[CH8] an empty report has no loops', () => {
  const empty = { ...report(), strokes: [], missed: [] };
  expect(judgeTake(task, empty, 'intermediate').loops).toEqual([]);
});

it('[UN2] the level of a microphone is not judged as a balance', () => {
  const heard = splitLoops(report(), task)[0]?.strokes[0];
  const asked = task.strokes[0];
  if (!heard || !asked) throw new Error('no stroke');
  // @ts-expect-error a stroke 42 dB under full scale is not 42 dB under the lead voice
  const judged: HeardStroke = { ...heard, levelDb: TakeDb(-42) };
  // @ts-expect-error nor does a lesson ask for a level of full scale
  const wanted: TaskStroke = { ...asked, levelDb: TakeDb(-42) };
  // @ts-expect-error nor does a report tell one
  const told: ReportStroke['levelDb'] = TakeDb(-42);
  expect([judged.levelDb, wanted.levelDb, told]).toEqual([-42, -42, -42]);
});
