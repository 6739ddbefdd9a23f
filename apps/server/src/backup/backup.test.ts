import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { createWriteStream, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import SQLite from 'libsql';
import { describe, expect, it } from 'vitest';
import { aDesk, takeFile } from '../../test/backed-up.ts';
import { IN_A_FILE } from '../../test/stores.ts';
import { backupSuite } from '../../test/suites/backup.suite.ts';
import { send, startTestServer, temporaryFolder } from '../../test/temporary.ts';
import { STORE_FILE } from '../store/open.ts';
import { backUp, restore } from './by-command.ts';
import { checkBackup } from './read-backup.ts';

/** Every row of a store: SQLite may move what its log holds into its file at any time, and nothing is changed by that. */
function rowsOf(file: string): string {
  const database = new SQLite(file, { readonly: true });
  try {
    const named = "select name from sqlite_schema where type = 'table' order by name";
    const tables = database.prepare(named).all() as readonly { readonly name: string }[];
    const all = (name: string): unknown => database.prepare(`select * from "${name}"`).all();
    return JSON.stringify(tables.map(({ name }) => [name, all(name)]));
  } finally {
    database.close();
  }
}

/** The names of everything in a folder with the sum of what is in it. */
function sumsIn(folder: string): readonly string[] {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(
    (name) => !/-(?:wal|shm)$/.test(name) && statSync(join(folder, name)).isFile(),
  );
  const contentOf = (name: string) =>
    name === STORE_FILE ? rowsOf(join(folder, name)) : readFileSync(join(folder, name));
  return names
    .map((name) => `${name} ${createHash('sha256').update(contentOf(name)).digest('hex')}`)
    .toSorted();
}

backupSuite(IN_A_FILE);

describe('backing up', () => {
  it('[SE1600] puts everything into one file that any computer can open and check', async () => {
    const { dataDir } = await aDesk(IN_A_FILE);
    const file = join(temporaryFolder(), 'week.tar');
    const written = await backUp(dataDir, file);
    expect(written).toMatchObject({ file, lessons: 1, students: 1, takes: 1, damagedTakes: 0 });
    expect(statSync(file).mode & 0o077).toBe(0);
    // library: GNU tar and GNU coreutils, as this computer has them
    const folder = temporaryFolder();
    expect(spawnSync('tar', ['xf', file, '-C', folder], { encoding: 'utf8' })).toMatchObject({
      status: 0,
      stderr: '',
    });
    const checked = spawnSync('sha256sum', ['-c', 'SHA256SUMS'], { cwd: folder, encoding: 'utf8' });
    expect(checked.stdout.trim().split('\n')).toHaveLength(3);
    expect([checked.status, checked.stdout.includes('FAILED')]).toEqual([0, false]);
    const [take] = readdirSync(join(folder, 'takes'));
    expect(readFileSync(join(folder, 'takes', take ?? ''))).toEqual(takeFile('phone 1'));
    expect(readdirSync(dataDir).toSorted()).toEqual([
      'lessons.sqlite',
      'lessons.sqlite-shm',
      'lessons.sqlite-wal',
      'takes',
    ]);
  });

  it('[SE1603] [SE5002] refuses a backup that was changed, breaks off or is none, and touches nothing', async () => {
    const { dataDir, server } = await aDesk(IN_A_FILE);
    const folder = temporaryFolder();
    const file = join(folder, 'week.tar');
    await backUp(dataDir, file);
    await server.close();
    const whole = readFileSync(file);
    const before = sumsIn(dataDir);
    const bad = join(folder, 'bad.tar');
    const refused = async (bytes: Uint8Array) => {
      writeFileSync(bad, bytes);
      await expect(restore(dataDir, bad)).rejects.toThrow(/no whole backup.*Nothing was touched/);
    };
    const end = whole.length - 1024;
    // a prime, so that every field of a header is met
    for (let at = 0; at < end; at += 997) {
      const bytes = Buffer.from(whole);
      bytes[at] = (bytes[at] ?? 0) ^ 0x10;
      await refused(bytes);
    }
    for (let cut = 0; cut < end; cut += 9973) await refused(whole.subarray(0, cut));
    await refused(Buffer.from('no backup at all'));
    // Linux, full(4): writing there finds no room, which is no fault of the backup
    if (process.platform === 'linux')
      await expect(checkBackup(file, () => createWriteStream('/dev/full'))).rejects.toMatchObject({
        code: 'ENOSPC',
      });
    await expect(restore(dataDir, join(folder, 'nowhere.tar'))).rejects.toThrow(
      /nowhere\.tar.*there is no such file/,
    );
    expect(sumsIn(dataDir)).toEqual(before);
  }, 60_000);

  it('[SE1607] sets a store aside that is too damaged to be backed up', async () => {
    const { dataDir, server } = await aDesk(IN_A_FILE);
    const file = join(temporaryFolder(), 'week.tar');
    await backUp(dataDir, file);
    await server.close();
    const broken = temporaryFolder();
    writeFileSync(join(broken, 'lessons.sqlite'), 'no database, however long it may be. '.repeat(300));
    const { before } = await restore(broken, file);
    expect(readFileSync(join(before ?? '', 'lessons.sqlite'), 'utf8')).toMatch(/^no database/);
    const again = await startTestServer({ dataDir: broken });
    expect(((await send(again, 'GET', '/api/lessons')).body as unknown[]).length).toBe(1);
  });
});
