import { EMPTY_LOG, mergeLogs, parsePracticeLog, printPracticeLog } from '@shedbook/coach';
import { type Bpm, type FullReport, type PracticeEntry, type PracticeLog, Seconds } from '@shedbook/core';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { asideText, inParts, joinRows, type LogRow, rowsOf, takingsOf } from './kept-log.ts';
import { withDeskLessons } from './take-in.ts';

function entryOf(n: number, bpm = 80): PracticeEntry {
  return {
    id: `phone ${n}`,
    device: 'phone',
    startedAt: `2026-11-2${n}T18:30:00+01:00`,
    durationSeconds: Seconds(60),
    lesson: 'first-swing',
    exercise: 'snare x x x x',
    form: 'round',
    heardBy: 'ear',
    loops: [{ bpm: bpm as Bpm, verdict: 'clean', faults: [] }],
  };
}

const LOG: PracticeLog = {
  ...EMPTY_LOG,
  entries: [entryOf(1), entryOf(2), entryOf(3)],
  removed: ['phone 9'],
};

/** When rows of these tests were taken in. */
const AT = '2026-11-29T03:00:00.000Z';

const rows = (texts: readonly string[], version = 1): readonly LogRow[] =>
  texts.map((text, at) => ({ row: at + 1, version, text, takenAt: AT, isSound: true }));

it('[ST155] the rows of a log are that log, in any order and however often they came', () => {
  fc.assert(
    fc.property(fc.shuffledSubarray([...rowsOf(LOG), ...rowsOf(LOG)], { minLength: 8 }), (texts) => {
      expect(joinRows(rows(texts))).toEqual({ log: LOG, aside: [], reports: [] });
    }),
    { numRuns: 50, seed: 18 },
  );
});

it('[ST155] a row that cannot be read costs itself, is shown, and what is taken in later leaves it', () => {
  const bad = JSON.stringify(entryOf(4, 5000));
  const kept = joinRows(rows([...rowsOf(LOG), bad, 'half', '7']));
  expect(kept.log).toEqual(LOG);
  expect(kept.aside.map(({ text }) => text)).toEqual([bad, 'half', '7']);
  expect(JSON.parse(asideText(kept.aside)).map((each: { row: unknown }) => each.row)).toEqual([
    entryOf(4, 5000),
    'half',
    7,
  ]);
});

it('[ST155] entries of a newer version and rows that changed on the disk are set aside', () => {
  const [first = '', second = ''] = rowsOf(LOG);
  const changed = { row: 2, version: 1, text: second, takenAt: AT, isSound: false };
  const kept = joinRows([...rows([first], 2), changed]);
  expect(kept).toEqual({ log: EMPTY_LOG, aside: [...rows([first], 2), changed], reports: [] });
});

it('[ST155] a whole log that was kept as it was is read as far as it can be', () => {
  const whole = printPracticeLog(LOG);
  expect(joinRows(rows([whole, '{ half'], 0))).toEqual({
    log: LOG,
    aside: [{ ...rows(['{ half'], 0)[0], row: 2 }],
    reports: [],
  });
  expect(parsePracticeLog(whole, 'log').log).toEqual(LOG);
});

it('[ST155] what was taken in before stays with its lesson when that is renamed', () => {
  const known = { ...LOG, entries: LOG.entries.map((each) => ({ ...each, lesson: 'b7e1' })) };
  const again = withDeskLessons(LOG, [], known);
  expect(mergeLogs(known, again)).toEqual(known);
});

it('[ST155] rows are sent in parts that are not too long, a long one alone', () => {
  expect(inParts(['aa', 'bb', 'cc', 'dddddd', 'e'], 4)).toEqual([['aa', 'bb'], ['cc'], ['dddddd'], ['e']]);
  expect(inParts([], 4)).toEqual([]);
});

it('[ST901] the report of a recording is kept beside its entry, and counts as nothing brought in of its own', () => {
  const report = { strokes: [], asked: { bpm: 120 } } as unknown as FullReport;
  const [entry] = LOG.entries;
  const [kept] = [{ of: entry!.id, report }];
  const all = rows(rowsOf({ ...EMPTY_LOG, entries: [entry!] }, [kept!]));
  expect(joinRows(all)).toEqual({
    log: { ...EMPTY_LOG, entries: [entry] },
    aside: [],
    reports: [kept],
  });
  expect(takingsOf(all)).toEqual([{ takenAt: AT, rows: 1 }]);
});
