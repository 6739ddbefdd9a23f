import { parsePracticeLog } from '@shedbook/coach';
import { Bpm, Seconds } from '@shedbook/core';
import { strToU8, zipSync } from 'fflate';
import { expect, it } from 'vitest';
import { isOwn } from '../kept/students.ts';
import type { Take } from '../takes/take.ts';
import { type Everything, packEverything, unpackEverything } from './everything.ts';

const take = (id: string): Take => ({
  ...{ id, startedAt: '2026-11-25T18:30:00+01:00', lesson: 'swing', lessonTitle: 'Swing', exercise: null },
  ...{ number: null, form: 'loop', layers: 1, kind: 'audio', durationSeconds: 6, latencySeconds: 0.03 },
  ...{
    loops: [{ startSeconds: 0, endSeconds: 6, bpm: Bpm(100) }],
    verdicts: [],
    report: null,
    audioBytes: 4,
  },
});

const ALL: Everything = {
  log: {
    version: 1,
    entries: [
      {
        ...{ id: 'a', device: 'd', startedAt: '2026-11-25T18:30:00+01:00', lesson: 'swing', exercise: null },
        ...{ durationSeconds: Seconds(60), form: 'loop', heardBy: 'ear', loops: [] },
      },
    ],
    removed: ['gone'],
  },
  unreadable: [{ id: 'broken' }],
  takes: [
    { take: take('kit'), audio: null },
    { take: take('sound'), audio: new Blob([Uint8Array.from([1, 2, 3, 4])]) },
  ],
  timings: [{ device: 'headphones', latencyMs: 31, spreadMs: 1 }],
  evens: [
    {
      ...{ id: 's', startedAt: '2026-11-25T18:30:00+01:00', lesson: 'swing', exercise: null },
      spreadsMs: { snare: [12, 14] },
    },
  ],
  kits: [{ kit: { name: 'Cellar', weights: '00000000', slopes: {} }, voices: ['bass', 'snare'] }],
  settings: { 'practice.swing': '{"tempi":{}}', ears: '{}' },
};

it('[ST147] [ST8804] a student comes back whole: log, takes with their sound, timings, line checks and settings', async () => {
  const back = unpackEverything(await packEverything(ALL));
  expect(parsePracticeLog(back.logText, 'log').log).toEqual(ALL.log);
  expect(back.takes.map((each) => each.take)).toEqual(ALL.takes.map((each) => each.take));
  expect(back.takes[0]?.audio).toBeNull();
  expect([...new Uint8Array((await back.takes[1]?.audio?.arrayBuffer()) ?? [])]).toEqual([1, 2, 3, 4]);
  expect(back.timings).toEqual(ALL.timings);
  expect(back.evens).toEqual(ALL.evens);
  expect(back.kits).toEqual(ALL.kits);
  // which of them is chosen is erased with what is a student's own
  expect(isOwn('line-check')).toBe(true);
  expect(back.settings).toEqual(ALL.settings);
});

it('[ST147] a file that is none of ours is refused, and what of one is damaged costs itself alone', () => {
  expect(() => unpackEverything(strToU8('hello'))).toThrow();
  expect(() => unpackEverything(zipSync({ 'a.txt': strToU8('a') }))).toThrow('no practice-log.json');
  const damaged = {
    'practice-log.json': strToU8('{}'),
    'takes.json': strToU8(JSON.stringify([null, { id: 3 }, take('good')])),
    'timings.json': strToU8('{"device":1}'),
    'line-checks.json': strToU8('[{"kit":{"name":3},"voices":[]}]'),
    'settings.json': strToU8('{"ears":{},"practice.swing":"{}"}'),
  };
  const back = unpackEverything(zipSync(damaged));
  expect(back.takes.map((each) => each.take.id)).toEqual(['good']);
  expect([back.timings, back.kits, back.settings]).toEqual([[], [], { 'practice.swing': '{}' }]);
});
