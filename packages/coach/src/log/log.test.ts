import {
  Bpm,
  exerciseKey,
  PRACTICE_LOG_VERSION,
  type PracticeEntry,
  type PracticeLog,
  Seconds,
  VOICES,
} from '@shedbook/core';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { inEnglish } from '../../../../internal/testing/in-english.ts';
import { keptSample } from '../../../../internal/testing/kept-samples.ts';
import { swing } from '../../../../internal/testing/loops.ts';
import { entryOf, keyOf, logOf, loops, MISSED_LET } from '../../test/students.ts';
import { addEntry, EMPTY_LOG, mergeLogs, removeEntry } from './merge.ts';
import { printPracticeLog } from './print-log.ts';
import { parsePracticeLog } from './read-log.ts';

const text = fc.string({ minLength: 1, maxLength: 8 });
const place = fc.record({ bar: fc.integer({ min: 1, max: 9 }), beat: fc.constant(2), slot: fc.constant(3) });
const entry: fc.Arbitrary<PracticeEntry> = fc.record({
  id: fc.constantFrom('a 1', 'a 2', 'a 3', 'b 1', 'b 2', 'b 3'),
  device: fc.constantFrom('phone', 'tablet'),
  startedAt: fc.constantFrom(
    '2026-11-25T18:30:00+01:00',
    '2026-11-25T17:30:00Z',
    '2026-02-03T23:59:59.5-08:00',
  ),
  durationSeconds: fc.integer({ min: 0, max: 4000 }).map(Seconds),
  lesson: text,
  exercise: fc.option(text, { nil: null }),
  form: text,
  heardBy: fc.constantFrom('ear' as const, 'student' as const),
  loops: fc.array(
    fc.record({
      bpm: fc.integer({ min: 20, max: 400 }).map(Bpm),
      verdict: fc.constantFrom('unheard' as const, 'stumble' as const, 'loose' as const, 'clean' as const),
      faults: fc.array(
        fc.record({
          kind: fc.constantFrom('missed' as const, 'late' as const),
          voice: fc.constantFrom(...VOICES, null),
          place: fc.option(place, { nil: null }),
          amount: fc.double({ min: 0, max: 500, noNaN: true }).map((amount) => amount + 0),
        }),
        { maxLength: 2 },
      ),
    }),
    { maxLength: 3 },
  ),
});
const log: fc.Arbitrary<PracticeLog> = fc
  .record({
    entries: fc.array(entry, { maxLength: 6 }),
    removed: fc.array(fc.constantFrom('a 3', 'b 3', 'c 1'), { maxLength: 2 }),
  })
  .map(({ entries, removed }) => removed.reduce(removeEntry, entries.reduce(addEntry, EMPTY_LOG)));

it('[CH18] merging two logs is commutative, associative and idempotent', () => {
  fc.assert(
    fc.property(log, log, log, (a, b, c) => {
      expect(mergeLogs(a, b)).toEqual(mergeLogs(b, a));
      expect(mergeLogs(mergeLogs(a, b), c)).toEqual(mergeLogs(a, mergeLogs(b, c)));
      expect(mergeLogs(a, a)).toEqual(a);
      expect(mergeLogs(a, EMPTY_LOG)).toEqual(a);
    }),
    { numRuns: 200, seed: 10 },
  );
});

it('[CH18] nothing is lost and nothing is counted twice', () => {
  fc.assert(
    fc.property(log, log, (a, b) => {
      const merged = mergeLogs(a, b);
      const removed = new Set([...a.removed, ...b.removed]);
      const wanted = new Set(
        [...a.entries, ...b.entries].map(({ id }) => id).filter((id) => !removed.has(id)),
      );
      const ids = merged.entries.map(({ id }) => id);
      expect(ids).toHaveLength(wanted.size);
      expect(new Set(ids)).toEqual(wanted);
    }),
    { numRuns: 200, seed: 11 },
  );
});

it('[CH18] the fuller version of an entry stays, and what was taken out stays out', () => {
  const begun = entryOf({ number: 1, daysAgo: 1, loops: loops(2, 72) });
  const done = { ...begun, loops: loops(5, 72) };
  const phone = addEntry(EMPTY_LOG, begun);
  const tablet = addEntry(EMPTY_LOG, done);
  expect(mergeLogs(phone, tablet).entries).toEqual([done]);
  expect(mergeLogs(tablet, removeEntry(phone, begun.id)).entries).toEqual([]);
});

it('[CH18] entries of a merged log stand in order of the instant, whatever their zone', () => {
  const first = {
    ...entryOf({ number: 1, daysAgo: 1, loops: [] }),
    id: 'z',
    startedAt: '2026-11-25T18:30:00+01:00',
  };
  const second = { ...first, id: 'a', startedAt: '2026-11-25T17:45:00Z' };
  // definition: 18:30 at +01:00 is 17:30 UTC
  expect(mergeLogs(addEntry(EMPTY_LOG, second), addEntry(EMPTY_LOG, first)).entries).toEqual([first, second]);
});

it('[CH19] printing a log and parsing it gives the same log', () => {
  fc.assert(
    fc.property(log, (each) => {
      const { log: read, problems } = parsePracticeLog(printPracticeLog(each), 'log.json');
      expect({ read, problems }).toEqual({ read: each, problems: [] });
    }),
    { numRuns: 200, seed: 12 },
  );
});

it('[CH17] an exercise keeps its name when the sheet is renumbered, and another pattern has another', () => {
  const [first, second] = swing.lesson.exercises;
  if (!first || !second) throw new Error('the swing sheet has exercises');
  expect(exerciseKey({ ...first, number: 12, name: 'Opener', notes: 'soft' })).toBe(exerciseKey(first));
  expect(exerciseKey(second)).not.toBe(exerciseKey(first));
  expect(exerciseKey({ ...first, sticking: ['L', 'L'] })).not.toBe(exerciseKey(first));
  // definition: voice and pattern text
  expect(keyOf(swing, 1)).toBe('snare ..x ... ..x ...');
});

const GOOD = printPracticeLog(logOf({ number: 1, daysAgo: 1, loops: loops(1, 72, 'loose', [MISSED_LET]) }));

function messages(source: string): readonly string[] {
  const { log: read, problems } = parsePracticeLog(source, 'log.json');
  expect(read).toBeNull();
  return problems.map(inEnglish);
}

it('[CH20] every problem of a log is found at once, at its line and column, with a likely repair', () => {
  const broken = GOOD.replace('"loose"', '"lose"')
    .replace(/"startedAt": "[^"]*"/, '"startedAt": "2026-02-31T10:00:00Z"')
    .replace('"beat": 1', '"beat": 0')
    .replace('"form"', '"from"');
  expect(messages(broken)).toEqual([
    'log.json:4:5: error: entries[1].form: found nothing, expected a value',
    'log.json:7:20: error: entries[1].startedAt: found "2026-02-31T10:00:00Z", expected a moment such as 2026-11-25T18:30:00+01:00',
    'log.json:11:15: error: entries[1].from: found unknown key "from", expected one of id, device, startedAt, durationSeconds, lesson, exercise, form, heardBy, loops (did you mean "form"?)',
    'log.json:16:22: error: entries[1].loops[1].verdict: found "lose", expected one of unheard, stumble, loose, clean (did you mean "loose"?)',
    'log.json:23:25: error: entries[1].loops[1].faults[1].place.beat: found 0, expected a whole number from 1',
  ]);
});

it('[CH20] a text that is not JSON is refused at the place where it breaks', () => {
  expect(messages('{\n  "version": 1,\n  "entries": [,]\n}')).toEqual([
    'log.json:3:15: error: found ",", expected a value',
  ]);
  expect(messages('')).toEqual(['log.json:1:1: error: found the end of the file, expected a value']);
  expect(messages('{"version": 1, "version": 1}')).toEqual([
    'log.json:1:16: error: found the key "version" twice, expected each key once',
  ]);
  expect(messages('{"a" 1}')).toEqual(['log.json:1:6: error: found "1", expected ":"']);
  expect(messages('[1 2]')).toEqual(['log.json:1:4: error: found "2", expected "," or "]"']);
  expect(messages('{} x')).toEqual(['log.json:1:4: error: found "x", expected the end of the file']);
  expect(messages('{1: 2}')).toEqual(['log.json:1:2: error: found "1", expected a key in double quotes']);
  expect(messages('['.repeat(100))).toEqual(['log.json:1:66: error: found "[", expected at most 64 levels']);
});

it('[CH20] JSON of another kind is refused, and so is a later version', () => {
  expect(messages('[]')).toEqual([
    'log.json:1:1: error: found a list, expected an object with version, entries, removed',
  ]);
  expect(messages(GOOD.replace('"version": 1', '"version": 2'))).toEqual([
    'log.json:2:14: error: version: found version 2, expected version 1 (read it with a newer version of this program)',
  ]);
  expect(messages('{"version": 1, "entries": {}, "removed": ["a", 7]}')).toEqual([
    'log.json:1:27: error: entries: found an object, expected a list',
    'log.json:1:48: error: removed[2]: found 7, expected a text',
  ]);
  expect(messages('{"version": "1", "entries": [], "removed": []}')).toEqual([
    'log.json:1:13: error: version: found "1", expected a version number',
  ]);
});

it('[CH20] an entry with an error costs itself only, and an error elsewhere the whole log', () => {
  const entries = [1, 2, 3].map((number) => entryOf({ number, daysAgo: 4 - number, loops: loops(1, 72) }));
  const [first, second, third] = entries.map((each) => JSON.stringify(each));
  const source = (middle: string, removed = '') =>
    `{"version": 1, "entries": [${first}, ${middle}, ${third}], "removed": [${removed}]}`;
  const good = parsePracticeLog(source(second as string), 'log.json');
  expect(good.soundEntries).toBe(good.log);
  const broken = (second as string)
    .replace(/"startedAt":"[^"]*"/, '"startedAt":"never"')
    .replace('72', '"72"');
  const { log: read, soundEntries, problems } = parsePracticeLog(source(broken), 'log.json');
  expect(read).toBeNull();
  expect(soundEntries?.entries).toEqual([entries[0], entries[2]]);
  expect(problems.map(({ path }) => path)).toEqual(['entries[2].startedAt', 'entries[2].loops[1].bpm']);
  expect(parsePracticeLog(source(second as string, '7'), 'log.json').soundEntries).toBeNull();
  expect(parsePracticeLog('{', 'log.json').soundEntries).toBeNull();
});

it('[CH20] 50,000 unknown keys are each said, in seconds', () => {
  const keys = Array.from({ length: 50_000 }, (_, index) => `"key ${index}": [{}]`).join(', ');
  const source = `{${keys}, "version": 1, "entries": [], "removed": []}`;
  const start = process.cpuUsage();
  expect(parsePracticeLog(source, 'log.json').problems).toHaveLength(50_000);
  // measured: 1 s of one core, against more than 100 s when every line was counted from the start
  const { user, system } = process.cpuUsage(start);
  expect((user + system) / 1e6).toBeLessThan(8);
});

it.each(Array.from({ length: PRACTICE_LOG_VERSION }, (_, index) => index + 1))(
  '[CH19] a log of version %i is read as it was written',
  (version) => {
    const source = keptSample(`log-${version}.json`);
    const { log: read, problems } = parsePracticeLog(source, 'log.json');
    expect(problems).toEqual([]);
    // definition: the file itself, internal/fixtures/versions/SOURCE.md
    expect(read).toEqual({ ...JSON.parse(source), version: PRACTICE_LOG_VERSION });
  },
);

it('[CH20] any text at all gives problems or a log, never an exception', () => {
  const anything = fc.oneof(
    fc.string(),
    fc.json(),
    fc
      .tuple(fc.nat(GOOD.length), fc.string({ maxLength: 3 }))
      .map(([at, piece]) => `${GOOD.slice(0, at)}${piece}${GOOD.slice(at + piece.length)}`),
  );
  fc.assert(
    fc.property(anything, (source) => {
      const { log: read, problems } = parsePracticeLog(source, 'log.json');
      expect(read === null).toBe(problems.length > 0);
      for (const { line, column } of problems) {
        expect(Math.min(line, column)).toBeGreaterThanOrEqual(1);
        expect(line).toBeLessThanOrEqual(source.split('\n').length);
      }
    }),
    { numRuns: 500, seed: 13 },
  );
});

it('[CH20] [CH4000] of entries that are wrong in every place twenty thousand faults are said, and none is taken', () => {
  const entry = {
    id: 7,
    device: '',
    startedAt: 'no',
    durationSeconds: -1,
    lesson: '',
    exercise: 3,
    form: '',
  };
  const entries = Array.from({ length: 5000 }, () => ({ ...entry, heardBy: 'x', loops: 7 }));
  const {
    log: read,
    soundEntries,
    problems,
  } = parsePracticeLog(JSON.stringify({ version: 1, entries, removed: [] }), 'l');
  // definition: nine keys, each wrong; every fault of the entry in which the twenty thousandth is
  expect([read, soundEntries?.entries, problems.length]).toEqual([null, [], 9 * Math.ceil(20_000 / 9)]);
});
