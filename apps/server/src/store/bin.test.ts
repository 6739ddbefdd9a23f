import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { keptSamplePath } from '../../../../internal/testing/kept-samples.ts';
import { IN_A_FILE } from '../../test/stores.ts';
import { binSuite } from '../../test/suites/bin.suite.ts';
import { temporaryFolder } from '../../test/temporary.ts';
import { openDatabase, STORE_FILE } from './open.ts';
import { createStudentStore } from './students.ts';

binSuite(IN_A_FILE);

it('[SE400] forgets what was taken out after its thirty days, by the clock of the store', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-5.sqlite'), join(folder, STORE_FILE));
  const database = openDatabase(folder);
  const wall = () => new Date('2026-11-29T12:00:00Z');
  const students = createStudentStore(database, wall, () => new Date('2026-10-01T12:00:00Z'));
  const [kaito] = await students.list();
  expect(kaito?.rows).toBe(2);
  const first = (await students.readLog(kaito?.id ?? '', 0))?.rows[0];
  await students.takeOut(kaito?.id ?? '', first?.takenAt ?? '');
  expect(await students.forgetRemovedBefore(new Date('2026-09-30T12:00:00Z'))).toBe(0);
  expect(await students.forgetRemovedBefore(new Date('2026-10-02T12:00:00Z'))).toBe(1);
  expect((await students.bin()).practice).toEqual([]);
  expect((await students.list())[0]?.rows).toBe(1);
  await database.destroy();
});
