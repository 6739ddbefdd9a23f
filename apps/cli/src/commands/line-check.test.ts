import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Hertz, LeadDb, Seconds, type Voice } from '@shedbook/core';
import { encodeWav, render } from '@shedbook/sound';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { keptKit } from '../../../../internal/testing/kept-kit.mjs';
import { runProgram } from '../program.ts';

const RATE = Hertz(22_050);
let folder = '';
const at = (name: string) => join(folder, name);

async function run(...args: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const say = (line: string) => void out.push(line);
  const status = await runProgram(args, { say, warn: (line) => void err.push(line), progress: () => {} });
  return { status, out: out.join('\n'), err: err.join('\n') };
}

/** Writes strokes, each so many beats of half a second after the start. */
async function record(name: string, strokes: readonly (readonly [Voice, number])[]): Promise<string> {
  const struck = strokes.map(([voice, beat]) => ({
    ...({ voice, articulation: 'normal', mark: 'x', levelDb: LeadDb(voice === 'bass' ? -6 : 0) } as const),
    timeSeconds: Seconds(0.5 + beat / 2),
  }));
  const durationSeconds = Seconds(1.5 + Math.max(...strokes.map(([, beat]) => beat)) / 2);
  const audio = render({ strokes: struck, durationSeconds }, { kit: keptKit({ sampleRateHz: RATE }) });
  await writeFile(at(name), encodeWav(audio, { format: 'int16', seed: name }));
  return at(name);
}

const eight = (voice: Voice, from: number) =>
  Array.from({ length: 8 }, (_, i): readonly [Voice, number] => [voice, from + i]);

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shedbook-line-check-'));
});

afterAll(() => rm(folder, { recursive: true }));

it('[CL8300] learns a kit limb by limb, and a report says that it was heard so; [CL8301] not with another ear', async () => {
  const check = await record('Cellar.wav', [...eight('bass', 0), ...eight('ride', 12)]);
  const kit = at('cellar.json');
  const learnt = await run('line-check', check, '--limbs', 'bass,ride', '--out', kit);
  expect(learnt).toMatchObject({ status: 0, err: '' });
  expect(learnt.out).toMatch(/line check “Cellar”/);
  await writeFile(at('t.lesson.yaml'), 'title: T\ntempo: 120\ngroove: {ride: xx xx xx xx, bass: x . x .}\n');
  const beats = Array.from({ length: 32 }, (_, beat) => beat);
  const take = await record('take.wav', [
    ...beats.flatMap((beat) => [['ride', beat] as const, ['ride', beat + 0.5] as const]),
    ...beats.filter((beat) => beat % 2 === 0).map((beat) => ['bass', beat] as const),
  ]);
  const listen = (...more: string[]) => run('listen', take, '--lesson', at('t.lesson.yaml'), ...more);
  const heard = await listen('--line-check', kit, '--json');
  // truth: what was rendered
  expect(JSON.parse(heard.out)).toMatchObject({
    lineCheck: 'Cellar',
    voices: { bass: { hits: 16, missed: 0 } },
  });
  expect((await listen('--line-check', kit)).out).toContain(
    'Heard with the line check “Cellar” of this kit.',
  );
  await writeFile(kit, (await readFile(kit, 'utf8')).replace(/"weights":"[^"]+"/, '"weights":"0"'));
  const other = await listen('--line-check', kit, '--json');
  expect(JSON.parse(other.out).lineCheck).toBeUndefined();
  expect(other.err).toContain('make the line check again');
});

it('[CL8302] refuses what is no line check, and a file that is none', async () => {
  const short = await record('short.wav', eight('bass', 0));
  const refusal = await run('line-check', short, '--limbs', 'bass,ride');
  expect(refusal.status).toBe(2);
  expect(refusal.err).toContain('expected 2 voices one after another');
  const alone = await run('line-check', short, '--limbs', 'bass');
  expect(alone).toMatchObject({ status: 2, err: expect.stringContaining('two voices or more') });
  await writeFile(at('none.json'), '{"name": "Cellar"}');
  await writeFile(at('u.lesson.yaml'), 'title: U\ngroove: {ride: x x x x}\n');
  const none = await run('listen', short, '--lesson', at('u.lesson.yaml'), '--line-check', at('none.json'));
  expect(none.status).toBe(2);
  expect(none.err).toContain('a file that shedbook line-check wrote');
});
