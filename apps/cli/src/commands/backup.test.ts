import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { COMMAND } from '../../../../internal/testing/command.ts';
import { keptSamplePath } from '../../../../internal/testing/kept-samples.ts';

it('[CL1600] backs up and restores, and says what there was', () => {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-backup-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const [data, file] = [join(folder, 'data'), join(folder, 'week.tar')];
  const run = (...args: readonly string[]) =>
    spawnSync(process.execPath, [COMMAND, ...args], { encoding: 'utf8' });
  // definition: one lesson, one student, and a take whose recording is not there: internal/fixtures/versions/SOURCE.md
  cpSync(keptSamplePath('store-8.sqlite'), join(data, 'lessons.sqlite'));
  const made = run('backup', file, '--data', data);
  expect([made.status, made.stdout]).toEqual([
    0,
    expect.stringMatching(
      /^Backed up in .*week\.tar, \d+ kB, read again and whole: lessons 1, students 1, recordings 0\.\n$/,
    ),
  ]);
  expect(made.stderr).toContain('The recording of 1 take was damaged or gone');
  const again = run('restore', file, '--data', data, '--language', 'de');
  expect([again.status, again.stdout]).toEqual([
    0,
    expect.stringContaining('Lektionen 1, Namen 1, Aufnahmen 0.'),
  ]);
  expect(again.stdout).toMatch(/Was vorher da war, ist in .*before-restore-.*\.tar aufgehoben\./);
  writeFileSync(file, 'no backup');
  const refused = run('restore', file, '--data', data);
  expect([refused.status, refused.stdout]).toEqual([2, '']);
  expect(refused.stderr).toContain('Nothing was touched.');
});

it('[CL3000] the journal says who did what, in either language and as JSON', () => {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-journal-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const run = (command: string, args: readonly string[], input = '') =>
    spawnSync(process.execPath, [COMMAND, command, '--data', folder, ...args], { encoding: 'utf8', input });
  expect(run('journal', []).status).toBe(2);
  expect(run('passphrase', [], 'brushes on a coated head\n').status).toBe(0);
  expect(run('journal', []).stdout).toMatch(/^\d{4}-.*Z {2}This computer: set the passphrase\n$/);
  expect(run('journal', ['--language', 'de']).stdout).toContain('Dieser Computer: Passphrase gesetzt');
  expect(JSON.parse(run('journal', ['--json', '--count', '1']).stdout)).toMatchObject([
    { who: 'computer', did: 'passphrase-set', student: null, name: null, n: null },
  ]);
});
