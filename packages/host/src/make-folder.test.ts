import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { makeFolder } from './make-folder.ts';

it('[HO5003] makes folders in folders, and says what the system says where it cannot', () => {
  const around = mkdtempSync(join(tmpdir(), 'shedbook-folder-'));
  onTestFinished(() => rmSync(around, { recursive: true, force: true }));
  const deep = join(around, 'a', 'b', 'c');
  for (let n = 0; n < 2; n += 1) makeFolder(deep);
  expect(statSync(deep).isDirectory()).toBe(true);
  const file = join(around, 'file');
  writeFileSync(file, '');
  expect(() => makeFolder(file)).toThrow(expect.objectContaining({ code: 'EEXIST' }));
  expect(() => makeFolder(join(file, 'a'))).toThrow(expect.objectContaining({ code: 'ENOTDIR' }));
  // Linux makes no folders there: proc(5)
  if (process.platform === 'linux')
    expect(() => makeFolder('/proc/shedbook/a')).toThrow(expect.objectContaining({ code: 'ENOENT' }));
});
