import { EMPTY_LOG, mergeLogs, printPracticeLog, withoutDoubles } from '@shedbook/coach';
import {
  Bpm,
  defaultForm,
  exerciseKey,
  Hertz,
  LeadDb,
  type LoopFault,
  Milliseconds,
  type PracticeEntry,
  type PracticeLog,
  parseLesson,
  perform,
  printLesson,
  REPORT_VERSION,
  Seconds,
  type TakeReport,
} from '@shedbook/core';
import { listen } from '@shedbook/listen';
import { render } from '@shedbook/sound';
import { momentFrom } from '@shedbook/stand';
import { withSentences } from '@shedbook/words';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { keptKit } from '../../../../internal/testing/kept-kit.mjs';
import { keptSample } from '../../../../internal/testing/kept-samples.ts';
import { limbShares } from './by-limb.ts';
import { ownLesson } from './own-lesson.ts';
import { type DeskShelf, readBrought, readBroughtFile, withDeskLessons, withTake } from './take-in.ts';

const { lesson } = parseLesson(
  `title: First swing
tempo: {start: 72, goal: 120, step: 8}
feel: triplet
groove:
  ride: x x.x x x.x
  hihat-foot: . x . x
exercises:
  - x.. ... ..x ...
  - ..x ... ..x ...
  - x.x ..x x.x ..x
  - ... x.. ... x..
`,
  'lesson',
);
if (!lesson) throw new Error('the lesson under test has problems');
const LESSON = lesson;
const SHELF: readonly DeskShelf[] = [{ id: 'b7e1', lesson: LESSON }];
const NOW = '2026-11-25T18:00:00+01:00';

const key = (number: number) => exerciseKey(LESSON.exercises[number - 1] as (typeof LESSON.exercises)[0]);

const MISSED: LoopFault = {
  kind: 'missed',
  voice: 'snare',
  place: { bar: 1, beat: 3, slot: 3 },
  amount: 1,
};

function entry(number: number, day: number, bpm: number, faults: readonly LoopFault[]): PracticeEntry {
  const verdict = faults.length === 0 ? 'clean' : 'loose';
  return {
    id: `${number} ${day}`,
    device: 'phone',
    startedAt: `2026-11-${day}T18:00:00+01:00`,
    durationSeconds: Seconds(240),
    lesson: 'first-swing',
    exercise: key(number),
    form: 'loop',
    heardBy: 'ear',
    loops: Array.from({ length: 8 }, () => ({ bpm: Bpm(bpm), verdict, faults })),
  };
}

const LOG: PracticeLog = {
  ...EMPTY_LOG,
  entries: [entry(4, 20, 120, []), entry(4, 23, 120, []), entry(1, 24, 80, [MISSED])],
};

/** The report of a take in which every stroke was heard where it is written. */
function reportOf(exercise: number, bpm: number): TakeReport {
  const form = LESSON.forms.find((each) => each.name === 'loop');
  if (!form) throw new Error('no loop');
  const performance = perform(LESSON, {
    exercise,
    form: { ...form, countInBars: 0, repeat: 2 },
    bpm: Bpm(bpm),
  });
  const strokes = performance.strokes.flatMap(({ voice, timeSeconds, levelDb, written }) =>
    voice === 'click'
      ? []
      : [{ voice, timeSeconds, levelDb, written, offsetMs: Milliseconds(0), confidence: 1 }],
  );
  return {
    version: 1,
    take: { kind: 'midi', durationSeconds: performance.durationSeconds },
    alignment: { startSeconds: Seconds(0), bpm: Bpm(bpm), driftBpmPerMinute: 0, confidence: 1 },
    strokes,
    missed: [],
    voices: Object.fromEntries(
      [...new Set(strokes.map((stroke) => stroke.voice))].map((voice) => [
        voice,
        {
          hits: 1,
          missed: 0,
          extra: 0,
          offsetMs: { median: Milliseconds(0), spread: Milliseconds(0) },
          levelDb: LeadDb(0),
        },
      ]),
    ),
    swingRatio: null,
    balanceDb: {},
    notHeard: [],
  };
}

describe('what a student brings', () => {
  it('[ST108] is a practice log, a report, or said to be neither', () => {
    expect(readBrought(printPracticeLog(LOG), 'log.json')).toEqual({ kind: 'log', log: LOG });
    const text = JSON.stringify(reportOf(1, 80));
    const report = readBrought(text, 'take.json');
    expect(report).toMatchObject({ kind: 'report', report: { take: { kind: 'midi' } } });
    expect(readBrought(text, 'again.json')).toEqual(report);
    for (const wrong of ['', 'hello', '[]', '{"version": 1}', '{"strokes": [], "missed": []}']) {
      expect(readBrought(wrong, 'x.json').kind, wrong).toBe('problems');
    }
    const half = { ...JSON.parse(printPracticeLog(LOG)), entries: [...LOG.entries, { id: 'half' }] };
    expect(readBrought(JSON.stringify(half), 'log.json')).toMatchObject({ kind: 'partly', log: LOG });
  });

  it.each(Array.from({ length: REPORT_VERSION }, (_, index) => index + 1))(
    '[ST108] may be a report of version %i',
    (version) => {
      const text = keptSample(`report-${version}.json`);
      const report = JSON.parse(text) as unknown;
      expect(readBrought(text, 'take.json')).toMatchObject({ kind: 'report', report });
    },
  );

  it('[ST108] may be a report with reasons instead of sentences, as the practice page writes it', () => {
    const { notHeard: _, ...facts } = reportOf(1, 80);
    const text = JSON.stringify({ ...facts, unheard: [] });
    expect(readBrought(text, 'report.json').kind).toBe('report');
  });

  it('[ST108] is kept under the lessons of the desk', () => {
    const strange = { ...LOG, entries: [...LOG.entries, { ...entry(2, 25, 80, []), lesson: 'elsewhere' }] };
    const lessons = withDeskLessons(strange, SHELF).entries.map((each) => each.lesson);
    expect(lessons).toEqual(['b7e1', 'b7e1', 'b7e1', 'elsewhere']);
  });

  it('[ST108] counts a take once, its loops judged', () => {
    const [exercise] = LESSON.exercises;
    const [shelf] = SHELF;
    if (!exercise || !shelf) throw new Error('no exercise');
    const take = { report: reportOf(1, 80), id: 'report 1', shelf, exercise, startedAt: NOW };
    const once = withTake(EMPTY_LOG, take, 'intermediate');
    expect(once.entries[0]).toMatchObject({
      lesson: 'b7e1',
      exercise: key(1),
      heardBy: 'ear',
      startedAt: NOW,
    });
    expect(once.entries[0]?.loops.map((loop) => loop.verdict)).toContain('clean');
    expect(withTake(once, take, 'intermediate')).toEqual(once);
  });

  it('[ST108] is judged for the level of its student', () => {
    const [exercise] = LESSON.exercises;
    const [shelf] = SHELF;
    const whole = reportOf(1, 80);
    if (!exercise || !shelf) throw new Error('no exercise');
    // definition: where limbs meet a beginner may be 33 ms apart, an advanced student 19; the snare is 30 ms behind
    const strokes = whole.strokes.map((stroke) =>
      stroke.voice === 'snare' ? { ...stroke, timeSeconds: Seconds(stroke.timeSeconds + 0.03) } : stroke,
    );
    const take = { report: { ...whole, strokes }, id: 'r', shelf, exercise, startedAt: NOW };
    const verdictsAt = (level: 'beginner' | 'advanced') =>
      withTake(EMPTY_LOG, take, level).entries[0]?.loops.map(({ verdict }) => verdict);
    expect(verdictsAt('beginner')).toContain('clean');
    expect(verdictsAt('advanced')).not.toContain('clean');
  });

  it('[ST108] is a take from the practice room, counted once beside the log of the same practice', () => {
    const [first] = LOG.entries;
    if (!first) throw new Error('no entry');
    const { lesson: id, exercise, form, startedAt, durationSeconds, loops } = first;
    const facts = { id: 't1', lesson: id, exercise, form, startedAt, durationSeconds, verdicts: loops };
    const zip = zipSync({ 'take.json': strToU8(JSON.stringify(facts)), 'take.wav': new Uint8Array(64) });
    const brought = readBroughtFile(zip, 'take.zip');
    if (brought.kind !== 'log') throw new Error(brought.kind);
    expect(brought.log.entries[0]).toMatchObject({ device: 'take', exercise, startedAt, loops });
    expect(withoutDoubles(brought.log)).toEqual(brought.log);
    expect(withoutDoubles(mergeLogs(LOG, brought.log))).toEqual(LOG);
    const another = zipSync({ 'take.json': strToU8(JSON.stringify({ ...facts, startedAt: NOW })) });
    const later = readBroughtFile(another, 'take.zip');
    if (later.kind !== 'log') throw new Error(later.kind);
    expect(withoutDoubles(mergeLogs(LOG, later.log)).entries).toHaveLength(4);
    for (const wrong of [zipSync({ 'a.txt': strToU8('a') }), strToU8('PK\u0003\u0004'), strToU8('hello')]) {
      expect(readBroughtFile(wrong, 'x').kind).toBe('problems');
    }
  });

  it('[ST108] has its moments in local time', () => {
    const date = new Date('2026-11-25T17:30:00Z');
    // standard: ISO 8601: the same instant whatever the offset
    expect(new Date(momentFrom(date)).getTime()).toBe(date.getTime());
    expect(momentFrom(date)).toMatch(/^2026-11-2\dT\d\d:30:00[+-]\d\d:\d\d$/);
  });
});

it('[ST108] a take that is the model itself is clean, brought as the command line prints it', () => {
  const FULL = parseLesson(
    'title: T\nfeel: triplet\nbalance: {bass: -10}\nexercises:\n  - x.. ..x x.x ..x\n',
    'lesson',
  ).lesson;
  if (!FULL) throw new Error('no lesson');
  const form = { ...defaultForm(FULL), countInBars: 0, repeat: 2 };
  const sampleRateHz = Hertz(44_100);
  const model = render(perform(FULL, { exercise: 1, form, bpm: Bpm(100) }), {
    kit: keptKit({ sampleRateHz }),
  });
  const samples = new Float32Array(sampleRateHz + model.left.length);
  // a second of silence first, as a recording has
  samples.set(
    model.left.map((sample, i) => sample + (model.right[i] ?? 0)),
    sampleRateHz,
  );
  const { report } = listen(samples, sampleRateHz, { lesson: FULL, exercise: 1, form, bpm: Bpm(100) });
  if (!report) throw new Error('not heard');
  const brought = readBrought(JSON.stringify(withSentences(report)), 'take.json');
  if (brought.kind !== 'report') throw new Error(brought.kind);
  const [exercise] = FULL.exercises;
  const [shelf] = [{ id: 'full', lesson: FULL }] as const;
  if (!exercise || !shelf) throw new Error('no exercise');
  const log = withTake(EMPTY_LOG, { ...brought, shelf, exercise, startedAt: NOW }, 'intermediate');
  // definition: what is rendered is what is asked, stroke by stroke, level by level
  expect(log.entries[0]?.loops.map(({ verdict, faults }) => ({ verdict, faults }))).toEqual([
    { verdict: 'clean', faults: [] },
    { verdict: 'clean', faults: [] },
  ]);
});

describe('how a student stands', () => {
  const log = withDeskLessons(LOG, SHELF);

  it('[ST109] [JU4301] is told limb by limb', () => {
    // definition: 24 loops were heard; in eight of them the snare, played by the other hand, missed a stroke
    expect(limbShares(SHELF, log)).toEqual([
      { limb: 'lead hand', loops: 24, clean: 24, mostly: null },
      { limb: 'other hand', loops: 24, clean: 16, mostly: 'missed' },
      { limb: 'other foot', loops: 24, clean: 24, mostly: null },
    ]);
    // nothing is known of a limb in loops in which it could not be told
    const unheard = log.entries.map((each, at) =>
      at > 0
        ? each
        : { ...each, loops: each.loops.map((loop) => ({ ...loop, unheard: ['hihat-foot' as const] })) },
    );
    const [, , foot] = limbShares(SHELF, { ...log, entries: unheard });
    expect(foot?.loops).toBe(24 - (log.entries[0]?.loops.length ?? 0));
    const byStudent = {
      ...log,
      entries: log.entries.map((each) => ({ ...each, heardBy: 'student' as const })),
    };
    expect([limbShares(SHELF, EMPTY_LOG), limbShares(SHELF, byStudent)]).toEqual([[], []]);
  });
});

it('[ST110] makes a lesson of what is set, in its order, with the notes', () => {
  const text = printLesson(LESSON);
  const set = (number: number, note: string | null) => ({
    lesson: 'b7e1',
    exercise: key(number),
    pinned: false,
    note,
    toBpm: null,
    by: null,
  });
  const desk = { id: 'b7e1', lesson: LESSON, text };
  const made = ownLesson(desk, [desk], [set(3, 'Leise.'), set(1, null)], 'First swing, for Kaito');
  const own = parseLesson(made ?? '', 'lesson').lesson;
  expect(own).toMatchObject({ title: 'First swing, for Kaito', groove: LESSON.groove, tempo: LESSON.tempo });
  expect(own?.exercises.map((each) => [exerciseKey(each), each.notes])).toEqual([
    [key(3), 'Leise.'],
    [key(1), null],
  ]);
  expect(ownLesson(desk, [desk], [{ ...set(1, null), lesson: 'another' }], 'x')).toBeNull();
});
