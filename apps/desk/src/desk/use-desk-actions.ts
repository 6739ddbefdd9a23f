/** What can be done with lessons on the desk; each is kept at once and can be taken back. */
import { useSay } from '@shedbook/stand';
import { createLesson, readNamesInUse, removeLesson, restoreLesson, saveLesson } from '../document/api.ts';
import { explain } from '../document/error-words.ts';
import type { DeskLesson } from '../document/use-lessons.ts';
import { copyOf } from '../edit/copy.ts';
import { renamed, setTitle } from '../edit/heading.ts';
import { go } from '../shared/route.ts';
import { useLanguage } from '../words/words.tsx';
import { downloadFromServer, type ExportFormat, importFile } from './files.ts';
import { newLessonText } from './new-lesson.ts';

/** The actions of the desk. */
export interface DeskActions {
  readonly start: () => Promise<void>;
  readonly rename: (lesson: DeskLesson, title: string) => Promise<void>;
  readonly duplicate: (lesson: DeskLesson) => Promise<void>;
  readonly remove: (lesson: DeskLesson) => Promise<void>;
  readonly bringIn: (file: File) => Promise<void>;
  readonly take: (lesson: DeskLesson, format: ExportFormat) => Promise<void>;
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
  const nameOf = (lesson: DeskLesson) => lesson.title ?? words.desk.untitled;
  return {
    start: () =>
      attempt(async () => {
        const stored = await createLesson(newLessonText(words.desk.newTitle));
        go({ at: 'lesson', id: stored.id, view: 'page' });
      }),
    rename: ({ stored }, title) =>
      attempt(async () => {
        const text = renamed(stored.text, title, await readNamesInUse(stored.id));
        await saveLesson(stored.id, { text, revision: stored.revision, cause: 'edit' });
      }),
    duplicate: (lesson) =>
      attempt(async () => {
        const { stored, reading } = lesson;
        const title = words.desk.copyOf({ title: nameOf(lesson) });
        await createLesson(
          reading.lesson
            ? copyOf({ lesson: reading.lesson, text: stored.text }, title)
            : setTitle(stored.text, title),
        );
      }),
    remove: (lesson) =>
      attempt(async () => {
        await removeLesson(lesson.stored.id);
        const restore = () =>
          attempt(async () => {
            await restoreLesson(lesson.stored.id);
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
    take: (lesson, format) => attempt(() => downloadFromServer(lesson.stored, format)),
  };
}
