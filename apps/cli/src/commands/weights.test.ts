import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { runProgram } from '../program.ts';

const BARS = ['x.. x.. x.. x..', 'x.. ..x ... ...', '... ..x ... ..x', '..x ..x ... ...'];

const LESSON = `title: Weighed
feel: triplet
groove: { ride: x x.x x x.x }
vocabulary: [..., x.., ..x]
exercises:
${BARS.map((bar) => `  - ${bar}`).join('\n')}
`;

function logOf(): string {
  const entries = BARS.map((bar, i) => ({
    id: String(i),
    device: 'a',
    startedAt: '2026-03-02T10:00:00+01:00',
    durationSeconds: 60,
    lesson: 'weighed',
    exercise: `snare ${bar}`,
    form: 'pattern',
    heardBy: 'ear',
    loops: Array.from({ length: 6 }, (_, loop) => ({
      bpm: 100,
      verdict: loop < 6 - i ? 'clean' : 'loose',
      faults: [],
    })),
  }));
  return JSON.stringify({ version: 1, entries, removed: [] });
}

let folder = '';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shedbook-weights-'));
});

afterAll(() => rm(folder, { recursive: true }));

it('[CL48] shows the fit, writes nothing until it is accepted, and then what rests on three exercises', async () => {
  const path = join(folder, 'weighed.lesson.yaml');
  const log = join(folder, 'log.json');
  await writeFile(path, LESSON);
  await writeFile(log, logOf());
  const lines: string[] = [];
  const terminal = { say: (line: string) => void lines.push(line), warn: () => {}, progress: () => {} };
  expect(await runProgram(['weights', path, '--log', log], terminal)).toBe(0);
  // definition: four exercises, six loops each
  expect(lines[0]).toContain('24 loops of 4 exercises');
  expect(await readFile(path, 'utf8')).toBe(LESSON);
  expect(await runProgram(['weights', path, '--log', log, '--accept'], terminal)).toBe(0);
  const written = await readFile(path, 'utf8');
  // definition: density is in all four exercises; no exercise has a stroke with a flam
  expect(written).toContain('density');
  expect(written).not.toContain('dynamics');
});

it('[CL5000] an entry that cannot be read costs that entry, and what is no log is told with its place', async () => {
  const path = join(folder, 'weighed.lesson.yaml');
  const log = join(folder, 'one-bad.json');
  await writeFile(path, LESSON);
  const { entries, ...rest } = JSON.parse(logOf());
  await writeFile(
    log,
    JSON.stringify({ ...rest, entries: [{ ...entries[0], durationSeconds: -1 }, ...entries.slice(1)] }),
  );
  const [said, warned]: [string[], string[]] = [[], []];
  const terminal = {
    say: (line: string) => void said.push(line),
    warn: (line: string) => void warned.push(line),
    progress: () => {},
  };
  expect(await runProgram(['weights', path, '--log', log], terminal)).toBe(0);
  // definition: three exercises are left, six loops each
  expect(said[0]).toContain('18 loops of 3 exercises');
  expect(warned).toHaveLength(1);
  expect(warned[0]).toContain(`${log}:1:`);
  await writeFile(log, '{"version": 1, "entries": [');
  expect(await runProgram(['weights', path, '--log', log], terminal)).toBe(2);
  expect(warned[1]).toContain(`${log}:1:`);
});
