import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { runProgram } from '../program.ts';

it('[CL1700] refuses what it cannot make, in plain words and in both languages, before anything is made', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'shedbook-film-'));
  onTestFinished(() => rm(folder, { recursive: true }));
  const lesson = join(folder, 'one.lesson.yaml');
  await writeFile(lesson, 'title: One\nexercises: [x x x x]\n');
  const run = async (...options: readonly string[]) => {
    const said: string[] = [];
    const say = (line: string) => void said.push(line);
    const out = options.includes('--out') ? [] : ['--out', join(folder, 'one.mp4')];
    const status = await runProgram(['film', lesson, ...out, ...options], {
      say,
      warn: say,
      progress: () => {},
    });
    return [status, said.join('\n')];
  };
  const refused = (text: string) => [2, expect.stringContaining(text)];
  expect(await run('--out', 'one.avi')).toEqual(refused('expected a file that ends in .mp4, .webm'));
  expect(await run('--tempo', '60,9')).toEqual(refused('joined by commas, such as 60,80'));
  expect(await run('--shape', 'portrat')).toEqual(refused('did you mean "portrait"?'));
  expect(await run('--scheme', 'blue')).toEqual(refused('one of light, dark'));
  expect(await run('--rate', '25')).toEqual(refused('one of 30, 60'));
  expect(await run('--click', '5')).toEqual(refused('beats such as 1,2,3,4, or all'));
  expect(await run('--exercise', '2')).toEqual(refused('numbers from 1 to 1'));
  expect(await run('--form', 'four')).toEqual(refused('--form: found "four"'));
  expect(await run('--tempo', '9', '--language', 'de')).toEqual(refused('mit Kommas verbunden, etwa 60,80'));
  expect(await run('--picture', 'left')).toEqual(refused('one of beside, above, corner, none'));
  expect(await run('--sound', 'mix')).toEqual(refused('one of teacher, model, both'));
  expect(await run('--model-level', 'loud')).toEqual(refused('decibels from -40 to 20'));
  expect(await run('--speed', '100,20')).toEqual(refused('percents from 25 to 100'));
  expect(await run('--performance', '2=two.mp4')).toEqual(refused('the number of its exercise before each'));
  expect(await run('--performance', 'gone.mp4')).toEqual(refused('gone.mp4: '));
  expect(await readdir(folder)).toEqual(['one.lesson.yaml']);
});
