import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { StoredLesson } from '@shedbook/routes';
import { expect, it } from 'vitest';
import type { TestStore } from '../stores.ts';
import { send, temporaryFolder } from '../temporary.ts';

/** Demo lessons, in whichever database it lies. */
export function seedSuite({ start }: TestStore): void {
  it('[SE10] gives each demo lesson once, also after it was thrown away', async () => {
    const demo = join(temporaryFolder(), 'demo');
    mkdirSync(demo);
    writeFileSync(join(demo, 'a.lesson.yaml'), 'title: A\n');
    writeFileSync(join(demo, 'b.lesson.yaml'), 'title: B\n');
    writeFileSync(join(demo, 'readme.md'), 'not a lesson');
    const options = { port: 0, dataDir: temporaryFolder(), seedLessonsDir: demo };
    const visit = async (remove: string | null) => {
      const server = await start(options);
      const lessons = (await send(server, 'GET', '/api/lessons')).body as StoredLesson[];
      const gone = lessons.find((each) => each.text === remove);
      if (gone) await send(server, 'DELETE', `/api/lessons/${gone.id}`);
      await server.close();
      return lessons.map((each) => each.text).toSorted();
    };
    expect(await visit('title: A\n')).toEqual(['title: A\n', 'title: B\n']);
    expect(await visit(null)).toEqual(['title: B\n']);
    writeFileSync(join(demo, 'c.lesson.yaml'), 'title: C\n');
    expect(await visit(null)).toEqual(['title: B\n', 'title: C\n']);
  });
}
