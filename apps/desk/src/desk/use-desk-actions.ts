/** What can be done with lessons on the desk; each is kept at once and can be taken back. */
import { parseLesson, type StarterName, starterText } from '@shedbook/core';
import type { LessonFiling, LessonSummary } from '@shedbook/routes';
import { useSay } from '@shedbook/stand';
import {
  createLesson,
  fileLesson,
  readLesson,
  readNamesInUse,
  removeLesson,
  restoreLesson,
  saveLesson,
} from '../document/api.ts';
import { explain } from '../document/error-words.ts';
import { copyOf } from '../edit/copy.ts';
import { renamed, setTitle } from '../edit/heading.ts';
import { go } from '../shared/route.ts';
import { useLanguage } from '../words/words.tsx';
import { downloadFromServer, type ExportFormat, importFile } from './files.ts';
import { newLessonText } from './new-lesson.ts';

/** The actions of the desk. */
export interface DeskActions {
  /** Makes a new lesson and opens it: an empty one, or one that starts from a groove. */
  readonly start: (from?: StarterName) => Promise<void>;
  readonly rename: (lesson: LessonSummary, title: string) => Promise<void>;
  readonly duplicate: (lesson: LessonSummary) => Promise<void>;
  readonly remove: (lesson: LessonSummary) => Promise<void>;
  readonly bringIn: (file: File) => Promise<void>;
  /** Files it elsewhere; said where it goes out of sight. */
  readonly file: (lesson: LessonSummary, change: Partial<LessonFiling>) => Promise<void>;
  readonly take: (lesson: LessonSummary, format: ExportFormat) => Promise<void>;
}

/** The actions; `refresh` shows the desk as it is afterwards. */
export function useDeskActions(refresh: () => Promise<void>): DeskActions {
  const language = useLanguage();
  const { words } = language;
  const say = useSay();
  const attempt = async (work: () => Promise<void>) => {
    try {
      await work();
    } catch (error) {
      say(await explain(error, language));
    }
    await refresh();
  };
  const nameOf = (lesson: LessonSummary) => lesson.title ?? words.desk.untitled;
  return {
    start: (from) =>
      attempt(async () => {
        const text = from ? starterText(from, words.desk.starters[from]) : newLessonText(words.desk.newTitle);
        const stored = await createLesson(text);
        go({ at: 'lesson', id: stored.id, view: 'page' });
      }),
    rename: ({ id }, title) =>
      attempt(async () => {
        const stored = await readLesson(id);
        const text = renamed(stored.text, title, await readNamesInUse(id));
        await saveLesson(id, { text, revision: stored.revision, cause: 'edit' });
      }),
    duplicate: (lesson) =>
      attempt(async () => {
        const { text } = await readLesson(lesson.id);
        const { lesson: read } = parseLesson(text, 'lesson');
        const title = words.desk.copyOf({ title: nameOf(lesson) });
        await createLesson(read ? copyOf({ lesson: read, text }, title) : setTitle(text, title));
      }),
    remove: (lesson) =>
      attempt(async () => {
        await removeLesson(lesson.id);
        const restore = () =>
          attempt(async () => {
            await restoreLesson(lesson.id);
            say(words.desk.restored({ title: nameOf(lesson) }));
          });
        say(words.desk.removed({ title: nameOf(lesson) }), {
          label: words.desk.undo,
          run: () => void restore(),
        });
      }),
    bringIn: (file) =>
      attempt(async () => {
        const title = await importFile(file);
        say(words.desk.imported({ title: title ?? file.name }));
      }),
    file: (lesson, change) =>
      attempt(async () => {
        const { level, shelves, isArchived } = lesson;
        const before = { level, shelves, isArchived };
        await fileLesson(lesson.id, { ...before, ...change });
        if (change.isArchived === undefined) return;
        const title = nameOf(lesson);
        say(change.isArchived ? words.desk.archived({ title }) : words.desk.outOfArchive({ title }), {
          label: words.desk.undo,
          run: () => void attempt(() => fileLesson(lesson.id, before)),
        });
      }),
    take: (lesson, format) => attempt(async () => downloadFromServer(await readLesson(lesson.id), format)),
  };
}
