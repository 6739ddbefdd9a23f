import { execFileSync } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { runProgram } from '../program.ts';

let folder = '';
let lesson = '';

async function run(...args: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const say = (line: string) => void out.push(line);
  const status = await runProgram(args, { say, warn: (line) => void err.push(line), progress: () => {} });
  return { status, out: out.join('\n'), err: err.join('\n') };
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shedbook-listen-'));
  lesson = join(folder, 'first.lesson.yaml');
  await writeFile(lesson, 'title: T\nfeel: triplet\nbalance: {bass: -10}\nexercises:\n  - x.. ..x x.x ..x\n');
  await run('build', lesson, '--out', folder, '--audio', 'wav', '--form', 'loop', '--tempo', '100');
});

afterAll(() => rm(folder, { recursive: true }));

const options = () => ['--lesson', lesson, '--exercise', '1', '--tempo', '100'];

it('[CL20] reports a recording in words and figures', async () => {
  const { status, out } = await run('listen', join(folder, 'audio/01.wav'), ...options());
  expect(status).toBe(0);
  expect(out).toMatch(
    /^(99\.[89]|100\.[012]) quarter notes a minute from 2\.\d+ s on, swing (1\.9|2\.0)\d:1\.$/m,
  );
  // definition: four bars of five snare strokes and six of the ride
  expect(out).toMatch(/^ {2}ride +24 of 24 /m);
  expect(out).toMatch(/^ {2}snare +20 of 20 /m);
});

it.each([
  ['16-bit mono WAV at 48 kHz', ['-ac', '1', '-ar', '48000', '-c:a', 'pcm_s16le', 'a.wav']],
  ['24-bit WAV', ['-c:a', 'pcm_s24le', 'b.wav']],
  ['floating-point WAV', ['-c:a', 'pcm_f32le', 'c.wav']],
  ['M4A', ['-c:a', 'aac', 'd.m4a']],
  ['Opus', ['-c:a', 'libopus', 'e.webm']],
])('[CL20] hears the same strokes in %s', async (_, [...args]) => {
  const name = join(folder, args.pop() ?? '');
  // library: FFmpeg writes the file
  execFileSync('ffmpeg', ['-v', 'error', '-y', '-i', join(folder, 'audio/01.wav'), ...args, name]);
  const { status, out } = await run('listen', name, ...options(), '--json');
  expect(status).toBe(0);
  const report = JSON.parse(out);
  expect(report.voices.ride).toMatchObject({ hits: 24, missed: 0 });
  expect(report.take.kind).toBe('audio');
});

it('[CL21] refuses what is no recording of the exercise', async () => {
  const none = await run('listen', join(folder, 'none.wav'), ...options());
  expect(none).toMatchObject({ status: 2, out: '' });
  expect(none.err).toContain('there is no such file; expected a recording');
  const text = await run('listen', lesson, ...options());
  expect(text.status).toBe(2);
  expect(text.err).toContain('expected a recording such as take.wav or take.m4a');
  const silent = join(folder, 'silent.wav');
  execFileSync('ffmpeg', ['-v', 'error', '-y', '-f', 'lavfi', '-i', 'anullsrc=d=3', silent]);
  expect((await run('listen', silent, ...options())).err).toContain('The recording is silent.');
  const other = await run('listen', join(folder, 'audio/01.wav'), '--lesson', lesson, '--exercise', '4');
  expect(other.err).toBe('--exercise: found 4, expected a number from 1 to 1');
});
