/**
 * A take-home pack of a book: the pack of each of its lessons in a folder of its own, and one page of contents.
 *
 * Conventions: the page of contents is `index.html` of the whole, a plain page without a script, with the chapters in the
 * order of the book. A lesson is packed once and whole, however many chapters are made of it: what a student has practised
 * of it is one thing.
 */
import { type Book, escapeXml, fileNameOf, type Lesson } from '@shedbook/core';
import type { Engraver, Fonts } from '@shedbook/engrave';
import { type LanguageTag, SHEET_WORDS } from '@shedbook/words';
import { fileNumber, type PackFile, textFile } from '../files/file.ts';
import type { LessonMedia } from '../media/lesson-media.ts';
import { makePack, type RecordedDemonstration } from './make-pack.ts';

/** A lesson of a book, and its text. */
export interface BookLesson {
  /** Lasting name of the lesson: what a student has practised is kept under it. */
  readonly id: string;
  readonly lesson: Lesson;
  readonly text: string;
}

/** What the packs of a book are made with. */
export interface BookPackRequest {
  /** Files of the built practice room. */
  readonly app: readonly PackFile[];
  readonly engraver: Engraver;
  readonly fonts: Fonts;
  /** The language of what is printed and read out. */
  readonly language: LanguageTag;
  /** The files that a lesson shows, by the path of the lesson. */
  readonly media?: ReadonlyMap<string, LessonMedia>;
  /** Exercises as the teacher plays them, by the path of their lesson. */
  readonly demonstrations?: ReadonlyMap<string, readonly RecordedDemonstration[]>;
  /** Whether exercises are recorded: yes where left out. */
  readonly audio?: boolean;
  /** Told how many recordings of a lesson are done. */
  readonly onRecording?: (done: number, of: number) => void;
}

interface Entry {
  readonly title: string;
  readonly folder: string;
}

/** Looks of the page: ink on paper, one accent, as large as a finger asks for. */
const STYLE = `:root{color-scheme:light dark;--ink:#1d1b19;--paper:#fbfaf6;--accent:#8a2b16;--rule:#cfc8ba}@media(prefers-color-scheme:dark){:root{--ink:#efe9dd;--paper:#1b1917;--accent:#f0a08c;--rule:#4b463e}}body{margin:0 auto;max-width:44rem;padding:2rem clamp(1rem,5vw,3rem) 4rem;background:var(--paper);color:var(--ink);font:1.15rem/1.45 'Fira Sans',system-ui,sans-serif}h1{margin:0;font-size:2rem;line-height:1.2}h1::after{content:'';display:block;inline-size:3rem;block-size:.3rem;margin-block:.7rem;background:var(--accent)}h2{font-size:1.2rem;margin-block:2rem .4rem}ol{margin:0;padding:0;list-style:none;counter-reset:lesson}li{counter-increment:lesson;border-block-start:1px solid var(--rule)}a{display:flex;gap:.9rem;padding-block:.8rem;color:inherit;text-decoration:none}a::before{content:counter(lesson);min-inline-size:1.6rem;color:var(--accent);font-weight:600}a:hover span,a:focus-visible span{text-decoration:underline}`;

function contentsPage({ title, by }: Book, entries: readonly Entry[], language: LanguageTag): PackFile {
  const words = SHEET_WORDS[language];
  const list = entries.map(
    ({ title: name, folder }) =>
      `<li><a href="${folder}/index.html"><span>${escapeXml(name)}</span></a></li>`,
  );
  const author = by === null ? '' : `<p>${escapeXml(by)}</p>`;
  const page = `<!doctype html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeXml(title)}</title>
<style>${STYLE}</style>
</head>
<body>
<main>
<h1>${escapeXml(title)}</h1>
${author}
<h2>${escapeXml(words.contents)}</h2>
<ol>
${list.join('\n')}
</ol>
</main>
</body>
</html>
`;
  return textFile('index.html', page);
}

/**
 * Every file of the packs of a book.
 * @param lessons those of its chapters, by their paths
 * @throws RangeError where a chapter has no lesson: check it first.
 */
export async function makeBookPack(
  book: Book,
  lessons: ReadonlyMap<string, BookLesson>,
  { media = new Map(), demonstrations = new Map(), ...request }: BookPackRequest,
): Promise<readonly PackFile[]> {
  const entries: Entry[] = [];
  const files: PackFile[] = [];
  const folders = new Map<string, string>();
  for (const { path, title } of book.chapters) {
    const found = lessons.get(path);
    if (!found) throw new RangeError(`Internal error: no lesson ${path}`);
    const { id, lesson, text } = found;
    const known = folders.get(path);
    const name = `${fileNumber(folders.size + 1, book.chapters.length)}-${fileNameOf(lesson.title, '')}`;
    const folder = known ?? name;
    entries.push({ title: title ?? lesson.title, folder });
    if (known) continue;
    folders.set(path, folder);
    const own = { media: media.get(path) ?? new Map(), demonstrations: demonstrations.get(path) ?? [] };
    const pack = await makePack({ ...request, ...own, id, lesson, text });
    files.push(...pack.map((file) => ({ ...file, path: `${folder}/${file.path}` })));
  }
  return [contentsPage(book, entries, request.language), ...files];
}
