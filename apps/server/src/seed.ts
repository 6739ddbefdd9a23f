/** The first visit: the demo lessons are there. Each is given once; one that was thrown away stays away. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { LessonStore } from './store/lessons.ts';

const SEEDED = 'seeded';

/** Puts each `*.lesson.yaml` of a folder into the store unless it has been given before. */
export async function seedLessons(store: LessonStore, folder: string): Promise<void> {
  if (!existsSync(folder)) return;
  const files = readdirSync(folder).filter((file) => file.endsWith('.lesson.yaml'));
  const given = new Set<string>(JSON.parse((await store.readNote(SEEDED)) ?? '[]'));
  const missing = files.filter((file) => !given.has(file)).toSorted();
  for (const file of missing.toReversed()) {
    await store.create(readFileSync(join(folder, file), 'utf8'));
    given.add(file);
  }
  if (missing.length > 0) await store.writeNote(SEEDED, JSON.stringify([...given].toSorted()));
}
