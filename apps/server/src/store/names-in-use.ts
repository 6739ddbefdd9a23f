/** Which lasting names of a lesson something refers to: logs, assignments, copies, and packs that were given out. */
import { identityOfNames, type LessonNames } from '@shedbook/coach';
import type { NamesInUse, StoredLesson } from '@shedbook/routes';
import type { LessonStore } from './lessons.ts';
import type { Practised } from './log-rows.ts';
import type { StudentStore } from './students.ts';

function exercisesOf({ sections }: LessonNames) {
  return sections.flatMap(({ exercises }) => exercises);
}

function copiedFrom(names: LessonNames): readonly Practised[] {
  const whole = names.from === null ? [] : [{ lesson: names.from, exercise: null }];
  return [...whole, ...exercisesOf(names).flatMap(({ from }) => from ?? [])];
}

function noteOf(id: string): string {
  return `given out ${id}`;
}

async function givenOut(store: LessonStore, id: string): Promise<readonly string[]> {
  return JSON.parse((await store.readNote(noteOf(id))) ?? '[]') as readonly string[];
}

/** Remembers that a lesson was given out as it is: practice may come back under the names that it has. */
export async function noteGivenOut(store: LessonStore, lesson: StoredLesson): Promise<void> {
  const { names: own } = await store.summary(lesson);
  if (!own) return;
  const { id } = lesson;
  const before = await givenOut(store, id);
  const names = new Set([...before, ...exercisesOf(own).map(({ key }) => key)]);
  if (names.size > before.length) await store.writeNote(noteOf(id), JSON.stringify([...names]));
}

/** The names of a lesson, out of everything that is kept; null where there is no such lesson. */
export async function namesInUse(
  store: LessonStore,
  students: StudentStore,
  id: string,
): Promise<NamesInUse | null> {
  const stored = await store.shelf();
  if (!stored.some(({ summary }) => summary.id === id)) return null;
  const shelf = stored.flatMap(({ summary, names }) => (names ? [{ id: summary.id, names }] : []));
  const own = shelf.find((each) => each.id === id)?.names;
  if (!own) return { lesson: true, exercises: [] };
  const copies = shelf.flatMap(({ names }) => copiedFrom(names));
  const set = (await students.list()).flatMap(({ assignments }): readonly Practised[] => assignments);
  const references = [...copies, ...set, ...(await students.practised())];
  const { itemOf } = identityOfNames(shelf);
  const items = new Set(references.map(({ lesson, exercise }) => itemOf(lesson, exercise)));
  const given = new Set(await givenOut(store, id));
  const keys = exercisesOf(own).map(({ key }) => key);
  return {
    lesson: references.some(({ lesson }) => lesson === own.key),
    exercises: keys.filter((key) => given.has(key) || items.has(itemOf(id, key))),
  };
}
