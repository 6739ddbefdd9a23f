import { Bpm, type FullReport, type Lesson, parseLesson, Seconds, type TakeReport } from '@shedbook/core';
import { expect, it } from 'vitest';
import { loopReport, type PlayedAs } from '../../../internal/testing/loops.ts';
import { judge, judgeInTurn, LEVELS, loopTask, type TaskStroke } from './index.ts';
import { joinedReports } from './take/joined.ts';

const lesson = parseLesson(
  `title: Two bars
feel: triplet
groove: {ride: x x.x x x.x, hihat-foot: . x . x, bass: x x x x}
exercises:
  - x.. ..x x.x ... | ..x ... x.. ..x
`,
  'x.lesson.yaml',
).lesson as Lesson;
const form = {
  ...{ name: 'twice', repeat: 1, countInBars: 0 },
  sections: [{ play: 'pattern' as const, bars: 2, ending: null }],
};
const asked = { lesson, exercise: 1, form, bpm: Bpm(120) };
const task = loopTask(lesson, asked);

type Played = (stroke: TaskStroke) => PlayedAs | null;

/** The report of one round of several, on the clock of all of them. */
function roundAt(round: number, played: Played): FullReport {
  const report = loopReport(task, played, { kind: 'audio' });
  const after = round * task.bars * task.barSeconds;
  const later = <At extends { readonly timeSeconds: number }>(at: At) => ({
    ...at,
    timeSeconds: Seconds(at.timeSeconds + after),
  });
  const { strokes, tempo, click = tempo } = report;
  return { ...report, strokes: strokes.map(later), tempo: tempo.map(later), click: click.map(later) };
}

/** The verdict on each of some rounds, one after the other, and on all of them together. */
function verdictsOf(rounds: readonly Played[]) {
  const reports = rounds.map((played, round) => roundAt(round, played));
  const inTurn = reports.map(
    (report, round) => judgeInTurn(asked, { report }, reports.slice(0, round), 'intermediate').verdict,
  );
  const whole: TakeReport = joinedReports(reports.slice(0, -1), reports.at(-1) as FullReport);
  return { inTurn, together: judge(asked, { report: whole }, 'intermediate') };
}

const isAt = ({ voice, written }: TaskStroke, bar: number, beat: number) =>
  voice === 'snare' && written.bar === bar && written.beat === beat;
const without =
  (bar: number, beat: number): Played =>
  (stroke) =>
    isAt(stroke, bar, beat) ? null : { confidence: 0.8 };

it('[JU4302] a stroke that one round leaves open is told where it is missing again, and there alone', () => {
  // definition: where the ear is not quite sure, one of seven strokes may be its own; the same one twice is not
  const { inTurn, together } = verdictsOf([without(2, 4), without(2, 4)]);
  expect(inTurn.map(({ is }) => is)).toEqual(['clean', 'nearly']);
  expect(inTurn[1]?.about).toMatchObject([
    { what: 'missing', voice: 'snare', times: 1, of: 7, places: [{ bar: 2, beat: 4, slot: 3 }] },
  ]);
  // who looks back on both tells it of both
  expect(together.rounds.map(({ verdict }) => verdict.is)).toEqual(['nearly', 'nearly']);
  const elsewhere = verdictsOf([without(2, 4), without(1, 1)]);
  expect(elsewhere.inTurn.map(({ is }) => is)).toEqual(['clean', 'clean']);
});

it('[JU4302] a stroke that is late again and again makes none of these rounds clean', () => {
  const late: Played = (stroke) => (isAt(stroke, 2, 3) ? { offsetMs: 70 } : {});
  const { together } = verdictsOf([late, late, late]);
  const whats = together.rounds.map(({ verdict }) => verdict.about.map(({ what, voice }) => [what, voice]));
  expect(whats).toEqual([[['late', 'snare']], [['late', 'snare']], [['late', 'snare']]]);
});

it('[JU4302] rounds as they are written stay clean, however many went before', () => {
  const reports = [0, 1, 2, 3].map((round) => roundAt(round, () => ({})));
  for (const level of LEVELS) {
    const verdict = judgeInTurn(
      asked,
      { report: reports[3] as FullReport },
      reports.slice(0, 3),
      level,
    ).verdict;
    expect(verdict).toEqual({ level, is: 'clean', about: [] });
  }
});

/** The third of three rounds, heard by itself and after the two before it, which are right. */
function third(played: Played) {
  const [one, two, last] = [() => ({}), () => ({}), played].map((each, round) => roundAt(round, each));
  if (!one || !two || !last) throw new Error('three rounds');
  return {
    alone: judge(asked, { report: last }, 'intermediate').verdict,
    inTurn: judgeInTurn(asked, { report: last }, [one, two], 'intermediate').verdict,
  };
}

it('[JU5302] what is far softer than the same voice was in the rounds before is none of its strokes, and not soft', () => {
  // definition: of 7 strokes of the snare in two bars 5 fall with the ride; what is soft in the open was struck
  const { alone, inTurn } = third(({ voice }) =>
    voice === 'snare' ? { louderDb: -22, confidence: 0.8 } : {},
  );
  expect(alone.about).toMatchObject([{ what: 'soft', voice: 'snare' }]);
  expect(inTurn.about).toMatchObject([{ what: 'missing', voice: 'snare', times: 5, of: 7 }]);
  expect(inTurn.is).toBe('not yet');
});

it('[JU5303] who played before and is heard in time is judged, though one short round could be chance', () => {
  // definition: of the ride alone 8 of 12 strokes in time, 4 by more than a third of half a triplet (28 ms) off
  const { alone, inTurn } = third(({ voice, written: { bar, slot } }) =>
    voice === 'ride' ? { offsetMs: slot === 1 ? 0 : bar === 1 ? 60 : -60 } : null,
  );
  expect(alone).toMatchObject({ is: 'not judged', about: [{ what: 'too-little-heard' }] });
  expect(inTurn.is).toBe('not yet');
  expect(inTurn.about[0]).toMatchObject({ what: 'missing' });
});
