import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { IN_A_FILE } from '../../test/stores.ts';
import { workSuite } from '../../test/suites/work.suite.ts';
import { temporaryFolder } from '../../test/temporary.ts';
import { openFileShelf, WORK_FILE } from './file-shelf.ts';

workSuite(IN_A_FILE);

it('[SE7306] keeps nothing of what was taken away, for the eyes of the server alone', async () => {
  const folder = temporaryFolder();
  const shelf = openFileShelf(folder);
  const id = '0b9b2b6e-7f0c-4a53-9a2e-6a8d3c5d1f01';
  await shelf.add({ id, kind: 'film', of: 'wobblegong' });
  const file = join(folder, WORK_FILE);
  expect(readFileSync(file, 'latin1')).toContain('wobblegong');
  // POSIX: read and write for the owner alone
  expect(statSync(file).mode & 0o777).toBe(0o600);
  await shelf.remove(id);
  await shelf.close();
  expect(readFileSync(file, 'latin1')).not.toContain('wobblegong');
});
