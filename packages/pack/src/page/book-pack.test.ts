import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { type Lesson, parseBook, parseLesson, readXml, type XmlElement } from '@shedbook/core';
import { loadEngraver, loadFonts } from '@shedbook/engrave';
import { expect, it } from 'vitest';
import { type PackFile, textFile } from '../files/file.ts';
import { makeBookPack } from './book-pack.ts';
import type { Pack } from './pack.ts';

const { resolve } = createRequire(import.meta.url);
const engraver = await loadEngraver();
const fonts = await loadFonts((specifier) => readFile(resolve(specifier)));

const APP: readonly PackFile[] = [textFile('index.html', '<!doctype html><title>Practice</title>')];

const TEXTS = {
  'one.yaml': 'title: One\nexercises: [x x x x]\n',
  'two.yaml': 'title: Two & three\nexercises: [x . x .]\n',
};

function lessonOf(text: string): Lesson {
  const { lesson } = parseLesson(text, 'lesson');
  if (!lesson) throw new Error('the lesson has problems');
  return lesson;
}

const textOf = (file: PackFile | undefined) => Buffer.from(file?.content ?? []).toString('utf8');

function all(element: XmlElement, name: string): readonly XmlElement[] {
  return [
    ...(element.name === name ? [element] : []),
    ...element.children.flatMap((each) => all(each, name)),
  ];
}

it('[SE5202] has each lesson in a folder once, and one page of contents in the order of the book', async () => {
  const { book } = parseBook(
    'title: <A> book\nby: Oda\nlessons: [two.yaml, one.yaml, {lesson: two.yaml, title: Once more}]\n',
    'a.book.yaml',
  );
  if (!book) throw new Error('the book has problems');
  const lessons = new Map(
    Object.entries(TEXTS).map(([path, text]) => [path, { id: `id-${path}`, lesson: lessonOf(text), text }]),
  );
  const files = await makeBookPack(book, lessons, {
    app: APP,
    engraver,
    fonts,
    language: 'de',
    audio: false,
  });
  expect(new Set(files.map(({ path }) => path)).size).toBe(files.length);
  const page = textOf(files.find(({ path }) => path === 'index.html'));
  // the page but for its first line and its empty elements is XML
  const { root, fault } = readXml(page.replace('<!doctype html>', '').replaceAll(/(<meta [^>]*)>/g, '$1/>'));
  if (!root) throw new Error(fault.found.fact);
  expect(root.attributes['lang']).toBe('de');
  const links = all(root, 'a').map(({ attributes, children }) => [attributes['href'], children[0]?.text]);
  expect(links).toEqual([
    ['01-two-three/index.html', 'Two & three'],
    ['02-one/index.html', 'One'],
    ['01-two-three/index.html', 'Once more'],
  ]);
  const packs = files.filter(({ path }) => path.endsWith('/pack.json'));
  const described = packs.map((file) => [file.path, (JSON.parse(textOf(file)) as Pack).id]);
  expect(described).toEqual([
    ['01-two-three/pack.json', 'id-two.yaml'],
    ['02-one/pack.json', 'id-one.yaml'],
  ]);
  expect(files.filter(({ path }) => path.endsWith('sheet.pdf'))).toHaveLength(2);
});
