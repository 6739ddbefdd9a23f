import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../program.ts';

const BOSSA = `
title: A bossa
tempo: 100
groove:
  ride: xx xx xx xx
  hihat-foot: {pattern: . x . x, level: -8}
  bass: {pattern: x. .x x. .x, level: -8}
comping: sidestick
balance: {sidestick: -2}
exercises:
  - x. .. .. x. | x. .. .. ..
  - .. xx x. .x | xx xx .. .x
`;

const FUNK = `
title: Sixteenths
tempo: 68
groove:
  hihat: xx xx xx xx
  snare: {pattern: .... X..g .g.. X..., level: 0}
  bass: {pattern: x... .... ..x. ...., level: 0}
comping: bass
exercises:
  - ..x. x.x. x.x. x.x.
  - ...x .... ...x x..x
`;

let folder = '';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shedbook-'));
});

afterAll(() => rm(folder, { recursive: true }));

async function run(...args: string[]): Promise<string> {
  const out: string[] = [];
  const say = (line: string) => void out.push(line);
  await runProgram(args, { say, warn: () => undefined, progress: () => undefined });
  return out.join('\n');
}

it('[CL3101] a recording of its own is clean, a foot under a side stick and all', async () => {
  const lesson = join(folder, 'bossa.lesson.yaml');
  await writeFile(lesson, BOSSA);
  const what = ['--form', 'loop'];
  await run('build', lesson, '--out', folder, '--audio', 'wav', ...what);
  for (const exercise of ['1', '2']) {
    const take = join(folder, 'audio', `0${exercise}.wav`);
    const json = await run('listen', take, '--lesson', lesson, '--exercise', exercise, ...what, '--json');
    // definition: what is recorded is what is written
    expect(JSON.parse(json).verdict, exercise).toMatchObject({ is: 'clean', about: [] });
  }
});

describe('four bars and two of time in sixteenths', () => {
  const form = ['--form', 'four and two'];
  let lesson = '';

  beforeAll(async () => {
    lesson = join(folder, 'funk.lesson.yaml');
    await writeFile(lesson, FUNK);
    await run('build', lesson, '--out', folder, '--audio', 'wav', ...form);
  });

  it('[CL3102] another exercise in the form is named, and none of its bars is told as left out', async () => {
    const take = join(folder, 'audio/02.wav');
    const json = await run('listen', take, '--lesson', lesson, '--exercise', '1', ...form, '--json');
    // definition: the second exercise is recorded where the first is asked, two bars of time behind it
    expect(JSON.parse(json).verdict.about).toEqual([{ what: 'other-exercise', exercise: 2 }]);
  });

  it.each(['audio/01.wav', 'exercises/01.mid'])(
    '[CL3103] %s is heard in the form that it has, or it is asked whether that was meant',
    async (name) => {
      const what = ['listen', join(folder, name), '--lesson', lesson, '--exercise', '1'];
      // definition: four bars of the exercise and two of time are recorded
      const found = JSON.parse(await run(...what, '--json'));
      expect(found).toMatchObject({ form: 'four and two', verdict: { is: 'clean' }, cleanIn: null });
      const named = await run(...what, '--form', 'loop');
      expect(named).toMatch(/^In the form “four and two” nothing is wrong with it: was that one meant\?\n/);
      expect(named).toContain('Form: loop, 4 bars.');
    },
  );
});

it('[CL3103] the recording of an example is heard as the example that it is', async () => {
  const lesson = join(folder, 'shown.lesson.yaml');
  const [before, pattern] = ['exercises:\n  - ..x. x.x. x.x. x.x.', '..x. x.x. x.x. x.x.'];
  await writeFile(lesson, FUNK.replace(before, `exercises:\n  - {pattern: ${pattern}, example: 2}`));
  await run('build', lesson, '--out', join(folder, 'shown'), '--audio', 'wav', '--exercise', '1');
  const take = join(folder, 'shown/audio/01.wav');
  const what = ['listen', take, '--lesson', lesson, '--exercise', '1'];
  // definition: an example is recorded in the form that it is shown in
  const expected = { form: 'example', verdict: { is: 'clean' } };
  expect(JSON.parse(await run(...what, '--json'))).toMatchObject(expected);
  expect(JSON.parse(await run(...what, '--form', 'example', '--json'))).toMatchObject(expected);
});

it('[CL3500][JU3500] who claps in the bars that are left to the student is clean', async () => {
  const clapped = (loop: string) => `title: Before
tempo: 90
feel: triplet
sections:
  - groove: {}
    comping: clap
    exercises: [x.x x.x x.x x.x]
    forms: {loop: {sections: [${loop}], countIn: 0}}
`;
  const lesson = join(folder, 'asked.lesson.yaml');
  const student = join(folder, 'student.lesson.yaml');
  await writeFile(lesson, clapped('{pattern: 2, click: all}, {rest: 2, click: 1}, {rest: 2, click: none}'));
  await writeFile(student, clapped('{rest: 2}, {pattern: 4}'));
  const out = join(folder, 'student');
  await run('build', student, '--out', out, '--audio', 'wav');
  const take = join(out, 'audio', '01.wav');
  const json = await run('listen', take, '--lesson', lesson, '--exercise', '1', '--json');
  // definition: 4 bars of 4 beats, 2 claps a beat
  expect(JSON.parse(json).voices.clap).toMatchObject({ hits: 32, missed: 0, extra: 0 });
  expect(JSON.parse(json).verdict).toMatchObject({ is: 'clean', about: [] });
});
