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
