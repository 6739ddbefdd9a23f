import { strToU8, zipSync } from 'fflate';
import { expect, it } from 'vitest';
import { sharedMakers } from '../../../../internal/testing/makers.ts';
import { summarise } from '../store/summary.ts';
import { readTakeFacts } from '../week/read-take.ts';

const { imports } = sharedMakers;

/** How often something else has its turn during work: never where the work is done at once, however long it takes. */
async function turnsDuring(work: () => Promise<unknown>): Promise<number> {
  let turns = 0;
  const turning = setInterval(() => {
    turns += 1;
  }, 1);
  await work();
  clearInterval(turning);
  return turns;
}

it('[SE5000] a long lesson is read beside everything else, a short one at once, both alike', async () => {
  const bars = (count: number) => `title: T\nexercises:\n${'  - x x x x\n'.repeat(count)}`;
  for (const text of [bars(10), `${bars(10)}${'#'.repeat(20_000)}`])
    expect(await imports.sumUp(text, { of: 'a' })).toEqual(summarise(text));
  const turnsWith = (text: string) => turnsDuring(() => imports.sumUp(text, { of: 'a' }));
  expect(await turnsWith(bars(10))).toBe(0);
  // lines that open a list and never close it take the reader of YAML a tenth of a second
  expect(await turnsWith(`title: T\n${'\t- x: [\n'.repeat(4000)}`)).toBeGreaterThan(0);
});

/** The file of a take that says this beside what every take says. */
function takeOf(more: object): Uint8Array {
  const played = { id: 'a', startedAt: '2026-11-25T18:30:00+01:00', lesson: 'l', lessonTitle: 'L' };
  const facts = {
    ...played,
    exercise: null,
    number: 1,
    form: 'loop',
    durationSeconds: 1,
    verdicts: [],
    ...more,
  };
  return zipSync({ 'take.json': strToU8(JSON.stringify(facts)) });
}

it('[SE6002] what a take says of itself is read beside everything else where it is long, and no more of it kept than lists can show', async () => {
  const read = (file: Uint8Array) => imports.readTake(file, { of: 'a' });
  const clean = (rounds: number) => Array.from({ length: rounds }, () => ({ bpm: 80, verdict: 'clean' }));
  for (const file of [
    takeOf({}),
    takeOf({ verdicts: clean(10_000) }),
    takeOf({ report: 'x'.repeat(2 ** 21) }),
  ]) {
    const facts = await read(file);
    expect(facts).toMatchObject({ id: 'a', lessonTitle: 'L' });
    expect(facts).toEqual(readTakeFacts(file));
  }
  expect(await turnsDuring(() => read(takeOf({})))).toBe(0);
  const objects = Array.from({ length: 1_000_000 }, () => ({}));
  // the rest of a take's facts may be large, and is not kept
  expect(await read(takeOf({ report: objects }))).toMatchObject({ verdicts: [] });
  const long = takeOf({ verdicts: [{ verdict: 'clean', objects }] });
  const reading = { facts: undefined as unknown };
  const turns = await turnsDuring(async () => {
    reading.facts = await read(long);
  });
  // a million objects take a reader a tenth of a second
  expect(turns).toBeGreaterThan(0);
  expect(reading.facts).toBeNull();
  expect(await read(strToU8('PK'))).toBeNull();
});
