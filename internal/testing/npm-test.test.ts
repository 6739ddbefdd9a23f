/**
 * The end of `npm test` on a machine without the programs that tests compare with: its own script, in a tree of two
 * test files where every other tool does nothing but say how it was called.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it, onTestFinished } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** A program that says how it was called, and succeeds. */
const STUB = '#!/bin/sh\necho "$0 $*"\n';

/** A house with the real script and nothing else that is real; its lock file counts as installed. */
function houseOf(files: Readonly<Record<string, string>>): string {
  const house = mkdtempSync(join(tmpdir(), 'shedbook-npm-test-'));
  onTestFinished(() => rmSync(house, { recursive: true }));
  const write = (path: string, content: string) => {
    mkdirSync(dirname(join(house, path)), { recursive: true });
    writeFileSync(join(house, path), content, { mode: 0o755 });
  };
  for (const path of [
    'scripts/test.mjs',
    'scripts/outside.mjs',
    'scripts/run.mjs',
    'internal/testing/programs.mjs',
  ]) {
    cpSync(join(ROOT, path), join(house, path), { recursive: true });
  }
  const lock = '{}';
  write('package-lock.json', lock);
  const hash = createHash('sha256').update(lock).digest('hex');
  write('node_modules/.shedbook-installed', `all ${hash}`);
  for (const name of ['tsc', 'vite', 'biome', 'vitest']) write(`node_modules/.bin/${name}`, STUB);
  write('internal/checks/all.mjs', '');
  for (const folder of ['packages', 'apps', 'programs']) mkdirSync(join(house, folder));
  for (const [path, content] of Object.entries(files)) write(path, content);
  return house;
}

function npmTest(house: string, ci: '' | 'true') {
  // Nothing is on the path but what the house has itself.
  const env = { PATH: join(house, 'programs'), CI: ci };
  return spawnSync(process.execPath, [join(house, 'scripts/test.mjs')], { encoding: 'utf8', env });
}

const TESTS = {
  'packages/sound/src/mp3.test.ts': "spawnSync('ffmpeg');",
  'packages/core/src/plain.test.ts': '',
  'apps/desk/src/browser/desk.test.ts': "import { open } from '../../../../internal/testing/browser.ts';",
  'internal/testing/browser.ts': 'await chromiumPath()',
};

it('names each test that could not run, and the program that it lacks, and fails where none may be left out', () => {
  const house = houseOf(TESTS);
  const { stdout, stderr, status } = npmTest(house, 'true');
  // definition: the house has neither of the programs, on its path or in packages
  expect(stderr.slice(stderr.indexOf('These tests')).trim().split('\n')).toEqual([
    'These tests did not run, since programs that they compare with are missing:',
    '  packages/sound/src/mp3.test.ts: ffmpeg',
    '  apps/desk/src/browser/desk.test.ts: chromium',
    'On Debian: apt-get install chromium-headless-shell ffmpeg',
  ]);
  const ran = stdout.split('\n').find((line) => line.includes('vitest run'));
  expect(ran).toContain('--exclude packages/sound/src/mp3.test.ts');
  expect(ran).toContain('--exclude apps/desk/src/browser/desk.test.ts');
  expect(ran).not.toContain('plain');
  expect(status).toBe(1);
  expect(npmTest(house, '').status).toBe(0);
});

it('says nothing of the kind where every program is there', () => {
  const there = { 'programs/ffmpeg': STUB, 'programs/chromium': STUB };
  const { stdout, stderr, status } = npmTest(houseOf({ ...TESTS, ...there }), 'true');
  expect(stderr).not.toContain('did not run');
  expect(stdout).not.toContain('--exclude');
  expect(status).toBe(0);
});

it('lets every check say what it has found before it fails for one, and then runs no test', () => {
  const there = { 'programs/ffmpeg': STUB, 'programs/chromium': STUB };
  const house = houseOf({
    ...{ ...TESTS, ...there },
    'node_modules/.bin/biome': '#!/bin/sh\necho wrong format\nexit 3\n',
    'internal/checks/all.mjs': "console.error('a rule without a test'); process.exit(1);",
  });
  const { stdout, stderr, status } = npmTest(house, '');
  expect(stderr).toContain('wrong format');
  expect(stderr).toContain('a rule without a test');
  expect(stdout).not.toContain('vitest');
  expect(status).toBe(3);
});
