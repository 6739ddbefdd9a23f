/** What can be done with lessons on the desk; each is kept at once and can be taken back. */
import { parseLesson, type StarterName } from '@shedbook/core';
import type { LessonFiling, LessonSummary, SaveCause, StoredLesson } from '@shedbook/routes';
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
import { useTold } from '../document/use-told.ts';
import { copyOf } from '../edit/copy.ts';
import { renamed, setTitle, titleOf } from '../edit/heading.ts';
import { later } from '../loading/later.ts';
import { go } from '../shared/route.ts';
import { useLanguage } from '../words/words.tsx';
import type { ExportFormat } from './files.ts';
import { newLessonText } from './new-lesson.ts';

/** The actions of the desk. */
export interface DeskActions {
  /** Makes a new lesson and opens it: an empty one, or one that starts from a groove. */
  readonly start: (from?: StarterName) => Promise<void>;
  readonly rename: (lesson: LessonSummary, title: string) => Promise<void>;
  readonly duplicate: (lesson: LessonSummary) => Promise<void>;
  readonly remove: (lesson: LessonSummary) => Promise<void>;
  readonly bringIn: (file: File) => Promise<void>;
  /** Files it elsewhere. */
  readonly file: (lesson: LessonSummary, change: Partial<LessonFiling>) => Promise<void>;
  readonly take: (lesson: LessonSummary, format: ExportFormat) => Promise<void>;
}

/** What reads files and hands them out, loaded when it is wanted. */
const loadFiles = later(() => import('./files.ts'));

const loadStarters = later(() => import('./starter.ts'));

/** Keeps a text; what was changed elsewhere meanwhile stays. */
async function saved(id: string, text: string, revision: number, cause: SaveCause): Promise<StoredLesson> {
  const reply = await saveLesson(id, { text, revision, cause });
  return reply.kind === 'saved' ? reply.lesson : reply.kept;
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
  const told = useTold(attempt);
  return {
    start: (from) =>
      attempt(async () => {
        const text = from
          ? (await loadStarters()).starterText(from, words.desk.starters[from])
          : newLessonText(words.desk.newTitle);
        const stored = await createLesson(text);
        go({ at: 'lesson', id: stored.id, view: 'page' });
        told(words.desk.made({ title: titleOf(text) ?? words.desk.untitled }), async () => {
          await removeLesson(stored.id);
          go({ at: 'desk' });
        });
      }),
    rename: ({ id }, title) =>
      attempt(async () => {
        const stored = await readLesson(id);
        const text = renamed(stored.text, title, await readNamesInUse(id));
        const { revision } = await saved(id, text, stored.revision, 'edit');
        told(words.desk.renamed({ before: titleOf(stored.text) ?? words.desk.untitled, after: title }), () =>
          saved(id, stored.text, revision, 'undo'),
        );
      }),
    duplicate: (lesson) =>
      attempt(async () => {
        const { text } = await readLesson(lesson.id);
        const { lesson: read } = parseLesson(text, 'lesson');
        const title = words.desk.copyOf({ title: nameOf(lesson) });
        const made = await createLesson(read ? copyOf({ lesson: read, text }, title) : setTitle(text, title));
        told(words.desk.duplicated({ title }), () => removeLesson(made.id));
      }),
    remove: (lesson) =>
      attempt(async () => {
        await removeLesson(lesson.id);
        const title = nameOf(lesson);
        told(words.desk.removed({ title }), async () => {
          await restoreLesson(lesson.id);
          say(words.desk.restored({ title }));
        });
      }),
    bringIn: (file) =>
      attempt(async () => {
        const made = await (await loadFiles()).importFile(file);
        const title = titleOf(made.text) ?? file.name;
        told(words.desk.imported({ title }), () => removeLesson(made.id));
      }),
    file: (lesson, change) =>
      attempt(async () => {
        const { level, shelves, isArchived } = lesson;
        const before = { level, shelves, isArchived };
        await fileLesson(lesson.id, { ...before, ...change });
        const title = nameOf(lesson);
        const aside = change.isArchived ? words.desk.archived : words.desk.outOfArchive;
        const said = change.isArchived === undefined ? words.desk.filed : aside;
        told(said({ title }), () => fileLesson(lesson.id, before));
      }),
    take: (lesson, format) =>
      attempt(async () => (await loadFiles()).downloadFromServer(await readLesson(lesson.id), format)),
  };
}
