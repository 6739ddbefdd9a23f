import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { readPdf } from '../../../../internal/testing/pdf.ts';
import { runProgram } from '../program.ts';

async function run(files: Readonly<Record<string, string>>, words: (folder: string) => readonly string[]) {
  const folder = await mkdtemp(join(tmpdir(), 'shedbook-book-'));
  onTestFinished(() => rm(folder, { recursive: true }));
  for (const [name, text] of Object.entries(files)) await writeFile(join(folder, name), text);
  const said: string[] = [];
  const say = (line: string) => void said.push(line.replaceAll(folder, ''));
  const status = await runProgram([...words(folder)], { say, warn: say, progress: () => {} });
  return { folder, status, said: said.join('\n') };
}

const FILES = {
  'a.book.yaml': 'title: A book\nby: Oda\nlessons: [one.lesson.yaml, two.lesson.yaml]\n',
  'one.lesson.yaml': 'title: One\nexercises: [x x x x]\n',
  'two.lesson.yaml': 'title: Two\nexercises: [x . x ., . x . x]\n',
};

it('[CL380] builds a book as one PDF, and checks it with all its lessons', async () => {
  const { folder, status, said } = await run(FILES, (at) => [
    ...['build', join(at, 'a.book.yaml'), '--out', join(at, 'out'), '--paper', 'A5'],
  ]);
  expect([status, said]).toEqual([0, expect.stringContaining('book.pdf: a book of 10 pages')]);
  const { title, pages } = await readPdf(new Uint8Array(await readFile(join(folder, 'out/book.pdf'))));
  // standard: ISO 216, A5 is 148 mm wide; a point is 1/72 inch
  expect([title, Math.round(pages[0]?.widthPt ?? 0)]).toEqual(['A book', Math.round((148 * 72) / 25.4)]);
  const checked = await run(FILES, (at) => ['check', join(at, 'a.book.yaml')]);
  expect([checked.status, checked.said]).toEqual([0, '/a.book.yaml: in order, 3 exercises']);
});

it('[CL5200] packs a book where that is asked, each lesson under its lasting name', async () => {
  const { folder, status, said } = await run(FILES, (at) => [
    ...['build', join(at, 'a.book.yaml'), '--out', join(at, 'out'), '--pack'],
  ]);
  expect([status, said]).toEqual([0, expect.stringContaining('practice.zip')]);
  const files = await readdir(join(folder, 'out/practice'), { recursive: true });
  expect(files).toEqual(
    expect.arrayContaining(['index.html', '01-one/index.html', '02-two/files/two.lesson.yaml']),
  );
  expect(await readFile(join(folder, 'out/practice/index.html'), 'utf8')).toContain('01-one/index.html');
});

it('[CL380] tells what is wrong with a lesson of the book, and refuses what only lessons have', async () => {
  const faulty = { ...FILES, 'two.lesson.yaml': 'title: Two\nexercises: [x x q x]\n' };
  const { status, said } = await run(faulty, (at) => ['build', join(at, 'a.book.yaml'), '--out', at]);
  expect([status, said]).toEqual([2, expect.stringContaining('/two.lesson.yaml:2:17: error')]);
  const refused = await run(FILES, (at) => ['build', join(at, 'a.book.yaml'), '--out', at, '--audio', 'mp3']);
  expect([refused.status, refused.said]).toEqual([
    2,
    expect.stringContaining('for lessons and not for books'),
  ]);
  const missing = await run({ 'a.book.yaml': 'title: A\nlessons: [gone.lesson.yaml]\n' }, (at) => [
    ...['check', join(at, 'a.book.yaml')],
  ]);
  expect([missing.status, missing.said]).toEqual([2, expect.stringContaining('/gone.lesson.yaml')]);
});
