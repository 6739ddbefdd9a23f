import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { readZip } from '../../../../internal/testing/zip.ts';
import { runProgram } from '../program.ts';

const LESSON = 'title: First swing\ntempo: 240\nexercises: ["x.. ..x x.x ..."]\n';

it('[CL40] writes the practice page as a folder, and the same as a ZIP file', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'shedbook-pack-'));
  onTestFinished(() => rm(folder, { recursive: true }));
  const path = join(folder, 'first-swing.lesson.yaml');
  await writeFile(path, LESSON);
  const said: string[] = [];
  const say = (line: string) => void said.push(line);
  const terminal = { say, warn: say, progress: () => {} };
  expect(await runProgram(['build', path, '--out', folder, '--pack'], terminal), said.join('\n')).toBe(0);
  expect(said.join('\n')).toContain('practice.zip');
  const practice = join(folder, 'practice');
  const pack = JSON.parse(await readFile(join(practice, 'pack.json'), 'utf8'));
  // definition: a lesson is named for good by its file
  expect(pack).toMatchObject({ id: 'first-swing', lesson: { title: 'First swing' } });
  // library: yauzl 3.4
  const listed = await readZip(`${practice}.zip`);
  const entries = await readdir(practice, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
  expect(listed.toSorted()).toEqual(files.map((file) => file.slice(folder.length + 1)).toSorted());
  expect(await readFile(join(practice, 'files/first-swing.lesson.yaml'), 'utf8')).toBe(LESSON);
});

it('[CL3600] demonstrates an exercise with its performance and puts its film into the pack, and refuses both without one', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'shedbook-pack-'));
  onTestFinished(() => rm(folder, { recursive: true }));
  const path = join(folder, 'first-swing.lesson.yaml');
  await writeFile(path, `${LESSON}forms: {Four: {sections: [{pattern: 4}], countIn: 1}}\n`);
  const said: string[] = [];
  const say = (line: string) => void said.push(line);
  const run = (...options: readonly string[]) =>
    runProgram(['build', path, '--out', folder, '--form', 'Four', ...options], {
      ...{ say, warn: say, progress: () => {} },
    });
  expect(await run('--films')).toBe(2);
  expect(said.splice(0).join('\n')).toContain('expected it together with --pack');
  expect(await run('--audio', 'wav'), said.join('\n')).toBe(0);
  const played = join(folder, 'audio/01.wav');
  expect(await run('--performance', played)).toBe(2);
  expect(await run('--pack', '--performance', played, '--films'), said.join('\n')).toBe(0);
  const text = said.join('\n');
  for (const each of [
    'Exercise 1 is demonstrated in the pack: 8 s, about',
    '1 film goes into the pack, about',
  ])
    expect(text).toContain(each);
  const practice = join(folder, 'practice');
  const pack = JSON.parse(await readFile(join(practice, 'pack.json'), 'utf8'));
  const [shown] = pack.demonstrations;
  // definition: a count-in and four bars of a second each
  expect([shown.exercise, shown.formBars, Math.round(shown.bpm)]).toEqual([1, [1, 2, 3, 4], 240]);
  // standard: RFC 9639, 6: a FLAC stream begins with "fLaC"; ISO/IEC 14496-12, 4.3: a file begins with its type
  expect((await readFile(join(practice, shown.path))).toString('latin1', 0, 4)).toBe('fLaC');
  expect((await readFile(join(practice, 'files/films/01.mp4'))).toString('latin1', 4, 8)).toBe('ftyp');
});
