/** Lessons as a list shows them: their summaries, and where they are filed. */
import type { LessonNames } from '@shedbook/coach';
import { TooMuchError } from '@shedbook/host';
import type { DamagedLesson, LessonFiling, LessonSummary, StoredLesson } from '@shedbook/routes';
import type { Kysely } from 'kysely';
import { DamagedError, orDamaged } from './damaged.ts';
import { readSummary, type Summary, type SumUp, unreadSummary, writeSummary } from './summary.ts';
import type { Tables } from './tables.ts';

/** A lesson in a list, and what it and its exercises are called by; no names where it cannot be read. */
export interface ShelvedLesson {
  readonly summary: LessonSummary;
  readonly names: LessonNames | null;
}

function shelvedOf(database: Kysely<Tables>) {
  return database
    .selectFrom('lessons')
    .leftJoin('summaries', (join) =>
      join
        .onRef('summaries.lesson_id', '=', 'lessons.id')
        .onRef('summaries.revision', '=', 'lessons.revision'),
    )
    .select([
      'lessons.id',
      'lessons.revision',
      'lessons.created_at as createdAt',
      'lessons.updated_at as updatedAt',
      'lessons.level',
      'lessons.shelves',
      'lessons.archived_at as archivedAt',
      'summaries.summary',
    ])
    .where('lessons.deleted_at', 'is', null)
    .orderBy('lessons.updated_at', 'desc')
    .orderBy('lessons.id');
}

/** Keeps the summary of a lesson for its revision. */
export async function keepSummary(
  database: Kysely<Tables>,
  { id, revision }: Pick<StoredLesson, 'id' | 'revision'>,
  made: Summary,
): Promise<void> {
  const row = { revision, summary: writeSummary(made) };
  await database
    .insertInto('summaries')
    .values({ lesson_id: id, ...row })
    .onConflict((conflict) => conflict.column('lesson_id').doUpdateSet(row))
    .execute();
}

/** The summary of a lesson, made now and kept; one that cannot be made is none of its text. */
async function makeSummary(database: Kysely<Tables>, lesson: StoredLesson, sumUp: SumUp): Promise<Summary> {
  try {
    const made = await sumUp(lesson.text, lesson.id);
    await keepSummary(database, lesson, made);
    return made;
  } catch (error) {
    if (error instanceof TooMuchError) return unreadSummary(lesson.text);
    throw error;
  }
}

/** The summary of a lesson as it is now: what is kept of it, else made now. */
export async function summaryOf(
  database: Kysely<Tables>,
  lesson: StoredLesson,
  sumUp: SumUp,
): Promise<Summary> {
  const row = await database
    .selectFrom('summaries')
    .select('summary')
    .where('lesson_id', '=', lesson.id)
    .where('revision', '=', lesson.revision)
    .executeTakeFirst();
  return readSummary(row?.summary ?? null) ?? makeSummary(database, lesson, sumUp);
}

/** Lets whatever else waits have its turn. */
const turn = () => new Promise<void>((resolve) => setImmediate(resolve));

/**
 * Every lesson that can be read. What has no summary of its last revision is read and summed up now, one by one, so
 * that other requests are answered in between.
 */
export async function listShelf(
  database: Kysely<Tables>,
  read: (id: string) => Promise<StoredLesson | null>,
  sumUp: SumUp,
): Promise<readonly ShelvedLesson[]> {
  const madeNow = async (id: string): Promise<Summary | null> => {
    try {
      await turn();
      const lesson = await read(id);
      return lesson && (await makeSummary(database, lesson, sumUp));
    } catch (error) {
      if (error instanceof DamagedError) return null;
      throw error;
    }
  };
  const shelf: ShelvedLesson[] = [];
  for (const row of await orDamaged(shelvedOf(database).execute())) {
    const { summary: kept, shelves, archivedAt, ...lesson } = row;
    const summary = readSummary(kept) ?? (await madeNow(lesson.id));
    if (!summary) continue;
    const { version: _, names, ...told } = summary;
    const filed = { shelves: JSON.parse(shelves) as readonly string[], isArchived: archivedAt !== null };
    shelf.push({ summary: { ...lesson, ...filed, ...told }, names });
  }
  return shelf;
}

/** Lessons by the titles in their last summaries, whatever has become of their texts since. */
export async function namedAsSummedUp(
  database: Kysely<Tables>,
  ids: readonly string[],
): Promise<readonly DamagedLesson[]> {
  const titleOf = async (id: string): Promise<string | null> => {
    const kept = database.selectFrom('summaries').select('summary').where('lesson_id', '=', id);
    try {
      return readSummary((await orDamaged(kept.executeTakeFirst()))?.summary ?? null)?.title ?? null;
    } catch (error) {
      if (error instanceof DamagedError) return null;
      throw error;
    }
  };
  return Promise.all(ids.map(async (id) => ({ id, title: await titleOf(id) })));
}

/** Files a lesson. @returns whether there was one */
export async function fileLesson(
  database: Kysely<Tables>,
  id: string,
  { level, shelves, isArchived }: LessonFiling,
  now: string,
): Promise<boolean> {
  const result = await database
    .updateTable('lessons')
    .set({ level, shelves: JSON.stringify([...new Set(shelves)]), archived_at: isArchived ? now : null })
    .where('id', '=', id)
    .where('deleted_at', 'is', null)
    .executeTakeFirst();
  return result.numUpdatedRows > 0n;
}
