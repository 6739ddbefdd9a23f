import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { undocumented } from './docs.mjs';
import { checkRooms, importsOf } from './rooms.mjs';
import { checkSpec, testTitles } from './spec.mjs';

let root = '';

function put(path: string, text: string): void {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), text);
}

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'checks-'));
  put('packages/core/package.json', '{"name": "@shedbook/core", "dependencies": {"zod": "1"}}');
  put('packages/sound/package.json', '{"name": "@shedbook/sound", "dependencies": {"@shedbook/core": "1"}}');
  put('apps/cli/package.json', '{"name": "@shedbook/cli", "dependencies": {"@shedbook/sound": "1"}}');
});

afterEach(() => rmSync(root, { recursive: true }));

describe('rooms', () => {
  it.each([
    ['packages/sound/src/a.ts', "import { x } from '@shedbook/engrave';", 'imports another room'],
    ['packages/sound/src/a.ts', "import { readFile } from 'node:fs';", 'uses Node'],
    ['packages/sound/src/a.ts', "export * from 'lodash';", 'undeclared package'],
    ['packages/sound/src/a.ts', "import { x } from '../../core/src/x.ts';", 'outside its workspace'],
    ['packages/sound/src/a.ts', "import { x } from '@shedbook/core/dist/x.js';", 'reaches into another room'],
    ['packages/core/src/rhythm/a.ts', "import { x } from '../groove/x.ts';", 'imports upward'],
    ['packages/core/src/groove/a.ts', "import { x } from '../lesson/x.ts';", 'imports upward'],
    ['apps/cli/src/a.ts', "const x = await import('kysely');", 'undeclared package'],
  ])('refuses in %s: %s', (path, text, expected) => {
    put(path, `${text}\n`);
    expect(checkRooms(root)).toHaveLength(1);
    expect(checkRooms(root)[0]).toContain(expected);
  });

  it('allows core, what is declared, and Node in apps', () => {
    put('packages/sound/src/a.ts', "import { x } from '@shedbook/core';\nimport { y } from './y.ts';\n");
    put(
      'packages/core/src/groove/a.ts',
      "import { z } from 'zod';\nimport type { L } from '../lesson/l.ts';\n",
    );
    put(
      'apps/cli/src/a.ts',
      "import { readFile } from 'node:fs/promises';\nimport { y } from '@shedbook/sound';\n",
    );
    expect(checkRooms(root)).toEqual([]);
  });

  it('reads every kind of import', () => {
    const text =
      "import a from 'a';\nimport type { B } from 'b';\nexport { c } from 'c';\nimport('d');\nimport {\n  e,\n} from 'e';\n";
    expect(importsOf(text).map((each: { specifier: string }) => each.specifier)).toEqual([
      'a',
      'b',
      'c',
      'd',
      'e',
    ]);
    expect(importsOf(text)[1]?.typeOnly).toBe(true);
  });
});

describe('rules and tests', () => {
  it('finds a rule without a test, a test without a rule, and a skipped test', () => {
    put('packages/core/SPEC.md', '- [AB1] One.\n- [AB2] Two.\n');
    put(
      'packages/core/src/a.test.ts',
      "it('[AB1] works', f);\nit('[AB9] is not there', f);\nit('cites none', f);\nit.skip('[AB1] later', f);\n",
    );
    const problems = checkSpec(root).join('\n');
    expect(problems).toContain('[AB2] has no test');
    expect(problems).toContain('cites [AB9], which no SPEC.md has');
    expect(problems).toContain('"cites none" cites no rule');
    expect(problems).toContain('skipped');
  });

  it('is content when they match', () => {
    put('packages/core/SPEC.md', '- [AB1] One.\n');
    put('packages/core/src/a.test.ts', 'it.each(table)(`[AB1] works for $name`, f);\n');
    expect(checkSpec(root)).toEqual([]);
    expect(testTitles("test('[AB1] a', f); it.each([1, 2])('[AB2] b %i', f)")).toEqual([
      '[AB1] a',
      '[AB2] b %i',
    ]);
  });
});

describe('docs', () => {
  it('finds exports without a doc comment', () => {
    const text =
      '/** Good. */\nexport function a() {}\n\nexport const b = 1;\n/** Kinds. */\nexport const KINDS = [1];\nexport type Kind = (typeof KINDS)[number];\n';
    expect(undocumented(text)).toEqual(['b']);
  });
});
