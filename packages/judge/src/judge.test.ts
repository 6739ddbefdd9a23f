import { Bpm, type FullReport, LeadDb, parseLesson, Seconds, type Voice } from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Extra,
  loopReport,
  type PlayedAs,
  swingAsked,
  swingTask,
} from '../../../internal/testing/loops.ts';
import { type Judgement, judge, LEVELS, recordRound, type TaskStroke } from './index.ts';
import { loopTask } from './loop/task.ts';
import type { VerdictName } from './verdict/verdict.ts';

const task = swingTask();
const RANK: Readonly<Record<VerdictName, number>> = { 'not judged': -1, 'not yet': 0, nearly: 1, clean: 2 };

type Change = (stroke: TaskStroke, index: number) => PlayedAs | null;

function judged(
  change: Change = () => ({}),
  level: (typeof LEVELS)[number] = 'intermediate',
  more: { extra?: readonly Extra[]; kind?: 'audio' | 'midi' } = {},
): Judgement {
  return judge(swingAsked(), { report: loopReport(task, change, more) }, level);
}

const whats = ({ verdict }: Judgement) => verdict.about.map(({ what }) => what);

/** Spread without chance: each stroke some ms off, the sum over a bar nearly nothing. */
const WANDER = [8, -6, 3, -9, 5, -2, 7, -7, 1];
const human: Change = (_, index) => ({ offsetMs: WANDER[index % WANDER.length] ?? 0 });

describe('beats that are not of one length', () => {
  const { lesson } = parseLesson(
    `title: Seven
tempo: 100
meter: 2+2+3/8
feel: triplet
groove: {hihat: xx xx x.x, bass: x. .x ...}
exercises: [.x .. x..]
forms: {long: {sections: [{pattern: 8}]}}`,
    'seven.lesson.yaml',
  );
  if (!lesson) throw new Error('the lesson has problems');
  const form = lesson.forms.find(({ name }) => name === 'long');
  if (!form) throw new Error('the lesson has no long form');
  const asked = { lesson, exercise: 1, form, bpm: Bpm(100) };
  const seven = loopTask(lesson, asked);

  it('[JU5900] a tempo is said as the sheet prints it: in eighths, where beats are not of one length', () => {
    // source: common practice (the division is counted); 100 quarter notes are 200 eighths
    expect(judge(asked, { report: loopReport(seven) }, 'intermediate').praise).toContainEqual({
      fact: 'praise-tempo-holds',
      bpm: 200,
    });
  });

  it('[JU5901] a straight feel is told by the beat that a stroke lies in', () => {
    // definition: at 100, the last triplet of a quarter falls 400 ms behind the beat and its middle 300 ms
    const straight = loopReport(seven, ({ written, slots }) => ({
      offsetMs: written.slot === 2 && slots === 2 ? -100 : 0,
    }));
    expect(judge(asked, { report: straight }, 'intermediate').verdict.about).toEqual([
      { what: 'straight-feel' },
    ]);
  });
});

describe('what is clean', () => {
  it('[CH3] a loop as written, and one with a human hand, at every level', () => {
    for (const level of LEVELS) {
      expect(judged(() => ({}), level).verdict).toEqual({ level, is: 'clean', about: [] });
      expect(judged(human, level).verdict.is).toBe('clean');
    }
  });

  it('[CH3] a pattern that is left out is not yet there, and one missed stroke is nearly', () => {
    const left = judged(({ voice }) => (voice === 'snare' ? null : {}), 'beginner');
    expect(left.verdict.is).toBe('not yet');
    expect(left.verdict.about[0]).toMatchObject({ what: 'missing', voice: 'snare' });
    const isOne = (stroke: TaskStroke) => stroke === task.strokes.find(({ voice }) => voice === 'bass');
    expect(judged((stroke) => (isOne(stroke) ? null : {}), 'beginner').verdict.is).toBe('clean');
    expect(judged((stroke) => (isOne(stroke) ? null : {}), 'advanced').verdict.is).toBe('nearly');
  });

  it('[LI32] is praised: that all is there, that the tempo holds, and the steadiest limb', () => {
    // definition: four bars of 6 ride, 2 hi-hat foot and 4 bass drum strokes, and 2 snare strokes
    expect(judged().praise).toEqual([
      { fact: 'praise-all-there', count: 56 },
      { fact: 'praise-tempo-holds', bpm: expect.closeTo(72, 6) },
      expect.objectContaining({ fact: 'praise-steady', ms: 1 }),
    ]);
    expect(judged(({ voice }) => (voice === 'snare' ? null : {})).praise).toEqual([]);
  });

  it('[JU4] what the ear says was clearly another exercise is told as that, however well its own strokes agree', () => {
    const report = { ...loopReport(task, human), exercise: { agreement: 0.9, rather: 2 } };
    const { verdict } = judge(swingAsked(), { report }, 'intermediate');
    expect(verdict.about).toEqual([{ what: 'other-exercise', exercise: 2 }]);
  });

  it('[LI32] does not say that all is there where a voice could not be told', () => {
    const unheard = [{ reason: 'hard-to-tell', voice: 'hihat-foot' } as const];
    const report = { ...loopReport(task, human, { kind: 'audio' }), unheard };
    const { verdict, praise } = judge(swingAsked(), { report }, 'intermediate');
    expect(verdict.is).toBe('clean');
    expect(praise.map(({ fact }) => fact)).not.toContain('praise-all-there');
  });

  it('[JU3300] what may lie under louder strokes is not missing, and counts where it is heard', () => {
    const isUnder = ({ voice, written }: TaskStroke) => voice === 'hihat-foot' && written.beat === 4;
    const report = loopReport(task, (stroke) => (isUnder(stroke) ? null : {}), { kind: 'audio' });
    const covered = task.strokes.filter(isUnder).map(({ voice, written }) => ({ ...written, voice }));
    const judgedAs = (heard: FullReport) => judge(swingAsked(), { report: heard }, 'advanced');
    expect(judgedAs(report).verdict.about[0]).toMatchObject({ what: 'missing', voice: 'hihat-foot' });
    const unheard = [{ reason: 'under-others', voice: 'hihat-foot', count: covered.length } as const];
    const { verdict, praise } = judgedAs({ ...report, covered, unheard });
    expect(verdict).toEqual({ level: 'advanced', is: 'clean', about: [] });
    expect(praise.map(({ fact }) => fact)).not.toContain('praise-all-there');
    const whole = loopReport(task, () => ({}), { kind: 'audio' });
    expect(judgedAs({ ...whole, covered }).verdict.is).toBe('clean');
  });

  it('[JU5] an offset of everything is told and leaves it clean', () => {
    for (const offsetMs of [-30, 60, 150]) {
      const { verdict } = judged((stroke, index) => ({
        offsetMs: offsetMs + (human(stroke, index)?.offsetMs ?? 0),
      }));
      expect(verdict.is).toBe('clean');
      expect(verdict.about.map(({ what }) => what)).toEqual(['offset']);
      expect(Math.abs((verdict.about[0]?.ms ?? 0) - offsetMs)).toBeLessThan(5);
    }
  });
});

describe('what was played', () => {
  it('[JU4] a straight feel is told before any lateness', () => {
    const straight = judged(({ written }) => ({ offsetMs: written.slot === 3 ? -1000 / 7.2 : 0 }));
    expect(straight.verdict).toEqual({
      level: 'intermediate',
      is: 'not yet',
      about: [{ what: 'straight-feel' }],
    });
  });

  it('[JU4] an exercise of the sheet that was played instead is named', () => {
    const other = swingTask(4);
    const report = loopReport(other);
    const { verdict } = judge(swingAsked(1), { report }, 'beginner');
    expect(verdict.about[0]).toEqual({ what: 'other-exercise', exercise: 4 });
  });

  it('[JU4] the right rhythm on another drum is told as that', () => {
    const report = loopReport(task);
    const onTom = {
      ...report,
      strokes: report.strokes.map((stroke) =>
        stroke.voice === 'snare' ? { ...stroke, voice: 'tom-high' as const, written: null } : stroke,
      ),
    };
    const { verdict } = judge(swingAsked(), { report: onTom }, 'beginner');
    expect(verdict.about).toMatchObject([{ what: 'wrong-voice', voice: 'snare', instead: 'tom-high' }]);
  });

  it('[JU6] an uneven ride makes neither foot nor bass drum uneven', () => {
    const { verdict } = judged((stroke, index) => ({
      offsetMs: (stroke.voice === 'ride' ? 6 : 1) * (human(stroke, index)?.offsetMs ?? 0),
    }));
    expect(verdict.about.map(({ what, voice }) => [what, voice])).toEqual([['uneven', 'ride']]);
  });

  it('[CH9] a tempo that leaves the click is told', () => {
    const leaving = judged(({ timeSeconds }) => ({ offsetMs: -12 * timeSeconds }));
    expect(whats(leaving)).toContain('rushing');
    expect(leaving.verdict.is).not.toBe('clean');
  });
});

describe('where and how much', () => {
  const isLet = ({ voice, written }: TaskStroke) => voice === 'snare' && written.beat === 1;

  it('[CH6] names voice, place, direction and amount, the weightiest first', () => {
    const late = judged((stroke) => ({ offsetMs: isLet(stroke) ? 50 : 0 }), 'advanced').verdict;
    expect(late.about).toMatchObject([{ what: 'late', voice: 'snare', inEveryBar: true }]);
    expect(late.about[0]?.places).toEqual([1, 2, 3, 4].map((bar) => ({ bar, beat: 1, slot: 3 })));
    expect(Math.abs((late.about[0]?.ms ?? 0) - 50)).toBeLessThan(3);
    const missing = judged((stroke) =>
      isLet(stroke) ? null : { offsetMs: stroke.voice === 'bass' ? 45 : 0 },
    );
    expect(missing.verdict.about.map(({ what, voice }) => [what, voice])).toEqual([
      ['missing', 'snare'],
      ['late', 'bass'],
    ]);
  });

  it('[CH6] tells a voice that is late everywhere once', () => {
    const { verdict } = judged(({ voice }) => ({ offsetMs: voice === 'hihat-foot' ? 60 : 0 }));
    expect(verdict.about).toHaveLength(1);
    expect(verdict.about[0]).toMatchObject({ what: 'late', voice: 'hihat-foot' });
    expect(verdict.about[0]?.places).toBeUndefined();
  });

  it('[CH8] a stroke too many belongs to the nearest written stroke', () => {
    const extra = [1, 2, 3].map((bar): Extra => ({ voice: 'snare', bar, share: 0.27 }));
    const { verdict } = judged(() => ({}), 'intermediate', { extra });
    // definition: a little after the 2 of the bar, where ride, bass drum and foot are written
    expect(verdict.about[0]).toMatchObject({ what: 'extra', voice: 'snare', times: 3 });
    expect(verdict.about[0]?.places?.map(({ beat, slot }) => `${beat}.${slot}`)).toEqual([
      '2.1',
      '2.1',
      '2.1',
    ]);
  });

  it('[CH7] what the ear is unsure of is not held against anyone', () => {
    const extra = [1, 2, 3, 4].map((bar): Extra => ({ voice: 'snare', bar, share: 0.27, confidence: 0.2 }));
    expect(judged(() => ({}), 'advanced', { extra, kind: 'audio' }).verdict.is).toBe('clean');
  });

  it('[CH9] a bass drum that is not feathered is loud; a microphone has a margin', () => {
    const louder =
      (db: number): Change =>
      ({ voice }) => ({ louderDb: voice === 'bass' ? db : 0 });
    expect(judged(louder(14)).verdict.about).toEqual([
      { what: 'loud', voice: 'bass', db: expect.closeTo(14, 6) },
    ]);
    // definition: an intermediate student is allowed 6 dB, a microphone 7 more
    expect(judged(louder(12), 'intermediate', { kind: 'audio' }).verdict.is).toBe('clean');
    expect(whats(judged(louder(14), 'intermediate', { kind: 'audio' }))).toEqual(['loud']);
    // the lead voice is what the others are measured against
    const ride = judged(({ voice }) => ({ louderDb: voice === 'ride' ? 3 : 0 }), 'advanced');
    expect(ride.verdict.is).toBe('clean');
  });
});

it('[CH9] a bass drum just before a late snare is not called loud by a microphone', () => {
  const verdictOf = (lateMs: number) => {
    const change: Change = ({ voice, together }) => ({
      offsetMs: voice === 'snare' ? lateMs : 0,
      louderDb: voice === 'bass' && together ? 16 : 0,
    });
    return whats(judged(change, 'intermediate', { kind: 'audio' }));
  };
  // definition: 16 dB are over the 13 that an intermediate student and a microphone may be off together
  expect(verdictOf(0)).toContain('loud');
  // the exercise has its snare on 1 and 3, the bass drum is on every beat: only where nothing follows is it measured
  const report = loopReport(
    swingTask(2),
    ({ voice, written }) => ({
      offsetMs: voice === 'snare' ? 45 : voice === 'bass' ? 8 : 0,
      louderDb: voice === 'bass' && written.beat % 2 === 1 ? 30 : 0,
    }),
    { kind: 'audio' },
  );
  const { verdict } = judge(swingAsked(2), { report }, 'intermediate');
  expect(verdict.about.map(({ what }) => what)).toEqual(['late']);
});

describe('what is no verdict', () => {
  it('[JU7] nobody playing leaves no fault behind', () => {
    const { verdict, rounds } = judge(swingAsked(), { report: null }, 'beginner');
    expect(verdict).toEqual({ level: 'beginner', is: 'not judged', about: [{ what: 'nobody-played' }] });
    expect(rounds).toEqual([]);
    const silent = judged(() => null);
    expect(silent.verdict.about).toEqual([{ what: 'nobody-played' }]);
    expect(silent.rounds.map(recordRound)).toEqual([
      { bpm: expect.closeTo(72, 6), verdict: 'unheard', faults: [] },
    ]);
  });

  it('[JU7] strokes that the ear says are the loudspeaker’s are nobody’s', () => {
    const report = loopReport(task, () => ({}), { kind: 'audio' });
    const strokes = report.strokes.map((stroke) => ({ ...stroke, from: 'loudspeaker' as const }));
    const { verdict } = judge(
      swingAsked(),
      { report: { ...report, strokes, playing: ['snare'] } },
      'beginner',
    );
    expect(verdict.about).toEqual([{ what: 'only-loudspeaker' }]);
  });

  it('[JU801] what a student leaves to the loudspeaker is no doubt about the student', () => {
    const report = loopReport(task, ({ voice }) => (voice === 'snare' ? {} : null), { kind: 'audio' });
    const unheard = [
      { reason: 'from-loudspeaker', voice: 'ride', count: 4 },
      { reason: 'not-heard', voice: 'hihat-foot' },
    ] as const;
    const heard = { report: { ...report, unheard, playing: ['ride', 'hihat-foot', 'bass'] as const } };
    const said = judge({ ...swingAsked(), plays: ['snare'] }, heard, 'beginner').verdict;
    expect(said).toEqual({ level: 'beginner', is: 'clean', about: [] });
    // definition: who set out to play everything left the bass drum out
    expect(judge(swingAsked(), heard, 'beginner').verdict.about[0]).toMatchObject({ voice: 'bass' });
  });

  it('[JU7] what the page plays exactly in time is not the student’s', () => {
    const even = loopReport(
      task,
      ({ voice }, index) => ({ offsetMs: voice === 'snare' ? 0 : (WANDER[index % 9] ?? 0) }),
      {
        kind: 'audio',
      },
    );
    const verdictOf = (report: FullReport, sounding: readonly Voice[]) =>
      judge({ ...swingAsked(), sounding }, { report }, 'beginner').verdict;
    expect(verdictOf(even, ['snare'])).toMatchObject({
      is: 'not judged',
      about: [{ what: 'only-loudspeaker', voice: 'snare' }],
    });
    expect(verdictOf(even, ['ride']).is).toBe('clean');
    expect(verdictOf({ ...even, take: { ...even.take, kind: 'midi' } }, ['snare']).is).toBe('clean');
  });

  it('[LI34] a voice that can hardly be told is neither praised nor blamed', () => {
    const report = loopReport(task, ({ voice }) => (voice === 'bass' ? null : {}), { kind: 'audio' });
    const blurred = { ...report, unheard: [{ reason: 'hard-to-tell', voice: 'bass' } as const] };
    expect(judge(swingAsked(), { report: blurred }, 'advanced').verdict.is).toBe('clean');
    const feathered = { ...report, unheard: [{ reason: 'not-heard', voice: 'bass' } as const] };
    expect(judge(swingAsked(), { report: feathered }, 'advanced').verdict.is).toBe('clean');
    expect(judge(swingAsked(), { report }, 'advanced').verdict.is).toBe('not yet');
  });
});

describe('what is told well enough', () => {
  it('[JU10] a snare 60 ms late or early at 160 is that, and nothing is missing or too many', () => {
    // definition: at 160 a triplet lasts 125 ms, so that 60 ms is all but half of the way to the next slot
    const fast = swingTask(4, 160);
    for (const [offsetMs, what] of [
      [62, 'late'],
      [-62, 'early'],
    ] as const) {
      const report = loopReport(fast, ({ voice }, index) => ({
        offsetMs: (WANDER[index % 9] ?? 0) + (voice === 'snare' ? offsetMs : 0),
      }));
      const { verdict } = judge(swingAsked(4, 160), { report }, 'intermediate');
      expect(verdict.about.map((about) => [about.what, about.voice])).toEqual([[what, 'snare']]);
    }
  });

  it('[JU10] a stroke in the next slot is another stroke', () => {
    const fast = swingTask(4, 160);
    let left = 2;
    const report = loopReport(fast, ({ voice }) => ({
      offsetMs: voice === 'snare' && left-- > 0 ? 125 : 0,
    }));
    const { verdict } = judge(swingAsked(4, 160), { report }, 'advanced');
    expect(verdict.about.map(({ what }) => what)).toEqual(expect.arrayContaining(['missing', 'extra']));
  });

  it('[JU11] strokes that are even by chance are a hand’s, those of half a bar to the millisecond no hand’s', () => {
    const verdictOf = (snare: (index: number) => number) => {
      const report = loopReport(
        task,
        ({ voice }, index) => ({
          offsetMs: voice === 'snare' ? snare(index) : 2.2 * (WANDER[index % 9] ?? 0),
        }),
        { kind: 'audio' },
      );
      return judge({ ...swingAsked(), sounding: ['snare'] }, { report }, 'beginner').verdict.is;
    };
    // definition: eight strokes with a spread of 3 ms beside limbs with one of 13 ms, and the same with one of 0.5 ms
    expect(verdictOf((index) => 0.06 * (WANDER[index % 9] ?? 0))).toBe('not judged');
    expect(verdictOf((index) => 1.5 * (WANDER[index % 9] ?? 0))).toBe('clean');
  });

  it('[JU12] a voice that can hardly be told from a few strokes is judged by those of which the ear is sure', () => {
    const verdictOf = (confidence: number) => {
      const report = loopReport(task, ({ voice }) => (voice === 'snare' ? { confidence } : {}), {
        kind: 'audio',
      });
      const unheard = [{ reason: 'hard-to-tell', voice: 'snare' } as const];
      return judge(swingAsked(), { report: { ...report, unheard } }, 'beginner').verdict;
    };
    expect(verdictOf(1).is).toBe('clean');
    expect(verdictOf(0.8)).toMatchObject({
      is: 'not judged',
      about: [{ what: 'too-little-heard', voice: 'snare' }],
    });
  });
});

describe('a limb that can hardly be told', () => {
  const without = (isLeft: (stroke: TaskStroke) => boolean, voice: Voice) => {
    const report = loopReport(task, (stroke) => (isLeft(stroke) ? null : {}), { kind: 'audio' });
    return { ...report, unheard: [{ reason: 'hard-to-tell', voice } as const] };
  };
  const verdictOf = (report: FullReport) => judge(swingAsked(), { report }, 'beginner').verdict;
  const isFoot = ({ voice }: { readonly voice: Voice }) => voice === 'hihat-foot';

  it('[JU15] stayed out where its strokes stood in the open', () => {
    // definition: on 2 and 4 the ride alone strikes with the foot
    const report = without(isFoot, 'hihat-foot');
    for (const reason of ['hard-to-tell', 'not-heard'] as const)
      expect(verdictOf({ ...report, unheard: [{ reason, voice: 'hihat-foot' }] })).toMatchObject({
        is: 'not yet',
        about: [{ what: 'missing', voice: 'hihat-foot', times: 8, of: 8 }],
      });
  });

  it('[JU8702] stayed out though the ear takes this and that for it elsewhere, and is not sure of that', () => {
    const report = without(isFoot, 'hihat-foot');
    const [first] = report.strokes;
    const unheard = [{ reason: 'not-heard', voice: 'hihat-foot' } as const];
    const strays = [1, 2].map((beat) => ({
      ...{ voice: 'hihat-foot' as const, written: null, offsetMs: null, confidence: 0.47 },
      ...{ timeSeconds: Seconds((first?.timeSeconds ?? 0) + beat + 0.31), levelDb: LeadDb(-8) },
    }));
    expect(verdictOf({ ...report, strokes: [...report.strokes, ...strays], unheard })).toMatchObject({
      is: 'not yet',
      about: [{ what: 'missing', voice: 'hihat-foot', times: 8, of: 8 }],
    });
  });

  it('[JU14] one stroke somewhere is no limb that fell elsewhere', () => {
    const stray = { voice: 'hihat-foot' as const, bar: 1, share: 0.4 };
    const change: Change = (stroke) => (isFoot(stroke) ? null : {});
    const [about] = judged(change, 'beginner', { kind: 'midi', extra: [stray] }).verdict.about;
    // definition: an eighth of what is missing is less than half of it
    expect(about).toMatchObject({ what: 'missing', voice: 'hihat-foot', times: 8, of: 8 });
    expect(about).not.toHaveProperty('elsewhere');
  });

  it('[JU7800] is not judged where the ear cannot tell a single stroke of it, though it is the exercise itself', () => {
    const isOwn = ({ voice }: { readonly voice: Voice }) => voice === 'snare';
    const report = without(isOwn, 'snare');
    const covered = task.strokes.filter(isOwn).map(({ voice, written }) => ({ ...written, voice }));
    // definition: nothing is known of any stroke of the exercise; where one is known to be missing, that is told
    expect(verdictOf({ ...report, covered })).toMatchObject({
      is: 'not judged',
      about: [{ what: 'too-little-heard', voice: 'snare' }],
    });
    expect(verdictOf({ ...report, covered: covered.slice(1) }).is).toBe('not yet');
  });

  it('[JU15] [JU4301] is said to be unheard, and the rest is judged, where louder strokes cover it each time', () => {
    const { lesson } = parseLesson(
      'title: T\nfeel: triplet\ngroove:\n  ride: x x.x x x.x\n  hihat-foot: {pattern: . x . x, level: -8}\nexercises:\n  - ... x.. ... x..\n',
      'lesson',
    );
    if (!lesson) throw new Error('the lesson has problems');
    const asked = { ...swingAsked(), lesson };
    const own = loopTask(lesson, { exercise: 1, form: asked.form, bpm: Bpm(72) });
    const report = loopReport(own, (stroke) => (isFoot(stroke) ? null : {}), { kind: 'audio' });
    const unheard = [{ reason: 'not-heard', voice: 'hihat-foot' } as const];
    const { verdict, rounds } = judge(asked, { report: { ...report, unheard } }, 'beginner');
    expect(verdict).toEqual({
      ...{ level: 'beginner', is: 'clean' },
      about: [{ what: 'too-little-heard', voice: 'hihat-foot' }],
    });
    const records = rounds.map(recordRound);
    expect(records.map((record) => record.unheard)).toEqual(rounds.map(() => ['hihat-foot']));
    expect(records.length).toBeGreaterThan(0);
  });

  it('[JU17] takes no strokes from another voice of the same drum', () => {
    const { lesson } = parseLesson(
      'title: T\nfeel: triplet\nexercises: [{pattern: {snare: ..x x.. ..x ..., rimshot: . . . X}}]\n',
      'lesson',
    );
    if (!lesson) throw new Error('the lesson has problems');
    const asked = { ...swingAsked(), lesson };
    const own = loopTask(lesson, { exercise: 1, form: asked.form, bpm: Bpm(72) });
    // definition: a rim shot that an ear hears 12 dB too soft, and no snare that is not heard as written
    const report = loopReport(
      own,
      ({ voice }) => (voice === 'rimshot' ? { louderDb: -12, confidence: 0.8 } : {}),
      {
        kind: 'audio',
      },
    );
    const unheard = [{ reason: 'hard-to-tell', voice: 'rimshot' } as const];
    const { verdict } = judge(asked, { report: { ...report, unheard } }, 'beginner');
    expect(verdict.about.filter(({ what }) => what === 'missing')).toEqual([]);
  });

  it('[JU16] left out what is missing at the same places each time', () => {
    const isSkip = ({ voice, written }: TaskStroke) => voice === 'ride' && written.slot === 3;
    expect(verdictOf(without(isSkip, 'ride'))).toMatchObject({
      is: 'not yet',
      about: [{ what: 'missing', voice: 'ride', times: 8, of: 24 }],
    });
    let left = 0;
    const isAny = ({ voice }: TaskStroke) => voice === 'ride' && left++ % 5 === 1;
    expect(verdictOf(without(isAny, 'ride')).is).toBe('clean');
  });
});

it('[JU8] a take that climbs a ladder is judged round by round', () => {
  const reports = [72, 80, 88].map((bpm) => loopReport(swingTask(1, bpm), human));
  let start = 0;
  const moved = reports.map((report) => {
    const from = start;
    start += report.take.durationSeconds;
    const later = <T extends { timeSeconds: number }>(each: readonly T[]) =>
      each.map((one) => ({ ...one, timeSeconds: (one.timeSeconds + from) as never }));
    return {
      ...report,
      strokes: later(report.strokes),
      tempo: later(report.tempo),
      click: later(report.click ?? []),
    };
  });
  const first = moved[0] as unknown as FullReport;
  const take: FullReport = {
    ...first,
    strokes: moved.flatMap((report) => report.strokes),
    tempo: moved.flatMap((report) => report.tempo),
    click: moved.flatMap((report) => report.click ?? []),
    playedBars: moved.flatMap((_, round) => [1, 2, 3, 4].map((bar) => bar + 4 * round)),
  };
  const { verdict, rounds } = judge(swingAsked(), { report: take }, 'intermediate');
  expect(verdict.about).toEqual([]);
  expect(rounds.map(({ bpm, verdict: round }) => [Math.round(bpm), round.is])).toEqual([
    [72, 'clean'],
    [80, 'clean'],
    [88, 'clean'],
  ]);
});

it('[JU9] a kept report with levels re full scale is read relative to its lead voice', () => {
  const report = loopReport(task);
  const kept = {
    ...report,
    strokes: report.strokes.map((stroke) => ({ ...stroke, levelDb: LeadDb(stroke.levelDb - 31) })),
    voices: {
      ride: { hits: 24, missed: 0, extra: 0, offsetMs: { median: 0, spread: 0 }, levelDb: LeadDb(-31) },
    },
  } as unknown as FullReport;
  expect(judge(swingAsked(), { report: kept }, 'advanced').verdict.is).toBe('clean');
});

/** How each stroke is off, whether it is played at all. */
const playing = fc.array(
  fc.record({
    offsetMs: fc.oneof(fc.integer({ min: -15, max: 15 }), fc.integer({ min: -90, max: 90 })),
    isMissed: fc.oneof({ weight: 9, arbitrary: fc.constant(false) }, { weight: 1, arbitrary: fc.boolean() }),
  }),
  { minLength: task.strokes.length, maxLength: task.strokes.length },
);

it('[CH4] a stricter level never gives a better verdict', () => {
  fc.assert(
    fc.property(playing, (from) => {
      const change: Change = (_, index) =>
        from[index]?.isMissed ? null : { offsetMs: from[index]?.offsetMs ?? 0 };
      const ranks = LEVELS.map((level) => RANK[judged(change, level).verdict.is]);
      expect(ranks).toEqual(ranks.toSorted((a, b) => b - a));
    }),
    { numRuns: 40, seed: 8 },
  );
});

it('[CH5] playing nearer to what is asked never gets a worse verdict', () => {
  fc.assert(
    fc.property(
      playing,
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.constantFrom(...LEVELS),
      (from, share, level) => {
        const rank = (kept: number) => {
          const change: Change = (_, index) =>
            from[index]?.isMissed && kept > 0.5 ? null : { offsetMs: kept * (from[index]?.offsetMs ?? 0) };
          return RANK[judged(change, level).verdict.is];
        };
        expect(rank(share * 0.5)).toBeGreaterThanOrEqual(rank(1));
      },
    ),
    { numRuns: 40, seed: 7 },
  );
});

it('[JU2500] where no tempo was asked, any from the start to the goal is right, and none beyond', () => {
  const { bpm: _, ...untold } = swingAsked();
  const at = (bpm: number, asked = untold) => {
    const { click: _click, ...report } = loopReport(swingTask(1, bpm));
    const heard = { ...report, asked: { ...report.asked, bpm: Bpm(72) } };
    return judge(asked, { report: heard }, 'advanced').verdict.about.map(({ what }) => what);
  };
  // definition: the lesson begins at 72 and has its goal at 120; 76, 84 and 116 lie between the steps of its ladder
  for (const bpm of [72, 76, 84, 116, 120]) expect(at(bpm)).toEqual([]);
  expect([at(60), at(132)]).toEqual([['slow'], ['fast']]);
  expect(at(84, swingAsked(1, 80))).toEqual(['fast']);
});
