import { parsePracticeLog } from '@shedbook/coach';
import { describe, expect, it } from 'vitest';
import { soundEntry } from './sound-entry.ts';

const SOUND = {
  ...{ id: 'a', device: 'd', startedAt: '2026-11-25T18:30:00+01:00', durationSeconds: 60, lesson: 'swing' },
  ...{ exercise: 'x', form: 'loop', heardBy: 'ear' },
  loops: [
    {
      ...{ bpm: 100, verdict: 'loose' },
      faults: [{ kind: 'late', voice: 'snare', place: { bar: 1, beat: 2, slot: 3 }, amount: 30 }],
    },
  ],
};
const [LOOP] = SOUND.loops;

/** What logs were found to hold after clocks were set, pages were damaged and newer programs had written. */
const BAD: readonly unknown[] = [
  null,
  'hello',
  { ...SOUND, durationSeconds: -3600 },
  { ...SOUND, durationSeconds: 90_000 },
  { ...SOUND, durationSeconds: Number.NaN },
  { ...SOUND, startedAt: 'yesterday' },
  { ...SOUND, startedAt: 1_700_000_000 },
  { ...SOUND, id: '' },
  { ...SOUND, heardBy: 'neighbour' },
  { ...SOUND, loops: null },
  { ...SOUND, loops: [{ ...LOOP, bpm: 5000 }] },
  { ...SOUND, loops: [{ ...LOOP, verdict: 'perfect' }] },
  { ...SOUND, loops: [{ ...LOOP, unheard: ['gong'] }] },
  { ...SOUND, loops: [{ ...LOOP, faults: [{ kind: 'late', voice: 'gong', place: null, amount: 1 }] }] },
  { ...SOUND, loops: [{ ...LOOP, faults: [{ kind: 'late', voice: null, place: { bar: 0 }, amount: 1 }] }] },
];

describe('an entry that was kept', () => {
  it('[ST146] is read as every reader of logs takes it, whatever else was written beside it', () => {
    const read = soundEntry({ ...SOUND, mood: 'good' });
    expect(read).toEqual(SOUND);
    const unheard = { ...SOUND, loops: [{ ...LOOP, unheard: ['hihat-foot'] }] };
    expect(soundEntry(unheard)).toEqual(unheard);
    const text = JSON.stringify({ version: 1, entries: [read, { ...unheard, id: 'b' }], removed: [] });
    expect(parsePracticeLog(text, 'log').problems).toEqual([]);
  });

  it.each(BAD)('[ST146] is set aside where a reader of logs would refuse it: %j', (entry) => {
    expect(soundEntry(entry)).toBeNull();
    const text = JSON.stringify({ version: 1, entries: [entry], removed: [] });
    expect(parsePracticeLog(text, 'log').log).toBeNull();
  });
});
